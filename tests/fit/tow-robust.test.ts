import { describe, expect, it } from "vitest";
import { robustWeights } from "lakeproof/fit/robust-weights.ts";
import type { TowData } from "lakeproof/fit/tow-data.ts";
import { fitTow } from "lakeproof/fit/tow-fit.ts";
import { seededRandom } from "lakeproof/numeric/random.ts";
import golden from "../golden/tow-odr.json" with { type: "json" };
import robust from "../golden/tow-robust.json" with { type: "json" };

// Parent: tests/golden/tow-robust.py (scipy.optimize.least_squares with a loss of its own; versions in the JSON).

function data(stated: number | null): TowData {
  return {
    readings: golden.points.map(({ speed, pull, uPull }, i) => ({
      speed,
      tension: pull * (i === robust.wildPoint ? 1.3 : 1),
      angle: 0,
      weight: 800,
      inertia: 0,
      group: String(i),
      block: "all",
      uncertainty: {
        speed: { fixed: 0, share: 0 },
        tension: { fixed: stated ?? uPull, share: 0 },
        angle: 0,
      },
    })),
    craft: { lift: 800, phi: () => 1, expected: null },
  };
}

describe("the robust view without its planform", () => {
  const close = (actual: number, expected: number) =>
    // Both settle to 1e-10 or so of a standard uncertainty.
    expect(Math.abs(actual / expected - 1), `${actual} for ${expected}`).toBeLessThan(1e-6);

  for (
    const [name, stated, want] of [
      ["as stated", null, robust.asStated],
      ["where too little was stated and the median sets the scale", 0.4, robust.statedTooSmall],
    ] as const
  ) {
    it(`is scipy's least squares with the loss of Student's t, ${name}`, () => {
      const fit = fitTow(data(stated), { robust: true });
      if (!fit.ok) throw new Error(fit.reason);
      fit.parameters.forEach((p, j) => close(p, want.parameters[j]!));
      fit.robustWeights!.forEach((weight, i) => close(weight, want.weights[i]!));
      close(fit.within, want.within);
    });
  }

  it("is least squares itself, nearly, where no reading is wild", () => {
    const clean = data(null).readings.map((one, i) => ({
      ...one,
      tension: golden.points[i]!.pull,
    }));
    const plain = fitTow({ ...data(null), readings: clean });
    const held = fitTow({ ...data(null), readings: clean }, { robust: true });
    if (!plain.ok || !held.ok) throw new Error("no fit");
    expect(plain.robustWeights).toBeNull();
    // One in 70 readings of pure chance falls under 0.5; of these 18 one lies just there.
    expect(held.robustWeights!.filter((one) => one < 0.5).length).toBeLessThan(2);
    expect(Math.min(...held.robustWeights!)).toBeGreaterThan(0.4);
    held.parameters.forEach((p, j) => {
      expect(Math.abs(p - plain.parameters[j]!)).toBeLessThan(Math.sqrt(plain.covariance[j]![j]!));
    });
  });
});

describe("weights of Student's t", () => {
  it("pay an eighth or less for normal scatter", () => {
    const random = seededRandom("price of a robust view");
    const scaled = Array.from({ length: 40000 }, () => random.normal());
    const { weights, scale, steepness } = robustWeights(scaled);
    // By integrals over the normal distribution: steepness 0.786, variance over that of least squares 1.082.
    expect(scale).toBeLessThan(1.02);
    expect(Math.abs(steepness - 0.786)).toBeLessThan(0.015);
    const drawn = scaled.reduce((sum, z, i) => sum + (weights[i]! * z / steepness) ** 2, 0) / 40000;
    expect(Math.abs(drawn - 1.082)).toBeLessThan(0.03);
    // One in 70 lies beyond 2.45.
    const named = weights.filter((one) => one < 0.5).length / 40000;
    expect(named).toBeGreaterThan(0.012);
    expect(named).toBeLessThan(0.017);
  });

  it("let the scale be set by the middle of the sizes, never under 1", () => {
    expect(robustWeights([0, 0.1, -0.1, 50]).scale).toBe(1);
    expect(robustWeights([3, -3, 3, 1000]).scale).toBeCloseTo(3 * 1.4826, 9);
    expect(robustWeights([1, -2, 4, 8]).scale).toBeCloseTo(3 * 1.4826, 9);
  });
});
