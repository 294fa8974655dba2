/**
 * Findings in words, errors first: the same lines at the command line and in a notebook.
 *
 * @module
 */
import type { Finding, Severity } from "../base/finding.ts";
import { NO_BREAK_SPACE } from "../base/rounding.ts";
import { shortened } from "./alike-findings.ts";
import { printable } from "../base/printable.ts";
import { wrapped } from "./text-table.ts";

const ORDER: readonly Severity[] = ["error", "warning", "note"];

const WORDS: Readonly<Record<Severity, string>> = {
  error: "Error",
  warning: "Warning",
  note: "Note",
};

/** The parts of a finding as a reader meets them. */
export interface FindingWords {
  readonly word: string;
  /** "glides.csv, row 9, drop"; empty where it is about no place. */
  readonly where: string;
  readonly what: string;
  /** Empty where nothing is wanted. */
  readonly wanted: string;
}

/**
 * Findings by severity, errors first, else in the order found.
 *
 * @param findings in any order
 * @returns the same ones
 */
export function inOrder(findings: readonly Finding[]): Finding[] {
  return ORDER.flatMap((severity) => findings.filter((one) => one.severity === severity));
}

/**
 * A finding in words.
 *
 * @param one any finding
 * @returns its parts as printable text
 */
export function findingWords(one: Finding): FindingWords {
  const place = [
    one.file,
    one.row === null ? null : `row${NO_BREAK_SPACE}${one.row}`,
    one.column,
  ].filter((part) => part !== null).join(", ");
  const times = one.count > 1 ? ` (${one.count}${NO_BREAK_SPACE}times)` : "";
  return {
    word: WORDS[one.severity],
    where: printable(place === "" ? "" : place + times),
    what: printable(one.what),
    wanted: printable(one.wanted ?? ""),
  };
}

/**
 * Findings as plain text, one a paragraph.
 *
 * @param findings in any order
 * @returns text ended by a line feed; one sentence when there are none
 */
export function findingsText(findings: readonly Finding[]): string {
  if (findings.length === 0) return "No finding in the data.\n";
  return shortened(inOrder(findings)).map((one) => {
    const { word, where, what, wanted } = findingWords(one);
    const head = where === "" ? `${word}:` : `${word}: ${where}:`;
    const body = wanted === "" ? `${head} ${what}` : `${head} ${what} Wanted: ${wanted}`;
    return wrapped(body, "  ") + "\n";
  }).join("");
}
