import { describe, expect, it } from "vitest";
import { calibrationChange } from "lakeproof/fit/calibration-change.ts";

const pairs = (scale: number, offset: number, values: readonly number[]) =>
  values.map((applied, i) => ({
    applied,
    reading: scale * applied + offset + [0.1, -0.2, 0.1][i % 3]!,
  }));

describe("two sets of known values", () => {
  const before = pairs(1, 0, [0, 30, 60, 90, 120, 150]);

  it("give back the change of offset and slope between them", () => {
    const change = calibrationChange(before, pairs(1.02, 1, [0, 40, 80, 120]));
    if (!change.ok) throw new Error(change.reason);
    // By hand: applied = (reading - 1)/1.02 after, reading before; scatter of 0.2 N.
    expect(change.slope).toBeCloseTo(1 / 1.02 - 1, 2);
    expect(Math.abs(change.atCentre - ((change.centre - 1) / 1.02 - change.centre))).toBeLessThan(
      0.3,
    );
    expect(change.numerator).toBe(2);
    expect(change.pValue).toBeLessThan(0.001);
  });

  it("are compared in level alone where one of them is a single value", () => {
    const change = calibrationChange(before, [{ applied: 80, reading: 80 }]);
    if (!change.ok) throw new Error(change.reason);
    expect([change.numerator, change.slope]).toEqual([1, 0]);
    expect(change.pValue).toBeGreaterThan(0.05);
  });

  it("can't be where a side is missing or nothing is left to tell the scatter", () => {
    expect(calibrationChange(before, [])).toMatchObject({ ok: false });
    expect(calibrationChange(before.slice(0, 2), before.slice(2, 4))).toMatchObject({ ok: false });
  });
});
