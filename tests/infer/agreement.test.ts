import { describe, expect, it } from "vitest";
import { combinedValue, normalisedError } from "lakeproof/infer/agreement.ts";
import { studentTQuantile } from "lakeproof/numeric/distributions.ts";
import { seededRandom } from "lakeproof/numeric/random.ts";
import golden from "../golden/agreement.json" with { type: "json" };

describe("two measurements of one thing", () => {
  it.each(golden.cases)("give what an independent script gives: $name", (one) => {
    const [a, b] = [one.tow, one.glide];
    // Quantiles of Student's t are good to 1e-10 here and there.
    expect(Math.abs(normalisedError(a, b, one.covariance) - one.en)).toBeLessThan(1e-9);
    const both = combinedValue(a, b, one.covariance);
    expect(Math.abs(both.value - one.combined.value)).toBeLessThan(1e-12);
    expect(Math.abs(both.variance / one.combined.variance - 1)).toBeLessThan(1e-12);
  });

  it("change the sign of their error with their order, and nothing else", () => {
    const [a, b] = [
      { value: 2.7, variance: 0.02 ** 2, degreesOfFreedom: 9 },
      { value: 2.65, variance: 0.03 ** 2, degreesOfFreedom: null },
    ];
    expect(normalisedError(a, b, 1e-4)).toBeCloseTo(-normalisedError(b, a, 1e-4), 14);
    const [one, other] = [combinedValue(a, b, 1e-4), combinedValue(b, a, 1e-4)];
    expect(one.value).toBeCloseTo(other.value, 14);
    expect(one.variance).toBeCloseTo(other.variance, 14);
  });

  it("can't be compared where their difference has no uncertainty", () => {
    const one = { value: 1, variance: 1, degreesOfFreedom: null };
    expect(() => normalisedError(one, one, 1)).toThrow(RangeError);
  });
});

/** Share of pairs that disagree, of true values so many standard uncertainties of one apart. */
function disagreeing(freedoms: readonly [number, number], apart: number): number {
  const random = seededRandom(`agreement ${freedoms} ${apart}`);
  const trials = 4000;
  const chiSquare = (n: number) => {
    let sum = 0;
    for (let i = 0; i < n; i++) sum += random.normal() ** 2;
    return sum;
  };
  const factors = freedoms.map((n) => studentTQuantile(0.975, n));
  let count = 0;
  for (let i = 0; i < trials; i++) {
    const sides = freedoms.map((n, k) => ({
      value: random.normal() + (k === 0 ? apart * Math.SQRT2 : 0),
      reach: factors[k]! * Math.sqrt(chiSquare(n) / n),
    }));
    const en = (sides[0]!.value - sides[1]!.value) / Math.hypot(sides[0]!.reach, sides[1]!.reach);
    if (Math.abs(en) > 1) count++;
  }
  return count / trials;
}

describe("how often two values disagree", () => {
  it.each([[[5, 5]], [[5, 30]], [[10, 10]], [[30, 30]]] as const)(
    "is 2 to 5 %% where they truly agree, with %j degrees of freedom",
    (freedoms) => {
      // 4000 pairs: three standard errors are 0.9 points.
      const size = disagreeing(freedoms, 0);
      expect(size).toBeGreaterThan(0.02);
      expect(size).toBeLessThan(0.05 + 0.009);
    },
  );

  it("is about a half where they are two standard uncertainties of their difference apart, most at three", () => {
    expect(Math.abs(disagreeing([10, 10], 2) - 0.48)).toBeLessThan(0.08);
    expect(disagreeing([10, 10], 3)).toBeGreaterThan(0.75);
  });
});
