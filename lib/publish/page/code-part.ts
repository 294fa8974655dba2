/**
 * A code cell of a page: folded, one click away, with a summary that says what it does.
 *
 * @module
 */
import highlight from "highlight.js/lib/core";
import typescript from "highlight.js/lib/languages/typescript";
import { escapeHtml } from "../../base/escape-html.ts";

highlight.registerLanguage("typescript", typescript);

/** TypeScript with its words, texts, numbers and notes marked by class; everything else is escaped. */
function highlighted(source: string): string {
  return highlight.highlight(source, { language: "typescript", ignoreIllegals: true }).value;
}

/** The comment on a cell's first line, which says what the cell does. */
function firstComment(source: string): string | null {
  const comment = /^\s*(?:\/\/+|\/\*+)\s*(.*?)\s*(?:\*\/)?\s*(?:\n|$)/.exec(source)?.[1];
  return comment === undefined || comment === "" ? null : comment.replace(/[.:]$/, "");
}

/**
 * A code cell.
 *
 * @param source of the cell
 * @param n number of the code cell on the page, from 1
 * @returns HTML of a details element; empty for a cell without code
 */
export function codePart(source: string, n: number): string {
  const code = source.replace(/\s+$/, "");
  if (code === "") return "";
  const lines = code.split("\n").length;
  const length = lines === 1 ? "1 line" : `${lines} lines`;
  const comment = firstComment(code);
  const summary = comment === null ? `Code ${n}` : `Code ${n}: ${comment}`;
  return `<details class="code" id="code-${n}"><summary>${escapeHtml(summary)} (${length})` +
    `</summary>\n<pre><code>${highlighted(code)}\n</code></pre></details>`;
}
