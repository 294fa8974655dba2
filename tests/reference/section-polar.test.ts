/**
 * A published table of section coefficients, flown as if towed: the fit without a planform gives back its least drag and its
 * best ratio.
 *
 * Source: Sheldahl and Klimas, Sandia National Laboratories report SAND80-2114 (1981), NACA 0012 at a Reynolds number of
 * 360,000, the lowest at which that section was measured; the numbers from memory. Two things speak for them: drag at no
 * lift of 0.0079 and a growth of 0.010 times the squared lift coefficient were taken from another copy of the table.
 */
import { describe, expect, it } from "vitest";
import { towedBestSpeed } from "lakeproof/fit/tow-curve.ts";
import type { TowData, TowReading } from "lakeproof/fit/tow-data.ts";
import { fitTow } from "lakeproof/fit/tow-fit.ts";
import { fitTowSeries } from "lakeproof/fit/tow-series.ts";
import { bestLiftToDragEstimate } from "lakeproof/fit/tow-estimates.ts";
import { singleVariance } from "lakeproof/fit/tow-variance.ts";
import { studentTQuantile } from "lakeproof/numeric/distributions.ts";

/** Lift and drag coefficient at 1 to 9 degrees. */
const TABLE = [
  [0.11, 0.0080],
  [0.22, 0.0084],
  [0.33, 0.0089],
  [0.44, 0.0098],
  [0.55, 0.0113],
  [0.66, 0.0125],
  [0.739, 0.0135],
  [0.824, 0.0153],
  [0.8946, 0.0167],
] as const;

/** At 0 degrees, and not among the points fitted. */
const PUBLISHED_LEAST_DRAG = 0.0079;

const PUBLISHED_BEST_RATIO = Math.max(...TABLE.map(([lift, drag]) => lift / drag));

const LIFT = 800, DENSITY = 1000, AREA = 0.15;

/** The speed at which the section carries the lift at a coefficient, and the pull there along a level line. */
const READINGS = TABLE.map(([lift, drag], i): TowReading => ({
  speed: Math.sqrt(2 * LIFT / (DENSITY * AREA * lift)),
  tension: LIFT * drag / lift,
  angle: 0,
  weight: LIFT,
  inertia: 0,
  group: String(i),
  block: "all",
  // The table has four decimals: half of the last one, as a rectangle, is 0.4 % of the drag; the rest shows in the scatter.
  uncertainty: {
    speed: { fixed: 0, share: 0 },
    tension: { fixed: 0, share: 0.004 },
    angle: 0,
  },
}));

const DATA: TowData = {
  readings: READINGS,
  craft: { lift: LIFT, phi: () => 1, expected: null },
};

describe("the law through a published section without a planform", () => {
  const series = fitTowSeries(DATA, []);
  if (!series.ok) throw new Error(series.reason);
  const { fit } = series;

  it("gives the published least drag within 2 % and within its own interval", () => {
    // At high speed only the first term is left: the drag coefficient at no lift.
    const factor = 2 / (DENSITY * AREA * fit.referenceSpeed ** 2);
    const least = fit.parameters[0] * factor;
    const reach = studentTQuantile(0.975, fit.degreesOfFreedom) *
      Math.sqrt(fit.covariance[0]![0]!) * factor;
    expect(Math.abs(least / PUBLISHED_LEAST_DRAG - 1)).toBeLessThan(0.02);
    expect(Math.abs(least - PUBLISHED_LEAST_DRAG)).toBeLessThan(reach);
    expect(reach / least).toBeLessThan(0.06);
  });

  it("gives the best published ratio within 2 % and within its own interval", () => {
    const { log, variance, degreesOfFreedom } = singleVariance(bestLiftToDragEstimate(series)!);
    const reach = studentTQuantile(0.975, degreesOfFreedom!) * Math.sqrt(variance);
    expect(Math.abs(Math.exp(log) / PUBLISHED_BEST_RATIO - 1)).toBeLessThan(0.02);
    expect(Math.abs(log - Math.log(PUBLISHED_BEST_RATIO))).toBeLessThan(reach);
    expect(reach).toBeLessThan(0.06);
  });

  it("has its best at a lift coefficient that the table holds", () => {
    const { speed } = towedBestSpeed(fit)!;
    const liftCoefficient = 2 * LIFT / (DENSITY * AREA * speed ** 2);
    expect(liftCoefficient).toBeGreaterThan(TABLE[0][0]);
    expect(liftCoefficient).toBeLessThan(TABLE[8][0]);
  });

  it("is found out when two of its drags are exchanged", () => {
    const readings = READINGS.map((one, i) => ({
      ...one,
      tension: READINGS[i === 2 ? 7 : i === 7 ? 2 : i]!.tension,
    }));
    const wrong = fitTow({ ...DATA, readings });
    expect(wrong.ok && wrong.scatterScale > 4 * fit.scatterScale).toBe(true);
  });
});
