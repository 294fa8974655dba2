/**
 * Text from data, made safe for a terminal or a one-line message.
 *
 * @module
 */

/**
 * A text without control characters, cut to a length.
 *
 * Data may hold anything: escape codes that colour or clear a terminal, marks that turn the direction of writing. All of
 * them become visible `?`; line breaks and tabs become spaces.
 *
 * @param text from a file or a name
 * @param longest characters to keep before an ellipsis
 * @returns one line
 * @example
 * ```ts
 * import { printable } from "lakeproof/base/printable.ts";
 * import { equal } from "node:assert/strict";
 * equal(printable("al\u001b[31mder\n"), "al?[31mder ");
 * ```
 */
export function printable(text: string, longest = 60): string {
  const line = text.replace(/[\t\r\n\v\f\u2028\u2029]+/g, " ").replace(
    // deno-lint-ignore no-control-regex
    /[\u0000-\u001f\u007f-\u009f\u200b-\u200f\u202a-\u202e\u2060-\u2069\ufeff\ud800-\udfff]/gu,
    "?",
  );
  const letters = [...line];
  return letters.length > longest ? `${letters.slice(0, longest - 1).join("")}…` : line;
}
