/**
 * A table as files that spreadsheets open: one with decimal points, one for spreadsheets set to decimal commas.
 *
 * Full numbers, not the rounded text of the page. A text that a spreadsheet would take for a formula is guarded.
 *
 * Source: RFC 4180 for the quoting.
 *
 * @module
 */
import { stringify } from "csv-stringify/sync";
import type { TableRecord } from "../../base/records.ts";

/** Digits that files carry: past these, engines differ. */
const DIGITS = 12;

/** How the numbers of a file are written. */
export type DecimalSign = "point" | "comma";

const BYTE_ORDER_MARK = "\ufeff";

/**
 * A table as CSV text.
 *
 * @param table the record that a notebook showed
 * @param sign with `comma`, cells are parted by semicolons and a byte order mark tells the encoding
 * @returns lines ended by CR LF
 */
export function tableCsv(table: TableRecord, sign: DecimalSign): string {
  const head = table.columns.map((column) =>
    column.unit === "" ? column.label : `${column.label} [${column.unit}]`
  );
  const rows = table.rows.map((row) =>
    row.map((cell) => cell.number === null ? cell.text : Number(cell.number.toPrecision(DIGITS)))
  );
  const text = stringify([head, ...rows], {
    delimiter: sign === "comma" ? ";" : ",",
    record_delimiter: "\r\n",
    escape_formulas: true,
    cast: {
      // A number is never guarded: "-2,5" must stay a number to the spreadsheet.
      number: (value: number) => ({
        value: sign === "comma" ? String(value).replace(".", ",") : String(value),
        escape_formulas: false,
      }),
    },
  });
  return sign === "comma" ? BYTE_ORDER_MARK + text : text;
}
