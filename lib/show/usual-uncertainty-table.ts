/**
 * How well each column is taken to be known where a session says nothing, as a table.
 *
 * @module
 */
import type { TableRecord } from "../base/records.ts";
import { formatNumber, formatPercent, unitText } from "../base/rounding.ts";
import { GLIDES } from "../base/tables.ts";
import { columnUncertainty } from "../check/column-uncertainty.ts";
import { textCell } from "./table-cells.ts";
import { left } from "./table-columns.ts";

/** SI unit of each column of glides.csv that carries an uncertainty. */
const UNITS: Readonly<Record<string, string>> = {
  speed: "m/s",
  length: "m",
  time: "s",
  mass: "kg",
};

/**
 * The usual standard uncertainties of the columns of glides.csv.
 *
 * @returns one row a column: name, what it is measured with, standard uncertainty
 */
export function usualUncertaintyTable(): TableRecord {
  const rows = GLIDES.columns.flatMap((column) => {
    const unit = UNITS[column.dimension ?? ""];
    if (unit === undefined) return [];
    const { fixed, share, instrument } = columnUncertainty([], column.name);
    const parts = [
      ...(share > 0 ? [formatPercent(share, 1)] : []),
      ...(fixed > 0 ? [`${formatNumber(fixed, 2)}\u00a0${unitText(unit)}`] : []),
    ];
    return [[textCell(column.name), textCell(instrument), textCell(parts.join(" and "))]];
  });
  return {
    name: "usual-uncertainties",
    caption:
      "Used where instruments.csv says nothing (common practice, no source). One standard uncertainty: two " +
      "readings of three lie within it. A share and a fixed part add as the sides of a right angle do.",
    columns: [
      left("column"),
      left("measured with"),
      left("standard uncertainty"),
    ],
    rows,
  };
}
