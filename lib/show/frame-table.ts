/**
 * A data frame as a table: what a notebook worked out for itself, shown like everything else.
 *
 * @module
 */
import type { TableCell, TableRecord } from "../base/records.ts";
import { numberCell, textCell } from "./table-cells.ts";
import { left, right } from "./table-columns.ts";

/** The little of a data frame that is needed here, whichever library made it. */
export interface FrameLike {
  readonly columns: readonly string[];
  toRecords(): readonly Readonly<Record<string, unknown>>[];
}

function cellOf(value: unknown, decimals: number): TableCell {
  if (typeof value === "number" && Number.isFinite(value)) {
    return numberCell(value, Number.isInteger(value) ? 0 : decimals);
  }
  return textCell(value === null || value === undefined ? "" : String(value));
}

/**
 * A frame's rows as they stand.
 *
 * @param frame small: every row is shown
 * @param words name of the table, caption, and decimals of numbers that are not whole (2 by default)
 * @returns numbers to the right, all else to the left
 */
export function frameTable(
  frame: FrameLike,
  words: { readonly name: string; readonly caption: string; readonly decimals?: number },
): TableRecord {
  const records = frame.toRecords();
  const isNumber = (column: string) => records.some((record) => typeof record[column] === "number");
  return {
    name: words.name,
    caption: words.caption,
    columns: frame.columns.map((label) => isNumber(label) ? right(label) : left(label)),
    rows: records.map((record) =>
      frame.columns.map((column) => cellOf(record[column], words.decimals ?? 2))
    ),
  };
}
