/**
 * Instruments against known values: rows of calibrations.csv.
 *
 * @module
 */
import { decimalToSi } from "../base/decimal-to-si.ts";
import { type Calibration } from "../base/session.ts";
import { CALIBRATIONS } from "../base/tables.ts";
import { findUnit, SI_UNITS } from "../base/units.ts";
import { each, type QuantityRows, textOf } from "./quantity-rows.ts";
import { type ReadTable } from "./read-table.ts";

/**
 * Rows of `calibrations.csv`; values in SI where their unit is known, else as they stand.
 *
 * @param table as read
 * @returns one calibration a row, in order, and what was found
 */
export function readCalibrations(table: ReadTable): QuantityRows<Calibration> {
  return each(CALIBRATIONS, table, (row) => {
    const inSi = (column: string) => {
      const text = row.decimals[column];
      const unit = findUnit(textOf(row, `${column}_unit`) ?? "");
      if (text === undefined) return null;
      return unit === null ? Number(text) : decimalToSi(text, unit);
    };
    const unitOf = (column: string) => {
      const written = textOf(row, `${column}_unit`);
      const unit = written === null ? null : findUnit(written);
      return unit === null ? written : SI_UNITS[unit.dimension];
    };
    return {
      row: row.row,
      own: row.own,
      instrument: textOf(row, "instrument")!,
      when: textOf(row, "when") as Calibration["when"],
      sweep: textOf(row, "sweep"),
      applied: inSi("applied"),
      appliedUnit: unitOf("applied"),
      reading: inSi("reading")!,
      readingUnit: unitOf("reading"),
    };
  });
}
