/**
 * Findings in the data as a list: the word carries the kind, errors come first.
 *
 * @module
 */
import type { Finding, Severity } from "../../base/finding.ts";
import { escapeHtml } from "./escape-html.ts";
import { proseHtml } from "./prose-html.ts";

const WORDS: Readonly<Record<Severity, string>> = {
  error: "Error",
  warning: "Warning",
  note: "Note",
};

const ORDER: readonly Severity[] = ["error", "warning", "note"];

function where(finding: Finding): string {
  const parts = [
    finding.file,
    finding.row === null ? null : `row\u00a0${finding.row}`,
    finding.column,
  ].filter((part) => part !== null);
  return parts.length === 0
    ? ""
    : ` <span class="where">${escapeHtml(parts.join(", "))}${
      finding.count > 1 ? ` (${finding.count}\u00a0times)` : ""
    }</span>`;
}

/**
 * The list.
 *
 * @param findings in the order found
 * @returns HTML; one sentence when there are none
 */
export function findingsPart(findings: readonly Finding[]): string {
  if (findings.length === 0) return `<p class="findings">No finding in the data.</p>`;
  const sorted = ORDER.flatMap((severity) => findings.filter((one) => one.severity === severity));
  const items = sorted.map((one) => {
    const wanted = one.wanted === null ? "" : ` Wanted: ${proseHtml(one.wanted)}`;
    return `<li><strong>${WORDS[one.severity]}:</strong>${where(one)}<br>${
      proseHtml(one.what)
    }${wanted}</li>`;
  });
  return `<ul class="findings">\n${items.join("\n")}\n</ul>`;
}
