import { describe, expect, it } from "vitest";
import { compareTows } from "lakeproof/decide/compare-tows.ts";
import { towAnswerObject } from "lakeproof/show/tow-json.ts";
import { towDrawnTable, towRobustTable } from "lakeproof/show/tow-views-table.ts";
import { towText } from "lakeproof/show/tow-text.ts";
import { exampleTow, speedsFrom } from "../support/towed-world.ts";

const NAME = "robust 3";
const stall = Math.max(...exampleTow(NAME).crafts.map((one) => one.stallSpeed));

/** 15 readings a design, five speeds three times. */
const { crafts, session } = exampleTow(NAME, {
  speeds: speedsFrom(1.12 * stall, 2 * stall, 5),
  sweeps: 3,
  shared: false,
});

/** One reading of alder 30 % too high. */
const wild = {
  ...session,
  tow: session.tow.map((one, at) =>
    at === 2 ? { ...one, lineTension: one.lineTension! * 1.3 } : one
  ),
};

describe("the robust view of a tow", () => {
  const clean = compareTows(session, { robust: true }).answer;
  const evidence = compareTows(wild, { robust: true });
  const [alder, birch] = evidence.answer.designs;

  it("is not told unless asked for, and changes nothing else", () => {
    const plain = compareTows(wild).answer;
    expect(plain.designs.map((one) => one.robust)).toEqual([null, null]);
    const without = evidence.answer.designs.map((one) => ({ ...one, robust: null }));
    expect(without).toEqual(plain.designs);
    const codes = evidence.answer.findings.map((one) => one.code)
      .filter((code) => code !== "weighted-down");
    expect(codes).toEqual(plain.findings.map((one) => one.code));
  });

  it("stays near the truth where one of 15 readings is 30 % too high, and is the narrower one", () => {
    const { bestLiftToDrag: best } = alder!.robust!;
    const truth = crafts[0]!.best.liftToDrag;
    expect(best!.low!).toBeLessThan(truth);
    expect(best!.high!).toBeGreaterThan(truth);
    const off = (value: number) => Math.abs(value / truth - 1);
    expect(off(best!.value)).toBeLessThan(0.03);
    const width = (q: typeof best) => Math.log(q!.high! / q!.low!);
    expect(width(best)).toBeLessThan(0.8 * width(alder!.bestLiftToDrag));
  });

  it("names the wild reading with its weight, and still counts it in the answer", () => {
    expect(alder!.robust!.weightedDown.map((one) => one.row)).toContain(4);
    const { weight, point } = alder!.robust!.weightedDown.find((one) => one.row === 4)!;
    expect(weight).toBeLessThan(0.1);
    expect(alder!.points.find((one) => one.row === 4)!.used).toBe(true);
    const told = evidence.answer.findings.find((one) => one.code === "weighted-down");
    expect(told!.what).toContain(`${point} (0.0`);
    expect(told!.what).toMatch(/Best lift-to-drag by it: /);
  });

  it("agrees with the answer where no reading is wild", () => {
    for (const { bestLiftToDrag: plain, robust } of [...clean.designs, birch!]) {
      const held = robust!.bestLiftToDrag!;
      expect(Math.abs(Math.log(held.value / plain!.value)))
        .toBeLessThan(0.5 * plain!.standardUncertainty! / plain!.value);
      expect(held.high! - held.low!).toBeLessThan(1.3 * (plain!.high! - plain!.low!));
    }
  });

  it("is told in JSON with its keys in order, in a table and at the terminal", () => {
    const one = towAnswerObject(evidence.answer).designs[0]!;
    expect(Object.keys(one.robust!))
      .toEqual(["bestLiftToDrag", "speedOfBestLiftToDrag", "weightedDown"]);
    const table = towRobustTable(evidence);
    expect(table.rows.length).toBe(4);
    for (const row of table.rows) expect(row.length).toBe(table.columns.length);
    expect(towText(evidence, true)).toContain("counts for little (weight)");
    expect(towRobustTable(compareTows(wild)).rows).toEqual([]);
  });

  it("stands beside uncertainty by drawing, each in its table", () => {
    const both = compareTows(wild, { robust: true, draws: 100 });
    const table = towDrawnTable(both);
    expect(table.rows.length).toBe(4);
    for (const row of table.rows) expect(row.length).toBe(table.columns.length);
    expect(Object.keys(towAnswerObject(both.answer).designs[0]!.byDrawing!))
      .toEqual(["draws", "tolerance", "bestLiftToDrag", "speedOfBestLiftToDrag"]);
    expect(table.caption).toContain("100 draws");
  });
});
