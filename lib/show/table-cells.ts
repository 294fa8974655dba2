/**
 * Cells that the tables share: text, a number, a quantity with its interval, a design with its mark.
 *
 * @module
 */
import type { Quantity } from "../base/quantity.ts";
import type { TableCell } from "../base/records.ts";
import { decimalsOf, formatNumber } from "../base/rounding.ts";
import { printable } from "../base/printable.ts";

/** What is not known. */
export const EMPTY_CELL: TableCell = { text: "–", number: null, mark: null };

/**
 * A cell of text.
 *
 * @param text anything; what can't be printed becomes "?"
 * @returns a cell without a number
 */
export function textCell(text: string): TableCell {
  return { text: printable(text), number: null, mark: null };
}

/**
 * A design's name with its mark.
 *
 * @param design its name
 * @param place of the design, which gives colour and mark
 * @returns a cell without a number
 */
export function designCell(design: string, place: number): TableCell {
  const name = printable(design);
  return { text: name, number: null, mark: { design: name, place } };
}

/**
 * A number that was formatted with rules of its own.
 *
 * @param text as people read it
 * @param number in the unit of its column, as files hold it
 * @returns a cell
 */
export function formattedCell(text: string, number: number): TableCell {
  return { text: printable(text), number, mark: null };
}

/**
 * A number with a given count of decimals.
 *
 * @param value in the unit of its column; `null` for what is not known
 * @param decimals how many are shown; the cell's number keeps all
 * @returns a cell; a dash for what is not known
 */
export function numberCell(value: number | null, decimals: number): TableCell {
  return value === null
    ? EMPTY_CELL
    : { text: formatNumber(value, decimals), number: value, mark: null };
}

/**
 * Value and interval ends of a quantity as three cells, all with the decimals that its uncertainty leaves.
 *
 * @param q in the unit of its columns; `null` for what is not known
 * @param apartFrom a value that the ends must not be rounded onto, such as 1 for a ratio
 * @returns value, low and high
 */
export function intervalCells(
  q: Quantity | null,
  apartFrom?: number,
): [TableCell, TableCell, TableCell] {
  if (q === null) return [EMPTY_CELL, EMPTY_CELL, EMPTY_CELL];
  const decimals = decimalsOf(q, apartFrom === undefined ? {} : { apartFrom });
  return [
    numberCell(q.value, decimals),
    numberCell(q.low, decimals),
    numberCell(q.high, decimals),
  ];
}
