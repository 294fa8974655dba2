import { describe, expect, it } from "vitest";
import { bootstrapLaw, drawPlaces, type LawPoints } from "lakeproof/fit/bootstrap-law.ts";
import type { Three } from "lakeproof/fit/symmetric-three.ts";
import { sampleQuantile, varianceOf } from "lakeproof/infer/sample.ts";
import { linearLeastSquares } from "lakeproof/numeric/linear-least-squares.ts";
import { seededRandom } from "lakeproof/numeric/random.ts";

/** Points of a law with 2 % of scatter. */
function scattered(count: number): LawPoints {
  const random = seededRandom("points to resample");
  const terms = Array.from({ length: count }, (_, i): Three => {
    const v = (3.5 + 3.5 * i / (count - 1)) / 5;
    return [v * v, 1, 1 / (v * v)];
  });
  const drag = terms.map(([x, y, z]) => 40 * x - 5 * y + 25 * z);
  return {
    terms,
    observed: drag.map((one) => one * (1 + 0.02 * random.normal())),
    weights: drag.map((one) => (0.02 * one) ** -2),
  };
}

const points = scattered(40);

/** The same least squares by orthogonal factors. */
function byFactors(
  places: Iterable<number>,
  covariance: "stated" | "scatter" = "stated",
  { terms, observed, weights } = points,
) {
  const chosen = [...places];
  const fit = linearLeastSquares({
    columns: [0, 1, 2].map((j) => chosen.map((i) => terms[i]![j]!)),
    observed: chosen.map((i) => observed[i]!),
    uncertainties: chosen.map((i) => weights[i]! ** -0.5),
  }, { covariance });
  if (!fit.ok) throw new Error(fit.reason);
  return fit;
}

describe("a law refitted to resampled points", () => {
  it("is the weighted least squares of the points drawn", () => {
    const places = drawPlaces(seededRandom("two refits"), 40, 2);
    const refits = [0, 1].map((b) => byFactors(places.subarray(40 * b, 40 * (b + 1))).parameters);
    const found = bootstrapLaw(points, places)!;
    const whole = byFactors(points.terms.keys()).parameters;
    for (const j of [0, 1, 2] as const) {
      const [one, two] = [refits[0]![j]!, refits[1]![j]!];
      // Normal equations of condition 1e5 leave eleven digits.
      expect(found.parameters[j] / whole[j]! - 1).toBeCloseTo(0, 10);
      expect(found.standardErrors[j] / (Math.abs(one - two) / Math.SQRT2) - 1).toBeCloseTo(0, 8);
      expect(found.low[j]).toBeCloseTo(Math.min(one, two) + 0.025 * Math.abs(one - two), 8);
    }
  });

  it("has the standard errors and quantiles of all its refits, of points even, odd and many in number", () => {
    for (const count of [40, 41, 130]) {
      const some = scattered(count);
      const places = drawPlaces(seededRandom(`quantiles of ${count}`), count, 200);
      const found = bootstrapLaw(some, places)!;
      const refits = Array.from(
        { length: 200 },
        (_, b) => byFactors(places.subarray(count * b, count * (b + 1)), "stated", some).parameters,
      );
      for (const j of [0, 1, 2] as const) {
        const sorted = refits.map((one) => one[j]!).sort((one, other) => one - other);
        // Against the spread, which normal equations of condition 1e5 leave ten digits of.
        const off = (one: number, other: number) => (one - other) / found.standardErrors[j];
        expect(off(found.standardErrors[j], Math.sqrt(varianceOf(sorted)))).toBeCloseTo(0, 8);
        expect(off(found.low[j], sampleQuantile(sorted, 0.025))).toBeCloseTo(0, 8);
        expect(off(found.high[j], sampleQuantile(sorted, 0.975))).toBeCloseTo(0, 8);
      }
    }
  });

  it("has quantiles where a single point makes one tail longer than a deviation can tell", () => {
    // A third of the refits leave it out and lie together, within 1.5 deviations of the mean: no tail on that side.
    const far = { ...points, observed: points.observed.map((one, i) => i === 39 ? 4 * one : one) };
    const places = drawPlaces(seededRandom("one far off"), 40, 300);
    const found = bootstrapLaw(far, places)!;
    for (const j of [0, 1, 2] as const) {
      const sorted = Array.from(
        { length: 300 },
        (_, b) => byFactors(places.subarray(40 * b, 40 * (b + 1)), "stated", far).parameters[j]!,
      ).sort((one, other) => one - other);
      expect(found.low[j] / sampleQuantile(sorted, 0.025)).toBeCloseTo(1, 8);
      expect(found.high[j] / sampleQuantile(sorted, 0.975)).toBeCloseTo(1, 8);
    }
  });

  it("scatters as first order says from the scatter found", () => {
    const found = bootstrapLaw(points, drawPlaces(seededRandom("many refits"), 40, 4000))!;
    const { covariance } = byFactors(points.terms.keys(), "scatter");
    for (const j of [0, 1, 2] as const) {
      const width = (found.high[j] - found.low[j]) / (2 * 1.96);
      // 40 points tell scatter that differs along the curve to 1/sqrt(80), 11 %; twice that.
      expect(Math.abs(found.standardErrors[j] / Math.sqrt(covariance[j]![j]!) - 1))
        .toBeLessThan(0.22);
      // Near enough normal: percentiles and standard errors of 4,000 refits agree to 5 %.
      expect(Math.abs(width / found.standardErrors[j] - 1)).toBeLessThan(0.05);
    }
    expect(found.used).toBe(4000);
  });

  it("leaves out refits that took fewer than three different points, and gives nothing where all did", () => {
    const lonely = new Int32Array(80);
    expect(bootstrapLaw(points, lonely)).toBeNull();
    const alike = { ...points, terms: points.terms.map((): Three => [1, 1, 1]) };
    expect(bootstrapLaw(alike, drawPlaces(seededRandom("alike"), 40, 3))).toBeNull();
  });

  it("refuses places that do not fill whole refits, and numbers that are none", () => {
    expect(() => bootstrapLaw(points, new Int32Array(81))).toThrow(/whole refits/);
    const broken = { ...points, observed: points.observed.map((one, i) => i === 7 ? NaN : one) };
    expect(() => bootstrapLaw(broken, new Int32Array(80))).toThrow(/not finite/);
    expect(() => drawPlaces(seededRandom("none"), 0, 3)).toThrow(/whole and above zero/);
  });
});
