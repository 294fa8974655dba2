/**
 * What the benchmark of resampled polars works on: invented points, the same for every program.
 *
 * @module
 */
import { drawPlaces, type LawPoints } from "../../fit/bootstrap-law.ts";
import type { Three } from "../../fit/symmetric-three.ts";
import { seededRandom } from "../../numeric/random.ts";

/** Refits. */
export const RESAMPLES = 10_000;

const COUNT = 60;

/**
 * Points of an invented tow: 60 readings from 3.5 to 7 m/s with 2 % of scatter.
 *
 * @returns terms (1), drag (N) and weights (1/N2) of each reading; the same at each call
 */
export function polarPoints(): LawPoints {
  const random = seededRandom("benchmark of polars");
  const speeds = Array.from({ length: COUNT }, (_, i) => 3.5 + 3.5 * i / (COUNT - 1));
  const terms = speeds.map((v): Three => [(v / 5) ** 2, 1, (5 / v) ** 2]);
  const drag = terms.map(([x, y, z]) => 40 * x - 5 * y + 25 * z);
  return {
    terms,
    observed: drag.map((one) => one * (1 + 0.02 * random.normal())),
    weights: drag.map((one) => (0.02 * one) ** -2),
  };
}

/**
 * Places that every program takes once, so that answers can be compared to the last digits.
 *
 * @returns resample after resample, the place (from 0) of each drawn reading
 */
export function sharedPlaces(): Int32Array {
  return drawPlaces(seededRandom("places that all share"), COUNT, RESAMPLES);
}
