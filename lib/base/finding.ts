/**
 * What was found wrong, odd or worth knowing in the user's data: where, what, and what would be right.
 *
 * @module
 */

/** `error`: no answer can rest on it; `warning`: kept, but look at it; `note`: for your information. */
export type Severity = "error" | "warning" | "note";

/**
 * One finding, as it is printed and as it stands in an answer's JSON.
 *
 * Rows are numbered as a spreadsheet numbers them: the header is row 1. Equal findings of many rows may be gathered into
 * one with a `count`. `code` is a stable word for programs; `what` and `wanted` are whole sentences for people.
 */
export interface Finding {
  readonly severity: Severity;
  readonly code: string;
  readonly file: string | null;
  readonly row: number | null;
  readonly column: string | null;
  readonly count: number;
  readonly what: string;
  readonly wanted: string | null;
}

/** The parts of a finding that have no sensible default. */
export type FindingParts = Pick<Finding, "severity" | "code" | "what"> & Partial<Finding>;

/**
 * A whole finding from the parts that matter.
 *
 * @param parts severity, code and what was found; file, row, column, count and wanted where there are any
 * @returns the finding with every field present
 */
export function finding(parts: FindingParts): Finding {
  return {
    severity: parts.severity,
    code: parts.code,
    file: parts.file ?? null,
    row: parts.row ?? null,
    column: parts.column ?? null,
    count: parts.count ?? 1,
    what: parts.what,
    wanted: parts.wanted ?? null,
  };
}

/**
 * Whether any finding forbids an answer.
 *
 * @param findings any
 * @returns true when one of them is an error
 */
export function hasErrors(findings: readonly Finding[]): boolean {
  return findings.some((one) => one.severity === "error");
}
