/**
 * Rows as CSV that a spreadsheet opens as they are: the one way in which we write tables for people.
 *
 * @module
 */
import { stringify } from "csv-stringify/sync";

/** A cell: numbers stay numbers, so that a minus sign is not taken for the start of a formula. */
export type Cell = string | number | null;

/**
 * The text of a CSV table.
 *
 * Text that a spreadsheet would take for a formula (`=`, `+`, `-`, `@`, tab at its start) gets an apostrophe before it.
 * UTF-8 without a mark, commas, line feeds.
 *
 * Source: IETF RFC 4180 (2005) for quoting; OWASP, CSV injection, for the apostrophe.
 *
 * @param header names of the columns
 * @param rows cells in the order of the header; `null` is empty
 * @returns CSV text: commas, quotes where needed, one line end a row
 * @example
 * ```ts
 * import { writeTable } from "lakeproof/read/write-table.ts";
 * import { equal } from "node:assert/strict";
 * equal(writeTable(["run", "note"], [[-1, "=1+1"]]), "run,note\n-1,'=1+1\n");
 * ```
 */
export function writeTable(header: readonly string[], rows: readonly (readonly Cell[])[]): string {
  return stringify([[...header], ...rows.map((row) => [...row])], {
    escape_formulas: true,
    record_delimiter: "\n",
  });
}
