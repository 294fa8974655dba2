/**
 * How often the intervals of simulated tows held the truth, as a table.
 *
 * @module
 */
import type { TableCell, TableRecord } from "../base/records.ts";
import { formatPercent } from "../base/rounding.ts";
import type { CoverageRow } from "./coverage-table.ts";
import { formattedCell, textCell } from "./table-cells.ts";
import { left, right } from "./table-columns.ts";

/** What the worlds of the simulation are called on the page. */
const WORLDS: Readonly<Record<string, string>> = {
  usual: "drag by its parts",
  stress: "twisted, cambered wings (a stress test)",
};

/** What ranges of speeds are called on the page. */
const RANGES: Readonly<Record<string, string>> = {
  beyond: "towed only faster than the best speed",
  below: "towed only slower than the best speed",
  narrow: "towed over a narrow range of speeds",
};

function worldOf(row: CoverageRow): string {
  const name = row["world"] ?? "";
  const scatter = Number(row["speed_scatter"] ?? "");
  return [
    WORLDS[name] ?? name,
    scatter > 0 ? `wake and chop of ${formatPercent(scatter, 0)} at each speed` : "",
    row["depth_known"] === "false" ? "depth not known" : "",
    RANGES[row["range"] ?? ""] ?? "",
  ].filter((part) => part !== "").join("; ");
}

function share(text: string | undefined): TableCell {
  const value = Number(text);
  if (text === undefined || text === "" || !Number.isFinite(value)) return textCell("");
  return formattedCell(formatPercent(value, 1), value);
}

/** Rows of one cell of the study, by quantity. */
function cellsOf(rows: readonly CoverageRow[]): ReadonlyMap<string, CoverageRow>[] {
  const cells = new Map<string, Map<string, CoverageRow>>();
  for (const row of rows) {
    const key = `${worldOf(row)} ${row["readings"]}`;
    const cell = cells.get(key) ?? new Map<string, CoverageRow>();
    cell.set(row["quantity"] ?? "", row);
    cells.set(key, cell);
  }
  return [...cells.values()];
}

const first = (cell: ReadonlyMap<string, CoverageRow>) => cell.values().next().value ?? {};

/**
 * Coverage of one design's numbers cell by cell.
 *
 * @param rows of `shared/tow-coverage.csv`, as the simulation wrote them
 * @returns one row a world and number of readings
 */
export function towCoverageTable(rows: readonly CoverageRow[]): TableRecord {
  const cells = cellsOf(rows);
  const sessions = Math.min(...cells.map((cell) => Number(cell.get("drag")?.["cases"])));
  return {
    name: "tow-coverage",
    caption:
      `Simulated tows whose truth is known, ${sessions} or more a row: how often the 95 % interval held the truth.`,
    columns: [
      left("world"),
      right("readings"),
      right("drag at 4 m/s"),
      right("best lift-to-drag"),
      right("its speed"),
      right("a of the law"),
      right("K of the law"),
    ],
    rows: cells.map((cell) => [
      textCell(worldOf(first(cell))),
      textCell(first(cell)["readings"] ?? ""),
      ...["drag", "best lift-to-drag", "speed of best", "a of the law", "K of the law"].map((
        name,
      ) => share(cell.get(name)?.["coverage"])),
    ]),
  };
}

/**
 * What becomes of the same intervals when the errors that all readings share are left out: the reason why they are carried.
 *
 * @param rows of `shared/tow-coverage.csv`, as the simulation wrote them
 * @returns one row a number of readings, in the usual world
 */
export function sharedErrorsTable(rows: readonly CoverageRow[]): TableRecord {
  const cells = cellsOf(
    rows.filter((row) =>
      row["world"] === "usual" && Number(row["speed_scatter"]) === 0 &&
      row["depth_known"] === "true" && row["range"] === "across"
    ),
  );
  const names = ["drag", "best lift-to-drag", "speed of best"] as const;
  return {
    name: "tow-shared-errors",
    caption:
      "Why errors that all readings share are carried: how often the interval held the truth with them, and without. " +
      "Readings average out their own scatter, so without the shared errors more readings make an interval that is sure of itself and wrong.",
    columns: [
      right("readings"),
      ...["drag at 4 m/s", "best lift-to-drag", "its speed"].flatMap((words) => [
        right(words),
        right(`${words}, shared errors ignored`),
      ]),
    ],
    rows: cells.map((cell) => [
      textCell(first(cell)["readings"] ?? ""),
      ...names.flatMap((name) => [
        share(cell.get(name)?.["coverage"]),
        share(cell.get(name)?.["coverage_without_shared"]),
      ]),
    ]),
  };
}

/**
 * Claims of a difference between two designs cell by cell.
 *
 * @param rows of `shared/tow-coverage.csv`, as the simulation wrote them
 * @returns one row a world and number of readings
 */
export function towClaimsTable(rows: readonly CoverageRow[]): TableRecord {
  return {
    name: "tow-claims",
    caption:
      "Claims of a difference: between a craft and itself every claim is false; between two crafts a claim may point the " +
      "wrong way. By the ratio of the best lift-to-drag, and by the band over all speeds together.",
    columns: [
      left("world"),
      right("readings"),
      right("false claims, ratio"),
      right("false claims, band"),
      right("differences claimed, ratio"),
      right("differences claimed, band"),
      right("wrong way, ratio"),
      right("wrong way, band"),
    ],
    rows: cellsOf(rows).map((cell) => [
      textCell(worldOf(first(cell))),
      textCell(first(cell)["readings"] ?? ""),
      share(cell.get("ratio of one")?.["wrong_claims"]),
      share(cell.get("band of one")?.["wrong_claims"]),
      share(cell.get("ratio of two")?.["claims"]),
      share(cell.get("band of two")?.["claims"]),
      share(cell.get("ratio of two")?.["wrong_claims"]),
      share(cell.get("band of two")?.["wrong_claims"]),
    ]),
  };
}
