/**
 * The script of pages with live figures: the library's own browser entry, bundled into one text.
 *
 * Bundled by path and never imported: this room knows nothing of what runs in the browser.
 *
 * @module
 */
import { fileURLToPath } from "node:url";
import { build, stop } from "esbuild";

/** Where the browser's code starts. */
const LIVE_ENTRY = new URL("../../live/live-page.ts", import.meta.url);

/** Engines that know `light-dark()`, which the page's colours need, know this language too. */
const TARGET = "es2023";

async function bundled(): Promise<string> {
  try {
    const result = await build({
      entryPoints: [fileURLToPath(LIVE_ENTRY)],
      bundle: true,
      write: false,
      format: "iife",
      platform: "browser",
      target: TARGET,
      minify: true,
      legalComments: "none",
      logLevel: "silent",
    });
    const script = result.outputFiles[0]!.text.trim();
    if (/<!--|<\/script/i.test(script)) {
      throw new Error("Cannot put the script into a page as its text would end there");
    }
    return script;
  } finally {
    // The bundler is a process of its own, which would keep ours alive.
    await stop();
  }
}

let script: Promise<string> | null = null;

/**
 * The script, bundled once a process; the same sources give the same text.
 *
 * @returns text that may stand between the tags of a script element
 */
export function liveScript(): Promise<string> {
  script ??= bundled();
  return script;
}
