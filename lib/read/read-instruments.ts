/**
 * How well each column is known: rows of instruments.csv.
 *
 * @module
 */
import { decimalToSi } from "../base/decimal-to-si.ts";
import { didYouMean } from "../base/did-you-mean.ts";
import { excerpt } from "../base/printable.ts";
import { type ErrorKind, type Instrument, type StatedAs } from "../base/session.ts";
import {
  type Column,
  CONDITION_QUANTITIES,
  DESIGNS,
  GLIDES,
  INSTRUMENTS,
  TOW,
  TRACE_SPEED,
} from "../base/tables.ts";
import { findUnit, unitNamed } from "../base/units.ts";
import { each, type QuantityRows, textOf, unitFor } from "./quantity-rows.ts";
import { type ReadTable } from "./read-table.ts";
import { standardUncertainty } from "./stated-uncertainty.ts";

const MEASURED: readonly Column[] = [
  ...GLIDES.columns,
  ...TOW.columns,
  TRACE_SPEED,
  ...DESIGNS.columns,
  ...CONDITION_QUANTITIES,
].filter((one) => one.dimension !== undefined);

/**
 * Rows of `instruments.csv`, standard uncertainties in SI or as shares.
 *
 * @param table as read
 * @returns one statement a row, in order, and what was found
 */
export function readInstruments(table: ReadTable): QuantityRows<Instrument> {
  return each(INSTRUMENTS, table, (row, report) => {
    const written = textOf(row, "quantity")!;
    const quantity = written.toLowerCase().replace(/[\s-]+/g, "_");
    const column = MEASURED.find((one) => one.name === quantity);
    if (column === undefined) {
      const meant = didYouMean(quantity, [...new Set(MEASURED.map((one) => one.name))]);
      report(
        "error",
        "unknown-quantity",
        "quantity",
        `"${excerpt(written)}" is no column of numbers that we know; the row was not used.`,
        meant === null ? "The name of a column, as launch_speed." : `Did you mean ${meant}?`,
      );
      return null;
    }
    const statedAs = textOf(row, "stated_as") as StatedAs | null;
    const kind = textOf(row, "kind") as ErrorKind | null;
    if (row.faults.includes("stated_as") || row.faults.includes("kind")) return null;
    if (statedAs === null) {
      report(
        "note",
        "assumed",
        "stated_as",
        "stated_as is empty: the number is taken as a standard uncertainty.",
        "standard, 95 % or limits.",
      );
    }
    if (kind === null) {
      report(
        "note",
        "assumed",
        "kind",
        "kind is empty: the error is taken as a new one in each row (independent).",
        "independent, or common for an error that all rows share.",
      );
    }
    const unitText = textOf(row, "unit");
    const relative = unitText !== null && column.dimension !== "ratio" &&
      findUnit(unitText, "ratio")?.name === "%";
    const unit = relative ? unitNamed("%", "ratio") : unitFor(column, unitText, report);
    if (unit === null) return null;
    const text = row.decimals["uncertainty"]!;
    const stated = decimalToSi(text, unit, true);
    if (!(stated > 0) || !Number.isFinite(stated)) {
      report(
        "error",
        "impossible-value",
        "uncertainty",
        `An uncertainty of ${text} can't be; the row was not used.`,
        "More than 0.",
      );
      return null;
    }
    return {
      row: row.row,
      own: row.own,
      quantity,
      instrument: textOf(row, "instrument"),
      uncertainty: standardUncertainty(stated, statedAs ?? "standard"),
      relative,
      statedAs: statedAs ?? "standard",
      kind: kind ?? "independent",
      how: textOf(row, "how"),
    };
  });
}
