/**
 * The script of a page with live figures: the library's own model and drawings, bundled by the publisher.
 *
 * It reads nothing but the page, fetches nothing and keeps nothing. Where it fails the page stays as it was published.
 *
 * @module
 */
import { type Moments, mountLiveBlock } from "./live-block.ts";
import type { PageDocument, PageElement } from "./page-element.ts";

/** The parts of a browser that are used here. */
interface Browser {
  readonly document: PageDocument;
  readonly performance: { now(): number };
  requestAnimationFrame(then: () => void): number;
  setTimeout(then: () => void, milliseconds: number): number;
  clearTimeout(timer: number): void;
  readonly CustomEvent: new (kind: string, options: { readonly detail: unknown }) => unknown;
}

/** ms without a movement before the new summary is written, so that a screen reader is not flooded. */
const QUIET = 200;

const browser = globalThis as unknown as Browser;

function moments(): Moments {
  let timer = 0;
  return {
    now: () => browser.performance.now(),
    nextFrame: (then) => browser.requestAnimationFrame(then),
    whenQuiet(then) {
      browser.clearTimeout(timer);
      timer = browser.setTimeout(then, QUIET);
    },
    tell: (block: PageElement, detail) =>
      block.dispatchEvent(new browser.CustomEvent("lakeproof-drawn", { detail })),
  };
}

for (const block of browser.document.querySelectorAll("section.live")) {
  try {
    mountLiveBlock(block, moments());
  } catch (fault) {
    // The still figure stays; the fault is for whoever looks into the browser's console.
    console.error(fault);
  }
}
