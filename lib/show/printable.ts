/**
 * Text from data, made safe to print: no control characters, nothing that turns the reading direction.
 *
 * A design's name comes from a file that anyone may have written. On a terminal an escape sequence in it could recolour or
 * clear the screen; in a page a direction mark could make one number read as another.
 *
 * @module
 */
import { printable as printableLine } from "../base/printable.ts";

/** What XML forbids beside the controls, and a direction mark more. */
const NOT_IN_XML = /[\u061c\ufffe\uffff]/g;

/**
 * One line of text of any length without unprintable characters, which become a visible "?"; line breaks and tabs become
 * spaces.
 *
 * @param text anything read from a file
 * @returns text that is safe on a terminal and in XML
 * @example
 * ```ts
 * import { printable } from "lakeproof/show/printable.ts";
 * if (printable("al\u001b[31mder\n") !== "al?[31mder") throw new Error("control character left");
 * ```
 */
export function printable(text: string): string {
  return printableLine(text.replace(NOT_IN_XML, "?"), Infinity).trim();
}

/** Text inside HTML or XML, attribute values included. */
export function escapeMarkup(text: string): string {
  return text
    .replace(/&/g, "&amp;")
    .replace(/</g, "&lt;")
    .replace(/>/g, "&gt;")
    .replace(/"/g, "&quot;")
    .replace(/'/g, "&#39;");
}

/** A name at the head of a sentence: capitalised when it is an ordinary lower-case word, else left as it is. */
export function atSentenceStart(name: string): string {
  if (!/^\p{Ll}[\p{Ll} -]*$/u.test(name)) return name;
  const [first = "", ...rest] = name;
  return first.toUpperCase() + rest.join("");
}

/** Words in a row: "a", "a and b", "a, b and c". */
export function listInWords(words: readonly string[]): string {
  if (words.length <= 1) return words.join("");
  return `${words.slice(0, -1).join(", ")} and ${words[words.length - 1]}`;
}
