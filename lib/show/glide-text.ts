/**
 * A whole glide answer as plain text for a terminal: verdict, table, findings, what was assumed.
 *
 * @module
 */
import type { AnswerRecord } from "../base/records.ts";
import { printable } from "../base/printable.ts";
import type { GlideEvidence } from "../decide/glide-evidence.ts";
import { answerTextOf } from "./answer-text.ts";
import { findingsText } from "./findings-text.ts";
import { shortResultsTable } from "./results-table.ts";
import { textTable, wrapped } from "./text-table.ts";

/** What the two numbers in brackets are. */
const INTERVAL =
  "In brackets stands the 95 % interval: in about 95 of 100 sessions like this one it holds the true value.";

/**
 * The text that `task answer glide` prints.
 *
 * @param evidence with all findings in its answer
 * @param record the short answer made from it
 * @param invented whether any of the data is marked as invented
 * @returns text ended by a line feed
 */
export function glideText(
  evidence: GlideEvidence,
  record: AnswerRecord,
  invented: boolean,
): string {
  const { answer, assumptions } = evidence;
  // What the verdict has said already is not said twice.
  const said = record.details.join("\n");
  const findings = answer.findings.filter((one) => !said.includes(printable(one.what)));
  const parts = [record.question + "\n", answerTextOf(record)];
  if (answer.designs.length > 0) parts.push(textTable(shortResultsTable(evidence)));
  if (record.strip !== null) parts.push(wrapped(INTERVAL) + "\n");
  if (findings.length > 0) parts.push("Findings\n" + findingsText(findings));
  if (assumptions.length > 0) {
    const lines = assumptions.map((one) => wrapped(printable(one), "  ", "- "));
    parts.push(["Assumed", ...lines, ""].join("\n"));
  }
  if (invented) parts.push("The data are invented.\n");
  return parts.join("\n");
}
