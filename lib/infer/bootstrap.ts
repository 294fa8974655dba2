/**
 * Draw the runs again, with replacement: an interval for any statistic, without assuming a normal scatter.
 *
 * @module
 */
import type { Quantity, Result } from "../base/quantity.ts";
import { normalLowerTail, normalQuantile } from "../numeric/distributions.ts";
import type { SeededRandom } from "../numeric/random.ts";
import { jackknife } from "./jackknife.ts";
import type { IntervalOptions } from "./mean-interval.ts";
import { checkLevel, sampleQuantile, varianceOf } from "./sample.ts";

/** Draws and what to draw from. */
export interface BootstrapOptions extends IntervalOptions {
  /** Random stream. */
  readonly random: SeededRandom;
  /** How many times the runs are drawn again (default 9999). */
  readonly draws?: number;
}

/** An interval with the two corrections that make it BCa. */
export interface BootstrapInterval {
  readonly quantity: Quantity;
  /** Median bias in standard deviations. */
  readonly biasCorrection: number;
  /** How fast the standard error changes with the value. */
  readonly acceleration: number;
  readonly draws: number;
}

/**
 * The BCa bootstrap interval: percentiles of the drawn-again statistic, corrected for bias and skewness.
 *
 * The rival "percentile" interval has neither correction. From fewer than about 10 runs any bootstrap interval is too
 * short; the t interval is the safer one there.
 *
 * Source: Efron, Journal of the American Statistical Association 82 (1987) 171; Efron and Tibshirani, An Introduction to
 * the Bootstrap, 1993, equations 14.9 to 14.15. Draws that equal the estimate count half.
 *
 * @param items the runs, three or more
 * @param statistic the result from any list of runs; a list may hold a run several times
 * @param options random stream, draws, level and unit
 * @returns the quantity with interval, or the reason why there is none (nothing varies; the interval runs off the draws)
 * @throws RangeError when there are fewer than three items, or the statistic is not finite
 * @example
 * ```ts
 * import { bootstrapInterval } from "lakeproof/infer/bootstrap.ts";
 * import { meanOf } from "lakeproof/infer/sample.ts";
 * import { seededRandom } from "lakeproof/numeric/random.ts";
 * const glides = [41.2, 43.0, 40.1, 42.2, 44.1, 41.4, 42.7, 40.9, 43.3, 42.1];
 * const result = bootstrapInterval(glides, meanOf, { random: seededRandom("example"), unit: "m" });
 * if (!result.ok || result.quantity.low! > 42.1 || result.quantity.high! < 42.1) throw new Error("no");
 * ```
 */
export function bootstrapInterval<T>(
  items: readonly T[],
  statistic: (items: readonly T[]) => number,
  options: BootstrapOptions,
): Result<BootstrapInterval> {
  const n = items.length;
  const level = options.level ?? 0.95;
  const draws = options.draws ?? 9999;
  checkLevel(level);
  if (n < 3) throw new RangeError(`Cannot draw again as at least three are needed: ${n}`);
  const { estimate, leftOut } = jackknife(items, statistic);
  const values: number[] = [];
  const sample: T[] = new Array(n);
  for (let draw = 0; draw < draws; draw++) {
    for (let i = 0; i < n; i++) sample[i] = items[options.random.integer(n)]!;
    const value = statistic(sample);
    if (!Number.isFinite(value)) {
      throw new RangeError(`Cannot use the bootstrap as a draw gave ${value}`);
    }
    values.push(value);
  }
  values.sort((a, b) => a - b);
  if (values[0] === values[draws - 1]) {
    return { ok: false, reason: "every draw gave the same value: nothing varies" };
  }
  const below = values.reduce(
    (sum, value) => sum + (value < estimate ? 1 : value === estimate ? 0.5 : 0),
    0,
  ) / draws;
  if (below === 0 || below === 1) {
    return { ok: false, reason: "the estimate lies outside all draws: it is too biased for BCa" };
  }
  const biasCorrection = normalQuantile(below);
  const centre = leftOut.reduce((sum, value) => sum + value, 0) / n;
  const cubes = leftOut.reduce((sum, value) => sum + (centre - value) ** 3, 0);
  const squares = leftOut.reduce((sum, value) => sum + (centre - value) ** 2, 0);
  const acceleration = squares === 0 ? 0 : cubes / (6 * squares ** 1.5);
  const share = (z: number): number => {
    const shifted = biasCorrection + z;
    return normalLowerTail(biasCorrection + shifted / (1 - acceleration * shifted));
  };
  const low = share(normalQuantile((1 - level) / 2));
  const high = share(normalQuantile((1 + level) / 2));
  if (!(low * draws >= 1 && (1 - high) * draws >= 1 && low < high)) {
    return { ok: false, reason: "the corrected interval runs off the draws: draw more often" };
  }
  const quantity: Quantity = {
    value: estimate,
    standardUncertainty: Math.sqrt(varianceOf(values)),
    degreesOfFreedom: null,
    low: sampleQuantile(values, low),
    high: sampleQuantile(values, high),
    level,
    kind: "interval",
    unit: options.unit ?? "1",
  };
  return { ok: true, quantity, biasCorrection, acceleration, draws };
}
