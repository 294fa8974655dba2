/**
 * Text from data, made safe to print: no control characters, nothing that turns the reading direction.
 *
 * A design's name comes from a file that anyone may have written. On a terminal an escape sequence in it could recolour or
 * clear the screen; in a page a direction mark could make one number read as another.
 *
 * @module
 */

const BREAKS = /[\t\r\n\v\f\u2028\u2029]+/g;

/** Controls, direction and joining marks, halves of letters, and what XML forbids beside them. */
const UNPRINTABLE =
  // deno-lint-ignore no-control-regex
  /[\u0000-\u001f\u007f-\u009f\u061c\u200b-\u200f\u202a-\u202e\u2060-\u2069\ufeff\ufffe\uffff\ud800-\udfff]/gu;

function onOneLine(text: string): string {
  return text.replace(BREAKS, " ").replace(UNPRINTABLE, "?");
}

/**
 * A whole text on one line: what can't be printed becomes a visible "?", line breaks and tabs become spaces.
 *
 * @param text anything read from a file
 * @returns text that is safe on a terminal and in XML, without spaces at its ends
 * @example
 * ```ts
 * import { printable } from "lakeproof/base/printable.ts";
 * import { equal } from "node:assert/strict";
 * equal(printable("al\u001b[31mder\n"), "al?[31mder");
 * ```
 */
export function printable(text: string): string {
  return onOneLine(text).trim();
}

/**
 * What was found, for a message: as {@link printable}, but with the spaces at its ends, and cut to a length.
 *
 * @param text from a file or a name
 * @param longest characters, an ellipsis included
 * @returns one line
 * @example
 * ```ts
 * import { excerpt } from "lakeproof/base/printable.ts";
 * import { equal } from "node:assert/strict";
 * equal(excerpt("alder and birch", 6), "alder…");
 * ```
 */
export function excerpt(text: string, longest = 60): string {
  const line = onOneLine(text);
  const letters = [...line];
  return letters.length > longest ? `${letters.slice(0, longest - 1).join("")}…` : line;
}
