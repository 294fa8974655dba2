/**
 * What the check of a published folder finds when somebody has tampered with it, as a table.
 *
 * @module
 */
import type { TableRecord } from "../base/records.ts";
import { formattedCell, textCell } from "./table-cells.ts";
import { left, right } from "./table-columns.ts";

/** One row of `shared/tampering.csv`, as text by column. */
export type TamperingRow = Readonly<Record<string, string>>;

/** "4 of 4". */
function ofAll(found: number, tries: number) {
  return formattedCell(`${found} of ${tries}`, found);
}

/**
 * Tampering kind by kind.
 *
 * @param rows of `shared/tampering.csv`, as the suite wrote them
 * @returns one row a kind, with the reason where one can't be found
 */
export function tamperingTable(rows: readonly TamperingRow[]): TableRecord {
  const count = (row: TamperingRow, column: string) => Number(row[column] ?? 0);
  const tries = rows.reduce(
    (sum, row) => sum + count(row, "tries_left") + count(row, "tries_anew"),
    0,
  );
  return {
    name: "tampering",
    caption:
      `${tries} seeded changes of a published folder: how many the check found, with the checksums left as they were, ` +
      "and by running it again after every checksum had been made anew.",
    columns: [
      left("what was changed"),
      right("found, checksums left"),
      right("found, checksums made anew"),
      left("why not, where not"),
    ],
    rows: rows.map((row) => {
      const anew = ["named_anew", "found_anew", "noted_anew"]
        .reduce((sum, column) => sum + count(row, column), 0);
      const missed = count(row, "tries_anew") - anew;
      return [
        textCell(row["tampering"] ?? ""),
        ofAll(count(row, "found_left"), count(row, "tries_left")),
        ofAll(anew, count(row, "tries_anew")),
        textCell(missed === 0 ? "" : row["why_missed"] ?? ""),
      ];
    }),
  };
}
