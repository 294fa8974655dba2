/**
 * The mean of a few alike runs, with the interval that their own scatter supports.
 *
 * @module
 */
import type { Quantity } from "../base/quantity.ts";
import { studentTQuantile } from "../numeric/distributions.ts";
import { checkLevel, meanOf, varianceOf } from "./sample.ts";

/** How sure the interval is to be, and the unit to print. */
export interface IntervalOptions {
  /** Coverage, default 0.95. */
  readonly level?: number;
  /** SI unit of the values, default `1`. */
  readonly unit?: string;
}

/**
 * A quantity from estimate, standard uncertainty and degrees of freedom, with its t interval.
 *
 * @param estimate value, standard uncertainty and degrees of freedom (infinite where the uncertainty counts as known)
 * @param options level and unit
 * @returns the quantity; a standard uncertainty of 0 gives an interval without width
 * @throws RangeError when an argument makes no sense
 */
export function studentInterval(
  estimate: {
    readonly value: number;
    readonly standardUncertainty: number;
    readonly degreesOfFreedom: number;
  },
  options: IntervalOptions = {},
): Quantity {
  const { value, standardUncertainty, degreesOfFreedom } = estimate;
  const level = options.level ?? 0.95;
  checkLevel(level);
  if (!Number.isFinite(value) || !(standardUncertainty >= 0 && standardUncertainty < Infinity)) {
    throw new RangeError(
      `Cannot make an interval as value and uncertainty must be finite: ${value}, ${standardUncertainty}`,
    );
  }
  const reach = studentTQuantile((1 + level) / 2, degreesOfFreedom) * standardUncertainty;
  return {
    value,
    standardUncertainty,
    degreesOfFreedom: degreesOfFreedom === Infinity ? null : degreesOfFreedom,
    low: value - reach,
    high: value + reach,
    level,
    kind: "interval",
    unit: options.unit ?? "1",
  };
}

/**
 * The mean of repeated readings with its t interval.
 *
 * The interval holds the true mean in `level` of all such samples if the readings scatter independently and roughly
 * normally; it knows nothing of an error that all readings share. From about 5 readings on it starts to be of use: with
 * two its half width is 12.7 standard errors.
 *
 * Source: JCGM 100:2008 (GUM) 4.2 and G.3; Student, Biometrika 6 (1908) 1.
 *
 * @param values two or more readings, SI
 * @param options level and unit
 * @returns mean, its standard uncertainty, n - 1 degrees of freedom and interval
 * @throws RangeError when there are fewer than two readings, or one is not finite
 * @example Six glides, in metres
 * ```ts
 * import { meanInterval } from "lakeproof/infer/mean-interval.ts";
 * import { assertAlmostEqual } from "lakeproof/base/assert.ts";
 * const mean = meanInterval([41.2, 43.0, 40.1, 42.2, 44.1, 41.4], { unit: "m" });
 * assertAlmostEqual(mean.value, 42, 1e-9);
 * assertAlmostEqual(mean.high!, 43.49, 0.01);
 * ```
 */
export function meanInterval(values: readonly number[], options: IntervalOptions = {}): Quantity {
  return studentInterval({
    value: meanOf(values),
    standardUncertainty: Math.sqrt(varianceOf(values) / values.length),
    degreesOfFreedom: values.length - 1,
  }, options);
}
