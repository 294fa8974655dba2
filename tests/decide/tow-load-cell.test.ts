import { describe, expect, it } from "vitest";
import type { Calibration } from "lakeproof/base/session.ts";
import { compareTows } from "lakeproof/decide/compare-tows.ts";
import { exampleTow } from "../support/towed-world.ts";
import { withTow } from "../support/with-tow.ts";

const { session } = exampleTow("two tows");

describe("a load cell with known loads in calibrations.csv", () => {
  const row = (
    applied: number | null,
    reading: number,
    when: Calibration["when"],
  ): Calibration => ({
    row: 2,
    own: {},
    instrument: "load cell",
    when,
    applied,
    appliedUnit: applied === null ? null : "kg",
    reading,
    readingUnit: "N",
  });
  // Reads 6 % too much and 2 N on top; 0.2 N of scatter.
  const reads = (newtons: number) => 1.06 * newtons + 2;
  const loads = [0, 2, 4, 6, 8, 10, 12].map((kg, i) =>
    row(kg, reads(9.80665 * kg) + 0.2 * (i % 2 ? 1 : -1), "before")
  );
  const off = withTow((one) => ({ lineTension: reads(one.lineTension!) }), session);

  it("is put right by them, and known better than without", () => {
    const plain = compareTows(session).answer.designs[0]!.bestLiftToDrag!;
    const wrong = compareTows(off).answer.designs[0]!.bestLiftToDrag!;
    const right = compareTows({ ...off, calibrations: loads }).answer.designs[0]!.bestLiftToDrag!;
    expect(wrong.value / plain.value).toBeLessThan(0.95);
    // Scatter of the calibration: 0.2 N in 60.
    expect(Math.abs(right.value / plain.value - 1)).toBeLessThan(0.005);
    expect(right.standardUncertainty!).toBeLessThan(plain.standardUncertainty!);
  });

  it("follows a zero that moved, and says so when it moved far", () => {
    const count = session.tow.length;
    const drifting = {
      ...session,
      tow: session.tow.map((one, i) => ({
        ...one,
        // The zeros are read just before the first reading and just after the last.
        lineTension: one.lineTension! + 3 * (i + 0.4) / (count - 0.2),
      })),
      calibrations: [row(null, 0, "before"), row(null, 3, "after")],
    };
    const { answer } = compareTows(drifting);
    expect(answer.findings.map((one) => one.code)).toContain("zero-moved");
    expect(answer.designs[0]!.law!.a).toBeCloseTo(
      compareTows(session).answer.designs[0]!.law!.a,
      8,
    );
  });

  it("says when they give no line", () => {
    const { findings } = compareTows({ ...session, calibrations: loads.slice(0, 2) }).answer;
    expect(findings.map((one) => one.code)).toContain("no-calibration");
  });
});
