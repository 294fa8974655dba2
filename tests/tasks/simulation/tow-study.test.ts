import { describe, expect, it } from "vitest";
import { runTowCell } from "lakeproof/tasks/simulation/run-tow-cell.ts";
import { drawTowSession } from "lakeproof/tasks/simulation/invented-tow-session.ts";
import { runTowCells } from "lakeproof/tasks/simulation/run-tow-cells.ts";
import { towAcceptance } from "lakeproof/tasks/simulation/tow-acceptance.ts";
import { TOW_KINDS } from "lakeproof/tasks/simulation/tow-kind.ts";
import { runSlip, UNIT_SLIPS } from "lakeproof/tasks/simulation/tow-slips.ts";
import { towCoverageTable, towFindingsTable } from "lakeproof/tasks/simulation/tow-study.ts";
import { leastPowerSpeed, trueLaw } from "lakeproof/tasks/simulation/towed-craft.ts";
import { WORD_TRIGGERS } from "lakeproof/tasks/simulation/word-triggers.ts";
import { seededRandom } from "lakeproof/numeric/random.ts";
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

  it("asks a one-sided statement to hold among the sessions that tell it, not only among all", () => {
    const tally = { ...cell.quantities.drag, cases: 400, held: 360 };
    const sure = { ...cell, sessions: 2000, quantities: { ...cell.quantities } };
    sure.quantities["bound on best"] = tally;
    const told = towAcceptance([sure]).filter((one) => one.what.includes("bound on best"));
    expect(told.map((one) => one.holds)).toEqual([false, true]);
  });

  it.each(["beyond", "below", "narrow"] as const)("tows where it says (%s)", (range) => {
    const random = seededRandom(range);
    const kind = TOW_KINDS.find((one) => one.range === range)!;
    for (let i = 0; i < 20; i++) {
      const { craft, speeds } = drawTowSession(kind, random);
      const [low, high] = [speeds[0]!, speeds.at(-1)!];
      if (range === "beyond") expect(low).toBeGreaterThan(1.049 * craft.best.speed);
      else if (range === "below") {
        expect(high).toBeLessThan(craft.best.speed / 1.049);
        expect(low).toBeGreaterThan(1.019 * craft.stallSpeed);
        expect(high / low).toBeGreaterThan(1.1);
      } else {
        expect(high / low).toBeGreaterThan(1.149);
        expect(high / low).toBeLessThan(1.251);
      }
    }
  });

  it("runs cells side by side with the counts they have alone", async () => {
    const [first, second] = await runTowCells(TOW_KINDS.slice(0, 2), 6);
    expect(first).toEqual(cell);
    expect(second!.name).toBe("usual 5 x 3");
  });

  it("knows the least power of a craft as the dip next below its best speed", () => {
    const { crafts: [craft] } = exampleTow("power");
    // a v^2 + e/v^2 is least at (e/a)^(1/4) and, times v, at (e/3a)^(1/4).
    const drag = (v: number) => 1.4 * v * v + 480 / (v * v);
    const best = { speed: (480 / 1.4) ** 0.25, liftToDrag: 10 };
    // The search stops within its own tolerance of a flat dip, about 1e-6.
    expect(leastPowerSpeed({ ...craft!, drag, best })).toBeCloseTo((480 / 4.2) ** 0.25, 5);
  });

  it("writes tables in the columns of those that are kept, for all cells", () => {
    const study = { cells: [cell], slips };
    const coverage = shared("tow-coverage.csv"), findings = shared("tow-findings.csv");
    expect(coverage[0]).toBe(towCoverageTable(study).split("\n")[0]);
    expect(findings[0]).toBe(towFindingsTable(study).split("\n")[0]);
    const columns = coverage.slice(1).map((line) => line.split(","));
    expect(new Set(columns.map((one) => one.slice(0, 7).join())).size).toBe(TOW_KINDS.length);
    expect(new Set(findings.slice(1).map((line) => line.split(",")[0]))).toEqual(
      new Set(Object.keys(WORD_TRIGGERS)),
    );
  });
});
