import { describe, expect, it } from "vitest";
import { runTowCell } from "lakeproof/tasks/simulation/run-tow-cell.ts";
import { towAcceptance } from "lakeproof/tasks/simulation/tow-acceptance.ts";
import { TOW_KINDS } from "lakeproof/tasks/simulation/tow-kind.ts";
import { runSlip, UNIT_SLIPS } from "lakeproof/tasks/simulation/tow-slips.ts";
import { towCoverageTable, towFindingsTable } from "lakeproof/tasks/simulation/tow-study.ts";
import { trueLaw } from "lakeproof/tasks/simulation/towed-craft.ts";
import { WORD_TRIGGERS } from "lakeproof/tasks/simulation/word-triggers.ts";
import { ellipticLinePhi } from "lakeproof/model/free-surface.ts";
import { exampleTow } from "../../support/towed-world.ts";

const cell = runTowCell(TOW_KINDS[0]!, 6);
const slips = UNIT_SLIPS.map((slip) => runSlip(TOW_KINDS[0]!, slip, 3));
const shared = (name: string) =>
  Deno.readTextFileSync(new URL(`../../../shared/${name}`, import.meta.url)).trim().split("\n");

describe("the study on tows", () => {
  it("gives the same counts again for the same cell", () => {
    const again = runTowCell(TOW_KINDS[0]!, 6);
    expect(again.quantities.drag.held).toBe(cell.quantities.drag.held);
    expect(again.quantities.drag.halfWidth).toBe(cell.quantities.drag.halfWidth);
    expect([...again.words]).toEqual([...cell.words]);
    expect(again.bands).toEqual(cell.bands);
  });

  it("counts a craft's law as the law that lies nearest to its true drag", () => {
    const { crafts: [craft] } = exampleTow("law");
    const phi = ellipticLinePhi(craft!);
    const drag = (v: number) => 1.4 * v * v - 6 + 480 * phi(v, 9.80665) / (v * v);
    const law = trueLaw({ ...craft!, drag }, { from: 3.4, to: 6.8 });
    expect(law.a).toBeCloseTo(1.4, 9);
    expect(law.K / (480 * 999.1 * craft!.area / (2 * craft!.lift ** 2))).toBeCloseTo(1, 9);
  });

  it("refuses every slip of a unit", () => {
    for (const one of slips) expect(one.refused, one.slip.words).toBe(one.designs);
  });

  it("asks more of an interval with shared errors than one without can give", () => {
    const sure = { ...cell, quantities: { ...cell.quantities } };
    sure.speeds = 9;
    sure.sweeps = 3;
    const { drag } = cell.quantities;
    const tally = { ...drag, cases: 2000, held: 1900, heldWithoutShared: 1900, halfWidth: 0.04 };
    sure.quantities["best lift-to-drag"] = tally;
    const fails = towAcceptance([sure]).filter((one) => one.what.includes("without the shared"));
    expect(fails.map((one) => one.holds)).toEqual([false]);
  });

  it("writes tables in the columns of those that are kept, for all cells", () => {
    const study = { cells: [cell], slips };
    const coverage = shared("tow-coverage.csv"), findings = shared("tow-findings.csv");
    expect(coverage[0]).toBe(towCoverageTable(study).split("\n")[0]);
    expect(findings[0]).toBe(towFindingsTable(study).split("\n")[0]);
    const columns = coverage.slice(1).map((line) => line.split(","));
    expect(new Set(columns.map((one) => one.slice(0, 6).join())).size).toBe(TOW_KINDS.length);
    expect(new Set(findings.slice(1).map((line) => line.split(",")[0]))).toEqual(
      new Set(Object.keys(WORD_TRIGGERS)),
    );
  });
});
