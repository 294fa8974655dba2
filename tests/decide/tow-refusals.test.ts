import { describe, expect, it } from "vitest";
import type { Session, TowPoint } from "lakeproof/base/session.ts";
import { finding } from "lakeproof/base/finding.ts";
import { compareTows } from "lakeproof/decide/compare-tows.ts";
import { exampleTow } from "../support/towed-world.ts";
import { withTow } from "../support/with-tow.ts";

const { session } = exampleTow("two tows");

const codes = (one: Session) => compareTows(one).answer.findings.map((two) => two.code);

describe("numbers in another unit than their header says", () => {
  it.each([
    ["line_tension", "kgf", (one: TowPoint) => ({ lineTension: one.lineTension! / 9.80665 })],
    ["line_tension", "lbf", (one: TowPoint) => ({ lineTension: one.lineTension! / 4.4482 })],
    ["speed", "kn", (one: TowPoint) => ({ speed: one.speed! / 0.51444 })],
    ["speed", "km/h", (one: TowPoint) => ({ speed: one.speed! * 3.6 })],
    ["carried_mass", "lb", (one: TowPoint) => ({ carriedMass: one.carriedMass! / 0.45359 })],
  ])("are found: %s in %s", (column, unit, change) => {
    for (const seed of ["two tows", "third", "fourth", "fifth"]) {
      const { answer } = compareTows(withTow(change, exampleTow(seed).session));
      const slips = answer.findings.filter((one) => one.code === "unit-slip");
      expect(slips, seed).toHaveLength(2);
      for (const one of slips) {
        expect(one, seed).toMatchObject({ severity: "error", column });
        expect(one.wanted, seed).toContain(`[${unit}]`);
      }
      for (const one of answer.designs) {
        expect(one).toMatchObject({ law: null, bestLiftToDrag: null, dragAt: [] });
      }
      expect(answer.comparisons[0]).toMatchObject({ bestLiftToDragRatio: null, jointTest: null });
    }
  });
});

describe("readings that carry no law", () => {
  const alder = session.tow.filter((one) => one.design === "alder");
  const only = (tow: readonly TowPoint[]): Session => ({ ...session, tow });

  it.each([
    ["one speed", alder.filter((one) => one.setSpeed === alder[0]!.setSpeed), /one speed/],
    [
      "all equal",
      alder.map((one) => ({ ...alder[0]!, row: one.row, point: one.point })),
      /one speed/,
    ],
    ["two points", alder.slice(0, 2), /2 speeds/],
    ["four readings", alder.slice(0, 4), /4 readings/],
    ["a narrow range", alder.map((one, i) => ({ ...one, speed: 5 + 0.01 * (i % 7) })), /1 % above/],
  ])("say so: %s", (_name, tow, words) => {
    const { answer } = compareTows(only(tow));
    const found = answer.findings.find((one) => one.code === "no-law");
    expect(found!.what).toMatch(words);
    expect(answer.designs[0]!.law).toBeNull();
    expect(answer.designs[0]!.bestLiftToDrag).toBeNull();
  });

  it("still give the drag at the speeds towed, as means", () => {
    const tow = alder.filter((one) => one.setSpeed === alder[0]!.setSpeed);
    const { speed, drag } = compareTows(only(tow)).answer.designs[0]!.dragAt[0]!;
    expect(speed).toBeCloseTo(tow.reduce((sum, one) => sum + one.speed!, 0) / tow.length, 12);
    const mean = tow.reduce((sum, one) => sum + one.lineTension! * Math.cos(one.lineAngle!), 0) /
      tow.length;
    expect(drag.value).toBeCloseTo(mean, 10);
    expect(drag.low! < mean && mean < drag.high!).toBe(true);
  });

  it.each([
    ["a line without load", { lineTension: 0 }],
    ["a tension of the wrong sign", { lineTension: -60 }],
    ["no speed at all", { speed: 0 }],
    ["a pull ten times too large", { lineTension: 900 }],
    ["a pull ten times too small", { lineTension: 7 }],
  ])("name the row: %s", (_name, part) => {
    const wrong = only(alder.map((one, i) => i === 4 ? { ...one, ...part } : one));
    const { answer } = compareTows(wrong);
    const found = answer.findings.filter((one) => one.code === "not-steady-flight");
    expect(found).toMatchObject([{ severity: "error", row: alder[4]!.row }]);
    expect(answer.designs[0]!.law).toBeNull();
    const kept = only(
      alder.map((one, i) => i === 4 ? { ...one, ...part, leaveOut: "cell slipped" } : one),
    );
    expect(compareTows(kept).answer.designs[0]!.law).not.toBeNull();
  });

  it("have none where the tables hold an error, and where nobody weighed the rider", () => {
    const error = finding({ severity: "error", code: "bad-number", file: "tow.csv", what: "x." });
    expect(compareTows({ ...session, findings: [error] }).answer.designs[0]!.law).toBeNull();
    expect(codes({ ...session, findings: [error] })).toContain("data-faults");
    const light = compareTows(withTow(() => ({ carriedMass: null }), session)).answer;
    expect(light.designs[0]!.law).toBeNull();
    expect(light.findings.find((one) => one.code === "no-law")!.what).toMatch(/no carried mass/);
  });
});
