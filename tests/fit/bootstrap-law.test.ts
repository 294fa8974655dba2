import { describe, expect, it } from "vitest";
import { bootstrapLaw, drawPlaces, type LawPoints } from "lakeproof/fit/bootstrap-law.ts";
import type { Three } from "lakeproof/fit/symmetric-three.ts";
import { linearLeastSquares } from "lakeproof/numeric/linear-least-squares.ts";
import { seededRandom } from "lakeproof/numeric/random.ts";

/** 40 points of a law with 2 % of scatter. */
function scattered(): LawPoints {
  const random = seededRandom("points to resample");
  const terms = Array.from({ length: 40 }, (_, i): Three => {
    const v = (3.5 + 3.5 * i / 39) / 5;
    return [v * v, 1, 1 / (v * v)];
  });
  const drag = terms.map(([x, y, z]) => 40 * x - 5 * y + 25 * z);
  return {
    terms,
    observed: drag.map((one) => one * (1 + 0.02 * random.normal())),
    weights: drag.map((one) => (0.02 * one) ** -2),
  };
}

const points = scattered();

/** The same least squares by orthogonal factors. */
function byFactors(places: Iterable<number>, covariance: "stated" | "scatter" = "stated") {
  const chosen = [...places];
  const fit = linearLeastSquares({
    columns: [0, 1, 2].map((j) => chosen.map((i) => points.terms[i]![j]!)),
    observed: chosen.map((i) => points.observed[i]!),
    uncertainties: chosen.map((i) => points.weights[i]! ** -0.5),
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

  it("refuses places that do not fill whole refits", () => {
    expect(() => bootstrapLaw(points, new Int32Array(81))).toThrow(/whole refits/);
    expect(() => drawPlaces(seededRandom("none"), 0, 3)).toThrow(/whole and above zero/);
  });
});
