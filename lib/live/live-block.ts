/**
 * One live figure: reads what the page holds about it, puts the controls in, and draws anew what the reader moves.
 *
 * @module
 */
import type { LiveRecord } from "../base/records.ts";
import { NARROW, WIDE } from "../show/drawing-size.ts";
import { liveDrawing } from "../show/live-drawing.ts";
import { liveStates } from "../show/live-state.ts";
import type { LiveTask } from "../show/live-task.ts";
import { liveSummary } from "../show/live-words.ts";
import { type Controls, makeControls } from "./controls.ts";
import { element, type PageElement } from "./page-element.ts";

/** What a page holds about a live figure besides its drawings. */
export type LiveData = Pick<LiveRecord, "legend" | "controls"> & { readonly task: LiveTask };

/** The moments of a browser, given from outside so that a test can hold them still. */
export interface Moments {
  /** Milliseconds of some clock that only goes forward; for measuring alone. */
  now(): number;
  /** Calls back before the next picture is shown. */
  nextFrame(then: () => void): void;
  /** Calls back when nothing has called for a while. */
  whenQuiet(then: () => void): void;
  /** Tells whoever listens on the block what was drawn, for tests. */
  tell(block: PageElement, detail: unknown): void;
}

function drawInto(block: PageElement, part: "wide" | "narrow", svg: string): void {
  const place = block.querySelector(`.${part}`);
  if (place === null) return;
  place.innerHTML = svg.replace("<svg", '<svg class="drawing"');
}

/**
 * Makes a figure live. The page stays as it is until everything that can fail has succeeded once.
 *
 * @param block the section that holds the figure and its data
 * @param moments of the browser
 * @throws Error when the page's data are not what the library needs; the still figure stays
 */
export function mountLiveBlock(block: PageElement, moments: Moments): void {
  const document = block.ownerDocument;
  const id = block.getAttribute("id")!;
  const data = JSON.parse(block.querySelector("script")!.textContent!) as LiveData;
  const published = liveStates(data.task);
  const summary = element(document, "div", {
    class: "summary",
    "aria-live": "polite",
    "aria-atomic": "true",
  });
  let waiting = false;

  const redraw = () => {
    const start = moments.now();
    waiting = false;
    const values = controls.moved();
    const before = Object.keys(values).length === 0 ? null : published;
    const states = before === null ? published : liveStates(data.task, values);
    drawInto(block, "wide", liveDrawing({ id: `${id}-now-wide`, states, before }, WIDE));
    drawInto(block, "narrow", liveDrawing({ id: `${id}-now-narrow`, states, before }, NARROW));
    const milliseconds = moments.now() - start;
    moments.whenQuiet(() => {
      summary.innerHTML = liveSummary({ ...data, values, states });
    });
    moments.tell(block, { values, states, milliseconds });
  };
  const controls: Controls = makeControls(document, { ...data, id }, () => {
    if (waiting) return;
    waiting = true;
    moments.nextFrame(redraw);
  });
  summary.innerHTML = liveSummary({ ...data, values: {}, states: published });
  const caption = block.querySelector("figcaption")!;
  caption.before(controls.fieldset, summary);
}
