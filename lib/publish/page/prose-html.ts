/**
 * Sentences of records into HTML, with numbers and their units kept on one line.
 *
 * @module
 */
import { escapeHtml } from "../../base/escape-html.ts";
import { withoutBreaks } from "./markdown-words.ts";

/**
 * A sentence as HTML.
 *
 * @param text plain text
 * @returns the same text, escaped, with no-break spaces where a number and its unit would part
 */
export function proseHtml(text: string): string {
  return escapeHtml(withoutBreaks(text));
}
