import { describe, expect, it } from "vitest";
import { AdjustedPoints } from "lakeproof/fit/adjusted-points.ts";
import type { TowData } from "lakeproof/fit/tow-data.ts";
import { minimumBetween } from "lakeproof/numeric/minimum.ts";

const LAW = [40, -5, 25] as const, V0 = 5;
const drag = (v: number) => LAW[0] * (v / V0) ** 2 + LAW[1] + LAW[2] * (V0 / v) ** 2;
const SPEEDS = [3.6, 4.4, 5.2, 6.4, 7.5];

/** Level pulls with errors of speed and tension that are stated. */
const DATA: TowData = {
  readings: SPEEDS.map((speed, i) => ({
    speed: speed * (1 + 0.02 * Math.sin(3 * i + 1)),
    tension: drag(speed) * (1 + 0.03 * Math.cos(5 * i)),
    angle: 0,
    weight: 800,
    inertia: 0,
    group: String(i),
    block: "all",
    uncertainty: {
      speed: { fixed: 0.05, share: 0.01 },
      tension: { fixed: 1.2, share: 0 },
      angle: 0,
    },
  })),
  craft: { lift: 800, phi: () => 1, expected: null },
};

describe("points moved along a law", () => {
  it("come to rest where the law is nearest, in standard uncertainties of speed and pull", () => {
    const points = new AdjustedPoints(DATA, V0);
    for (let i = 0; i < 60; i++) expect(points.adjust(LAW)).toBe(true);
    DATA.readings.forEach(({ speed, tension }, i) => {
      const uSpeed = Math.hypot(0.05, 0.01 * speed);
      const least = minimumBetween(
        (s) => ((speed - s) / uSpeed) ** 2 + ((tension - drag(s)) / 1.2) ** 2,
        { low: speed - 0.5, high: speed + 0.5 },
      );
      // A minimum by values alone is good to the root of rounding.
      expect(Math.abs(points.speeds[i]! - least.at)).toBeLessThan(1e-6);
    });
  });

  it("sum up as the products of terms, weights and observations", () => {
    const points = new AdjustedPoints(DATA, V0);
    points.adjust(LAW);
    const { normal, right } = points.equations();
    const terms = (v: number) => [(v / V0) ** 2, 1, (V0 / v) ** 2] as const;
    for (const i of [0, 1, 2] as const) {
      const sum = (value: (n: number) => number) =>
        SPEEDS.reduce((total, _, n) => total + points.weights[n]! * value(n), 0);
      const x = (n: number) => terms(points.speeds[n]!);
      expect(right[i] / sum((n) => x(n)[i] * points.observed[n]!) - 1).toBeCloseTo(0, 12);
      for (const j of [0, 1, 2] as const) {
        expect(normal[i][j] / sum((n) => x(n)[i] * x(n)[j]) - 1).toBeCloseTo(0, 12);
      }
    }
    const left = points.residuals(LAW);
    left.forEach((one, n) =>
      expect(one).toBeCloseTo(points.observed[n]! - drag(points.speeds[n]!), 10)
    );
  });

  it("say so when one runs off to where no speed is", () => {
    const points = new AdjustedPoints(DATA, V0);
    expect(points.adjust([1e6, 1e9, 0])).toBe(false);
  });
});
