/**
 * What the tables share whose unit stands in the row: conditions, instruments, calibrations.
 *
 * @module
 */
import { type Finding, finding, type Severity } from "../base/finding.ts";
import { excerpt } from "../base/printable.ts";
import { type Column, type TableContract } from "../base/tables.ts";
import { findUnit, type Unit, unitNamed, UNITS } from "../base/units.ts";
import { type ReadRow } from "./read-rows.ts";
import { type ReadTable } from "./read-table.ts";
import { usable } from "./typed-rows.ts";

/** Rows of one kind and what was found while making them. */
export interface QuantityRows<T> {
  readonly rows: readonly T[];
  readonly findings: readonly Finding[];
}

/** Reports a problem in one row. */
export type Report = (
  severity: Severity,
  code: string,
  column: string,
  what: string,
  wanted?: string,
) => void;

/**
 * Makes a typed row of each row that has all it needs.
 *
 * @param contract of the table
 * @param table as read
 * @param make gives the typed row, or `null` after it has reported why there is none
 * @returns the typed rows in order, and what was found
 */
export function each<T>(
  contract: TableContract,
  table: ReadTable,
  make: (row: ReadRow, report: Report) => T | null,
): QuantityRows<T> {
  const findings: Finding[] = [];
  const rows: T[] = [];
  for (const row of table.rows) {
    if (!usable(contract, row, findings)) continue;
    const made = make(row, (severity, code, column, what, wanted) =>
      findings.push(finding({
        severity,
        code,
        file: contract.file,
        row: row.row,
        column,
        what,
        wanted: wanted ?? null,
      })));
    if (made !== null) rows.push(made);
  }
  return { rows, findings };
}

/**
 * Text of a cell, `null` when empty.
 *
 * @param row as read
 * @param name of a text column
 * @returns the text as it was written, trimmed
 */
export const textOf = (row: ReadRow, name: string) => row.values[name] as string | null;

/**
 * The unit written in a row for a known quantity: the default where none is written, `null` with an error if it can't be.
 *
 * @param column of the quantity, with dimension and default unit
 * @param written text of the unit cell; `null` for an empty one
 * @param report takes the error
 * @returns a unit of the column's dimension
 */
export function unitFor(column: Column, written: string | null, report: Report): Unit | null {
  const usual = unitNamed(column.unit!, column.dimension!);
  if (written === null) return usual;
  const unit = findUnit(written, column.dimension);
  if (unit !== null) return unit;
  const other = findUnit(written);
  report(
    "error",
    other === null ? "unknown-unit" : "wrong-unit",
    "unit",
    other === null
      ? `"${excerpt(written)}" is no unit that we know; the row was not used.`
      : `"${
        excerpt(written)
      }" is a unit of ${other.dimension}, but ${column.name} is a ${column.dimension}; the row was not used.`,
    `One of ${
      UNITS.filter((one) => one.dimension === column.dimension).map((one) => one.name).join(", ")
    }.`,
  );
  return null;
}
