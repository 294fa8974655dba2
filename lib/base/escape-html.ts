/**
 * Text into HTML: the one place where characters that mean something to a browser lose that meaning.
 *
 * @module
 */

const ENTITIES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

/**
 * A text as it may stand between tags or inside a quoted attribute.
 *
 * Control characters that no HTML page may hold are shown as U+FFFD.
 *
 * @param text any text, for instance a design's name from a table
 * @returns the same text as HTML
 * @example
 * ```ts
 * import { escapeHtml } from "lakeproof/base/escape-html.ts";
 * if (escapeHtml("<script>") !== "&lt;script&gt;") throw new Error("markup got through");
 * ```
 */
export function escapeHtml(text: string): string {
  return text
    // deno-lint-ignore no-control-regex
    .replace(/[\0-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\ufdd0-\ufdef\ufffe\uffff]/g, "\ufffd")
    .toWellFormed()
    .replace(/[&<>"']/g, (character) => ENTITIES[character]!);
}
