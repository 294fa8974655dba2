/**
 * How many certified digits our least squares returns, set by set, as tables.
 *
 * @module
 */
import type { TableRecord } from "../base/records.ts";
import { type CertifiedDigits, countDigits } from "../decide/published-checks/certified-digits.ts";
import { numberCell, textCell } from "./table-cells.ts";
import { left, right } from "./table-columns.ts";

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
      left("data set"),
      left("level"),
      right("start"),
      right("coefficients", "digits"),
      right("standard errors", "digits"),
    ],
    rows: rows.map((row) => [
      textCell(row.set),
      textCell(row.level),
      textCell(row.start === null ? "" : String(row.start)),
      row.reason === null ? numberCell(row.parameterDigits, 1) : textCell(row.reason),
      numberCell(row.standardErrorDigits, 1),
    ]),
  };
}
