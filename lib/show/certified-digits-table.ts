/**
 * How many certified digits our least squares returns, set by set, as tables.
 *
 * @module
 */
import type { TableCell, TableRecord } from "../base/records.ts";
import { type CertifiedDigits, countDigits } from "../decide/published-checks/certified-digits.ts";
import { textCell } from "./results-table.ts";

const digits = (value: number): TableCell => ({ ...textCell(value.toFixed(1)), number: value });

/**
 * One table of certified digits.
 *
 * @param rows of `linearDigits` or `nonlinearDigits`
 * @param words name of the table, and how its caption begins
 * @returns one row a set and start: digits of the worst coefficient and of the worst standard error
 */
export function certifiedDigitsTable(
  rows: readonly CertifiedDigits[],
  words: { readonly name: string; readonly caption: string },
): TableRecord {
  const counts = countDigits(rows);
  return {
    name: words.name,
    caption:
      `${words.caption} ${counts.parametersWith6} of ${counts.rows} have six digits or more in the worst ` +
      `coefficient, ${counts.standardErrorsWith4} have four or more in the worst standard error.`,
    columns: [
      { label: "data set", unit: "", align: "left" },
      { label: "level", unit: "", align: "left" },
      { label: "start", unit: "", align: "right" },
      { label: "coefficients", unit: "digits", align: "right" },
      { label: "standard errors", unit: "digits", align: "right" },
    ],
    rows: rows.map((row) => [
      textCell(row.set),
      textCell(row.level),
      textCell(row.start === null ? "" : String(row.start)),
      row.reason === null ? digits(row.parameterDigits) : textCell(row.reason),
      digits(row.standardErrorDigits),
    ]),
  };
}
