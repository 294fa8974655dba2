/**
 * A positive quantity from its natural logarithm, with the interval that goes with it.
 *
 * @module
 */
import type { Quantity } from "../base/quantity.ts";
import { quantityWithoutInterval } from "../base/quantity-without-interval.ts";
import { studentTQuantile } from "../numeric/distributions.ts";

/** ln of a value, and how well it is known. */
export interface LogEstimate {
  readonly log: number;
  /** `null` where nothing can be told. */
  readonly variance: number | null;
  /** `null` counts as known without limit. */
  readonly degreesOfFreedom: number | null;
  readonly unit: string;
}

/** Beyond this many degrees of freedom they count as unlimited: t and normal agree to five digits. */
const UNLIMITED = 1e5;

/**
 * The quantity `exp(log)` with a 95 % interval that is symmetric on the logarithm.
 *
 * @param estimate logarithm, variance, degrees of freedom, unit of the quantity itself
 * @param comparisons how many quantities shall all lie in their intervals in 95 of 100 answers (Bonferroni)
 * @returns value, standard uncertainty (first order), interval
 */
export function quantityFromLog(estimate: LogEstimate, comparisons = 1): Quantity {
  const { log, variance, unit } = estimate;
  const value = Math.exp(log);
  const freedom = estimate.degreesOfFreedom !== null && estimate.degreesOfFreedom < UNLIMITED
    ? estimate.degreesOfFreedom
    : null;
  if (variance === null) return quantityWithoutInterval(value, unit);
  const half = studentTQuantile(1 - 0.025 / comparisons, freedom ?? Infinity) * Math.sqrt(variance);
  return {
    value,
    standardUncertainty: value * Math.sqrt(variance),
    degreesOfFreedom: freedom,
    low: Math.exp(log - half),
    high: Math.exp(log + half),
    level: 0.95,
    kind: "interval",
    unit,
  };
}
