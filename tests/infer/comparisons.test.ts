import { describe, expect, it } from "vitest";
import { bootstrapInterval } from "lakeproof/infer/bootstrap.ts";
import { meanInterval } from "lakeproof/infer/mean-interval.ts";
import { pairedPermutationTest, permutationTest } from "lakeproof/infer/permutation.ts";
import { meanOf, varianceOf } from "lakeproof/infer/sample.ts";
import { welchComparison } from "lakeproof/infer/welch.ts";
import { seededRandom } from "lakeproof/numeric/random.ts";
import golden from "../golden/infer-scipy.json" with { type: "json" };

// Golden values: tests/golden/infer-scipy.json, made by infer-scipy.py beside it (scipy 1.17.1).
const { baseline, candidate, skewed } = golden;

describe("the t interval of a mean", () => {
  it("equals scipy's", () => {
    const mean = meanInterval(baseline);
    // scipy's t quantile carries about 10 digits.
    expect(mean.low).toBeCloseTo(golden.meanInterval.low, 8);
    expect(mean.high).toBeCloseTo(golden.meanInterval.high, 8);
    expect(mean.degreesOfFreedom).toBe(baseline.length - 1);
  });

  it("keeps its width when every reading gets the same large offset", () => {
    const width = (offset: number) => {
      const mean = meanInterval(baseline.map((value) => value + offset));
      return mean.high! - mean.low!;
    };
    // Offset 2^30 leaves 22 bits of fraction in each reading.
    expect(width(2 ** 30)).toBeCloseTo(width(0), 6);
  });

  it("refuses one reading, and readings that are not numbers", () => {
    expect(() => meanInterval([3])).toThrow(/at least 2/);
    expect(() => meanInterval([3, NaN])).toThrow(/number 2/);
    expect(() => meanInterval([1, 2], { level: 1 })).toThrow(RangeError);
    expect(meanInterval([5, 5, 5])).toMatchObject({ value: 5, low: 5, high: 5 });
  });
});

describe("Welch's comparison", () => {
  it("equals scipy's, degrees of freedom and interval included", () => {
    const { difference, t, degreesOfFreedom, pValue } = welchComparison({ baseline, candidate });
    expect(t).toBeCloseTo(golden.welch.t, 11);
    expect(degreesOfFreedom).toBeCloseTo(golden.welch.degreesOfFreedom, 11);
    expect(pValue).toBeCloseTo(golden.welch.pValue, 11);
    expect(difference.low).toBeCloseTo(golden.welch.low, 8);
    expect(difference.high).toBeCloseTo(golden.welch.high, 8);
  });

  it("changes sign and nothing else when the sides are exchanged", () => {
    const one = welchComparison({ baseline, candidate });
    const other = welchComparison({ baseline: candidate, candidate: baseline });
    expect(other.difference.low).toBeCloseTo(-one.difference.high!, 12);
    expect(other.pValue).toBe(one.pValue);
  });

  it("refuses what cannot be compared", () => {
    expect(() => welchComparison({ baseline: [1], candidate })).toThrow(/baseline/);
    expect(() => welchComparison({ baseline: [2, 2], candidate: [3, 3] })).toThrow(/scatters/);
  });
});

describe("the permutation test", () => {
  it("equals scipy's exact one", () => {
    const result = permutationTest({ baseline, candidate });
    expect(result).toMatchObject({ how: "exact", arrangements: 792 });
    expect(result.pValue).toBeCloseTo(golden.permutation.pValue, 12);
    const small = permutationTest({
      baseline: baseline.slice(0, 4),
      candidate: candidate.slice(0, 3),
    });
    expect(small.difference).toBeCloseTo(golden.permutationSmall.difference, 12);
    expect(small.pValue).toBeCloseTo(golden.permutationSmall.pValue, 12);
  });

  it("counts ties in exact arithmetic as ties", () => {
    // Dealt out in tenths, whose doubles are not exact: by whole numbers the same count must come out.
    const tenths = permutationTest({ baseline: [0.1, 0.2, 0.3], candidate: [0.4, 0.2, 0.6] });
    const whole = permutationTest({ baseline: [1, 2, 3], candidate: [4, 2, 6] });
    expect(tenths.asExtreme).toBe(whole.asExtreme);
  });

  it("draws at random where all are too many, says so, and agrees with the exact count", () => {
    const random = seededRandom("permutation");
    const drawn = permutationTest({ baseline, candidate }, { mostExact: 1, random });
    expect(drawn.how).toBe("monte carlo");
    const exact = golden.permutation.pValue;
    // Four Monte Carlo standard errors with 20000 draws, and the observed arrangement counted.
    const allowed = 4 * Math.sqrt(exact * (1 - exact) / 20_000) + 1 / 20_000;
    expect(Math.abs(drawn.pValue - exact)).toBeLessThan(allowed);
    expect(() => permutationTest({ baseline, candidate }, { mostExact: 1 })).toThrow(/random/);
  });

  it("gives 1 when nothing differs", () => {
    expect(permutationTest({ baseline: [4, 4], candidate: [4, 4, 4] }).pValue).toBe(1);
    expect(pairedPermutationTest([0, 0, 0]).pValue).toBe(1);
  });

  it("swaps within pairs: three pairs one way can do no better than a quarter", () => {
    expect(pairedPermutationTest([1, 2, 3])).toMatchObject({ pValue: 0.25, arrangements: 8 });
  });
});

describe("the BCa bootstrap", () => {
  it("equals scipy's for a skewed mean and a variance, within Monte Carlo error", () => {
    const check = (
      statistic: (x: readonly number[]) => number,
      level: number,
      expected: { low: number; high: number; standardError: number },
    ) => {
      const random = seededRandom(`bootstrap ${level}`);
      const result = bootstrapInterval(skewed, statistic, { random, level, draws: 40_000 });
      if (!result.ok) throw new Error(result.reason);
      const { low, high, standardUncertainty } = result.quantity;
      // A tail percentile of 40000 draws has a Monte Carlo error of about 0.015 to 0.03 standard errors here.
      const allowed = 0.1 * expected.standardError;
      expect(Math.abs(low! - expected.low)).toBeLessThan(allowed);
      expect(Math.abs(high! - expected.high)).toBeLessThan(allowed);
      expect(Math.abs(standardUncertainty! / expected.standardError - 1)).toBeLessThan(0.03);
    };
    check(meanOf, 0.95, golden.bcaMean95);
    check(varianceOf, 0.9, golden.bcaVariance90);
  });

  it("says why there is no interval when nothing varies", () => {
    const result = bootstrapInterval([2, 2, 2, 2], meanOf, { random: seededRandom("none") });
    expect(result).toMatchObject({ ok: false });
    expect(() => bootstrapInterval([1, 2], meanOf, { random: seededRandom("two") })).toThrow();
  });
});
