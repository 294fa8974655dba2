import { describe, expect, it } from "vitest";
import { calibratedValue, calibrationLine, lineAbout } from "lakeproof/fit/calibration-line.ts";
import { zeroDrift } from "lakeproof/fit/zero-drift.ts";
import { propagate } from "lakeproof/infer/propagate.ts";

// The guide's thermometer (GUM H.3) goes through this code in shared/published-values.csv.

const WEIGHTS = [0, 20, 40, 60, 80, 100, 120, 140, 157].map((applied, i) => ({
  applied,
  reading: 1.3 + 0.98 * applied + [0.3, -0.4, 0.1, 0.5, -0.6, 0.2, 0.3, -0.5, 0.1][i]!,
}));

function line(appliedShare = 0) {
  const found = calibrationLine(WEIGHTS, { appliedShare });
  if (!found.ok) throw new Error(found.reason);
  return found;
}

describe("a calibration line", () => {
  it("gives a value the same uncertainty from any origin, covariance and all", () => {
    const here = calibratedValue(line(), 65);
    for (const origin of [-40, 0, 65, 400]) {
      const about = lineAbout(line(), origin);
      const { quantity } = propagate(([a, b]) => a! + b! * (65 - origin), [
        { name: "a", value: about.intercept, standardUncertainty: about.interceptUncertainty },
        { name: "b", value: about.slope, standardUncertainty: about.slopeUncertainty },
      ], {
        correlations: [{
          between: ["a", "b"],
          coefficient: about.covariance / (about.interceptUncertainty * about.slopeUncertainty),
        }],
      });
      expect(quantity.value).toBeCloseTo(here.value, 10);
      // Differences of numbers some hundred times larger than the result.
      expect(quantity.standardUncertainty).toBeCloseTo(here.standardUncertainty, 9);
    }
  });

  it("turns readings back into the weights", () => {
    for (const { applied, reading } of WEIGHTS) {
      // Scatter of 0.4 N or so.
      expect(Math.abs(calibratedValue(line(), reading).value - applied)).toBeLessThan(1);
    }
  });

  it("adds what is open about the weights as one share of the value", () => {
    const without = calibratedValue(line(), 100).standardUncertainty;
    const { value, standardUncertainty } = calibratedValue(line(0.001), 100);
    expect(standardUncertainty).toBeCloseTo(Math.hypot(without, 0.001 * value), 12);
  });

  it("needs three readings at two values, and finite numbers", () => {
    expect(calibrationLine(WEIGHTS.slice(0, 2))).toMatchObject({ ok: false });
    expect(calibrationLine([1, 2, 3].map((applied) => ({ reading: 5, applied })))).toMatchObject({
      ok: false,
    });
    expect(() => calibrationLine([{ reading: NaN, applied: 0 }])).toThrow(/finite/);
  });
});

describe("a zero read before and after", () => {
  it("is corrected evenly, with the doubt of a rectangle as wide as the drift", () => {
    const zero = zeroDrift({ before: -0.4, after: 0.2 });
    expect([0, 1].map(zero.zeroAt)).toEqual([-0.4, expect.closeTo(0.2, 12)]);
    // Mean square of a rectangle: width squared over twelve.
    expect(zero.standardUncertainty ** 2).toBeCloseTo(0.36 / 12, 12);
  });

  it("has none outside its time, nor from readings that are none", () => {
    expect(() => zeroDrift({ before: 0, after: 1 }).zeroAt(1.5)).toThrow(/share of time/);
    expect(() => zeroDrift({ before: 0, after: NaN })).toThrow(/finite/);
  });
});
