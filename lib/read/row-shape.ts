/**
 * Rows whose cells don't line up with their header: another delimiter, too many cells, lines swallowed by a quote.
 *
 * @module
 */
import { excerpt } from "../base/printable.ts";
import { columnLetter, type MatchedHeader } from "./match-header.ts";
import { type Delimiter } from "./split-table.ts";

/** Why a row can't be read at all. */
export interface ShapeFault {
  readonly code: "other-delimiter" | "surplus-cell";
  /** Letter of the column, where there is one to point at. */
  readonly column: string | null;
  readonly what: string;
  readonly wanted: string;
}

const SPOKEN: Readonly<Record<string, string>> = { ",": "commas", ";": "semicolons", "\t": "tabs" };

/** The delimiter a row was written with, if it is another than its file's: one cell, or too few, that another mark cuts right. */
function otherDelimiter(
  cells: readonly string[],
  header: MatchedHeader,
  mark: Delimiter,
): string | null {
  if (header.columns.length < 2) return null;
  const filled = cells.filter((cell) => cell.trim() !== "").length;
  const enough = Math.max(1, Math.floor((header.width - 1) / 2));
  const others = Object.keys(SPOKEN).filter((other) => other !== mark);
  return others.find((other) => {
    const first = cells[0]!.split(other).length - 1;
    const all = cells.join("").split(other).length - 1;
    return first >= 1 &&
      ((filled === 1 && first >= enough) || (all >= header.width - 1 && filled < header.width));
  }) ?? null;
}

/**
 * What is wrong with the shape of a row, if anything.
 *
 * Too few cells are no fault (spreadsheets leave off empty ones at the end), nor are empty ones beyond the header.
 *
 * @param cells of the row
 * @param header of its table
 * @param delimiter of its file
 * @returns why the row can't be used, `null` where its shape is right
 */
export function shapeFault(
  cells: readonly string[],
  header: MatchedHeader,
  delimiter: Delimiter,
): ShapeFault | null {
  const other = otherDelimiter(cells, header, delimiter);
  if (other !== null) {
    return {
      code: "other-delimiter",
      column: null,
      what: `This row has ${SPOKEN[other]} between its cells, the header has ${
        SPOKEN[delimiter]
      }; it was not used.`,
      wanted: `The cells parted by ${SPOKEN[delimiter]}, as in the rest of the file.`,
    };
  }
  const surplus = cells.findIndex((cell, place) => place >= header.width && cell.trim() !== "");
  if (surplus < 0) return null;
  const letter = columnLetter(surplus);
  return {
    code: "surplus-cell",
    column: letter,
    what: `The row has more cells than the header has names: "${
      excerpt(cells[surplus]!)
    }" stands in column ${letter}. The row was not used.`,
    wanted: delimiter === ","
      ? 'Quotation marks around text that holds a comma ("wind, left"), and a point before decimals.'
      : "One cell for each name in the header.",
  };
}

/**
 * Whether a cell with line breaks holds what looks like whole rows: the mark of a quote that closes too late.
 *
 * @param cell its whole text
 * @param delimiter of its file
 * @returns true when a line after the first holds more than three cells' worth
 */
export function swallowsRows(cell: string, delimiter: Delimiter): boolean {
  return cell.trim().split(/\r\n|\n|\r/).slice(1).some((line) => line.split(delimiter).length > 3);
}
