/**
 * How often each word about a tow is said without a cause, and how often a wrong unit is caught, as tables.
 *
 * @module
 */
import type { TableCell, TableRecord } from "../base/records.ts";
import { formatPercent } from "../base/rounding.ts";
import type { CoverageRow } from "./coverage-table.ts";
import { formattedCell, textCell } from "./table-cells.ts";
import { left, right } from "./table-columns.ts";

function share(text: string | undefined): TableCell {
  const value = Number(text);
  if (text === undefined || text === "" || !Number.isFinite(value)) return textCell("");
  return formattedCell(formatPercent(value, 1), value);
}

/** Numbers of readings in the order of the rows. */
const readingsOf = (rows: readonly CoverageRow[]) => [
  ...new Set(rows.map((row) => row["readings"] ?? "")),
];

/**
 * Words said of simulated tows in which nothing is wrong.
 *
 * @param rows of `shared/tow-findings.csv`, as the simulation wrote them
 * @returns one row a word, one column a number of readings
 */
export function falseWordsTable(rows: readonly CoverageRow[]): TableRecord {
  const clean = rows.filter((row) => row["sessions"] === "clean" && row["world"] === "usual");
  const readings = readingsOf(clean);
  const codes = [...new Set(clean.map((row) => row["code"] ?? ""))];
  const find = (code: string, count: string) =>
    clean.find((row) => row["code"] === code && row["readings"] === count);
  return {
    name: "tow-false-words",
    caption:
      "Simulated tows in which nothing is wrong: of how many designs each word is said all the same. Some of these words are " +
      "true of a sound tow too: the best speed may lie outside what was towed, and readings may scatter more than stated.",
    columns: [
      left("word"),
      left("said when"),
      ...readings.map((count) => right(`${count} readings`)),
    ],
    rows: codes.map((code) => [
      textCell(code),
      textCell(find(code, readings[0] ?? "")?.["trigger"] ?? ""),
      ...readings.map((count) => share(find(code, count)?.["said"])),
    ]),
  };
}

/**
 * Simulated tows written down in a wrong unit.
 *
 * @param rows of `shared/tow-findings.csv`, as the simulation wrote them
 * @returns one row a slip; of each number of readings the share refused, and the share whose unit is named
 */
export function unitSlipsTable(rows: readonly CoverageRow[]): TableRecord {
  const slipped = rows.filter((row) => row["sessions"] === "slipped");
  const readings = readingsOf(slipped);
  const slips = [...new Set(slipped.map((row) => row["trigger"] ?? ""))];
  const find = (slip: string, count: string) =>
    slipped.find((row) => row["trigger"] === slip && row["readings"] === count);
  return {
    name: "tow-unit-slips",
    caption:
      "Simulated tows written down in a wrong unit: how often the answer is refused, and how often the right unit is named.",
    columns: [
      left("slip"),
      ...readings.flatMap((
        count,
      ) => [right(`${count} readings: refused`), right(`${count}: unit named`)]),
    ],
    rows: slips.map((slip) => [
      textCell(slip),
      ...readings.flatMap((count) => {
        const row = find(slip, count);
        return [share(row?.["said"]), share(row?.["unit_named"])];
      }),
    ]),
  };
}
