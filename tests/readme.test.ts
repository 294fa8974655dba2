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
