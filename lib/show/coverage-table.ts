/**
 * How often the interval held the truth in simulated sessions, as a table.
 *
 * @module
 */
import type { TableCell, TableRecord } from "../base/records.ts";
import { formatPercent } from "../base/rounding.ts";
import { formattedCell, textCell } from "./table-cells.ts";
import { left, right } from "./table-columns.ts";

/** One row of `shared/coverage.csv`, as text by column. */
export type CoverageRow = Readonly<Record<string, string>>;

/** What the worlds of the simulation are called on the page. */
const WORLDS: Readonly<Record<string, string>> = {
  prior: "shape of drag drawn from the stated doubt",
  camber: "cambered section (a stress test)",
  waves: "free surface in full, Reynolds number, struts",
  images: "image of the surface and plane waves",
};

/** How the runs of a row lie in days, and how they end. */
const PLANS: Readonly<Record<string, string>> = {
  "two even": "two days, both designs on each",
  "two lopsided": "two days, all but one run of each design on its own",
  "four even": "four days, both designs on each",
  "apart": "each design on its own day, which the verdict refuses",
  "some early": "a third of the runs stopped early",
  "all touched": "the board always touched before the wing stalled",
};

function worldOf(row: CoverageRow): string {
  const name = row["world"] ?? "";
  const parts = [
    WORLDS[name] ?? name,
    row["depth_known"] === "false" ? "depth not known" : "",
    ...[row["blocks"], row["ends"]].map((plan) => plan ? PLANS[plan] ?? plan : ""),
    row["pumped"] === "true" ? "one run in twenty pumped, and kept" : "",
    row["shared_errors"] === "true" ? "errors shared by all runs, stated" : "",
  ];
  return parts.filter((part) => part !== "").join("; ");
}

/** "7", or "3 and 9" where the designs differ. */
function runsOf({ runs_a_side: runs = "", candidate_runs: other = runs }: CoverageRow): string {
  return other === runs ? runs : `${runs} and ${other}`;
}

function share(text: string | undefined): TableCell {
  const value = Number(text);
  if (text === undefined || text === "" || !Number.isFinite(value)) return textCell("");
  return formattedCell(formatPercent(value, 1), value);
}

/**
 * Coverage cell by cell.
 *
 * @param rows of `shared/coverage.csv`, as the simulation wrote them
 * @param foils `pair`: two different foils; `null`: the same foil twice
 * @returns one row a world and number of runs
 */
export function coverageTable(rows: readonly CoverageRow[], foils: "pair" | "null"): TableRecord {
  const own = rows.filter((row) => row["foils"] === foils);
  const sessions = Math.min(...own.map((row) => Number(row["sessions"])));
  return {
    name: `coverage-${foils}`,
    caption: foils === "pair"
      ? `Two different foils launched at different speeds, ${sessions} sessions or more a row: how often the 95 % interval ` +
        "held the true ratio, how often a claim pointed the wrong way, and what a textbook interval of raw distances does."
      : `One and the same foil flown as two, launched at different speeds, ${sessions} sessions or more a row: a claim here ` +
        "is always false.",
    columns: [
      left("world"),
      right("runs a side"),
      right("interval held the truth"),
      right(foils === "pair" ? "claims the wrong way" : "false claims"),
      right("raw distances: held the truth"),
      right(foils === "pair" ? "raw: claims the wrong way" : "raw: false claims"),
    ],
    rows: own.map((row) => [
      textCell(worldOf(row)),
      textCell(runsOf(row)),
      share(row["coverage"]),
      share(row["wrong_claims"]),
      share(row["raw_coverage"]),
      share(row["raw_wrong_claims"]),
    ]),
  };
}
