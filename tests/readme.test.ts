import { describe, expect, it } from "vitest";
import { readFileSync } from "node:fs";
import { readSharedTable, type TextRow } from "lakeproof/read/shared-table.ts";

const README = readFileSync(new URL("../README.md", import.meta.url), "utf8").replace(/\s+/g, " ");

const cells = readSharedTable("coverage.csv");

const plain = cells.filter((cell) =>
  ["4", "7", "12", "20"].includes(cell.runs_a_side!) && cell.runs_a_side === cell.candidate_runs &&
  cell.depth_known === "true" && cell.blocks === "" && cell.ends === "" &&
  cell.pumped === "false" && cell.shared_errors === "false"
);

const range = (column: string, of: readonly TextRow[]) => {
  const values = of.map((cell) => Number(cell[column]) * 100);
  return { low: Math.min(...values), high: Math.max(...values) };
};

const percent = (value: number) => value.toFixed(1);

describe("what the README says of the study", () => {
  it("counts its sessions", () => {
    const sessions = cells.reduce((sum, cell) => sum + Number(cell.sessions), 0);
    expect(README).toContain(`tried on ${sessions.toLocaleString("en")} simulated sessions`);
  });

  it("gives the coverage and the false claims of the plain cells as they are in the table", () => {
    expect(plain).toHaveLength(32);
    const held = range("coverage", plain);
    expect(README).toContain(`in ${percent(held.low)} to ${percent(held.high)} % of the sessions`);
    const wrong = range("wrong_claims", plain.filter((cell) => cell.foils === "null"));
    expect(README).toContain(
      `called different in ${percent(wrong.low)} to ${percent(wrong.high)} %`,
    );
    const astray = range("wrong_claims", plain.filter((cell) => cell.foils === "pair"));
    expect(README).toContain(`pointed the wrong way in at most ${astray.high.toFixed(2)} %`);
    const raw = range("raw_coverage", plain);
    expect(README).toContain(
      `raw distances held the truth in ${raw.low.toFixed(0)} to ${raw.high.toFixed(0)} %`,
    );
  });

  it("owns up to the cells in which the interval fails", () => {
    const apart = range("coverage", cells.filter((cell) => cell.blocks === "apart"));
    expect(README).toContain(`the interval fails (${apart.low.toFixed(0)} %)`);
  });
});

/** The README's words on tows, up to the next point of its list; `null` while it has none. */
const towWords = / - (Tows: .*?)(?= - | ## )/.exec(README)?.[1] ?? null;

const towCells = Object.values(
  Object.groupBy(
    readSharedTable("tow-coverage.csv"),
    (row) =>
      ["world", "speeds", "sweeps", "speed_scatter", "depth_known", "range"].map((key) => row[key])
        .join(),
  ),
).map((rows) => rows!);

/** Ends of a column over all cells, per cent, for each quantity that has it; each also for the cells of one world. */
function towRanges(column: string) {
  const rows = towCells.flat().filter((row) => row[column] !== "");
  const quantities = [...new Set(rows.map((row) => row.quantity!))];
  const groups = [
    ["drag", "best lift-to-drag", "speed of best"],
    ...quantities.map((one) => [one]),
  ];
  return ["usual", "stress", null].flatMap((world) =>
    groups.map((group) =>
      range(
        column,
        rows.filter((row) =>
          group.includes(row.quantity!) && (world === null || row.world === world)
        ),
      )
    )
  ).filter(({ low }) => Number.isFinite(low));
}

describe.runIf(towWords !== null)("what the README says of simulated tows", () => {
  it("counts the sessions and the readings of each", () => {
    const [, count, fewest, most] = /^Tows: ([\d,]+) simulated sessions of (\d+) to (\d+) readings/
      .exec(towWords!)!;
    // A few fits in a thousand end without a number and are in no row.
    const fitted = towCells.reduce(
      (sum, rows) => sum + Math.max(...rows.map((row) => Number(row.cases))),
      0,
    );
    expect(Math.abs(Number(count!.replaceAll(",", "")) / fitted - 1)).toBeLessThan(1e-3);
    const readings = towCells.flat().map((row) => Number(row.readings));
    expect([Number(fewest), Number(most)]).toEqual([Math.min(...readings), Math.max(...readings)]);
  });

  it("gives no share that the table does not", () => {
    const all = [...towRanges("coverage"), ...towRanges("wrong_claims")];
    const words = all.flatMap(({ low, high }) =>
      [1, 2].flatMap((digits) => [
        `${low.toFixed(digits)} to ${high.toFixed(digits)} %`,
        `at most ${high.toFixed(digits)} %`,
      ])
    );
    const told = towWords!.match(/[\d.]+ to [\d.]+ %|at most [\d.]+ %/g) ?? [];
    expect(told.length).toBeGreaterThan(0);
    expect(told.filter((one) => !words.includes(one))).toEqual([]);
  });
});
