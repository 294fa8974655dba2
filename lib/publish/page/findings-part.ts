/**
 * Findings in the data as a list: the word carries the kind, errors come first.
 *
 * @module
 */
import type { Finding } from "../../base/finding.ts";
import { shortened } from "../../show/alike-findings.ts";
import { findingWords, inOrder } from "../../show/findings-text.ts";
import { escapeHtml } from "../../base/escape-html.ts";
import { proseHtml } from "./prose-html.ts";

/**
 * The list.
 *
 * @param findings in the order found
 * @returns HTML; one sentence when there are none
 */
export function findingsPart(findings: readonly Finding[]): string {
  if (findings.length === 0) return `<p class="findings">No finding in the data.</p>`;
  const items = shortened(inOrder(findings)).map((one) => {
    const { word, where, what, wanted } = findingWords(one);
    const place = where === "" ? "" : ` <span class="where">${escapeHtml(where)}</span>`;
    const ask = wanted === "" ? "" : ` Wanted: ${proseHtml(wanted)}`;
    return `<li><strong>${word}:</strong>${place}<br>${proseHtml(what)}${ask}</li>`;
  });
  return `<ul class="findings">\n${items.join("\n")}\n</ul>`;
}
