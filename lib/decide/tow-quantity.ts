/**
 * From a tow's estimate to the quantity that leaves the library: two-sided, or one-sided where the speed was not towed.
 *
 * @module
 */
import type { Quantity } from "../base/quantity.ts";
import type { LeastSpeed, SpeedRange } from "../fit/tow-curve.ts";
import type { TowEstimate, TowSeries } from "../fit/tow-series.ts";
import { liftToDragEstimate } from "../fit/tow-estimates.ts";
import { type LogVariance, singleVariance } from "../fit/tow-variance.ts";
import { studentTQuantile } from "../numeric/distributions.ts";
import { quantityFromLog } from "./log-quantity.ts";

/**
 * A quantity with a 95 % interval; of several comparisons all hold at once.
 *
 * @param one a value on ln of `unit` with its variances and degrees of freedom
 * @param unit SI unit of the value itself, `1` for a ratio
 * @param comparisons how many intervals must hold at once
 * @returns value and interval in `unit`
 */
export function towQuantity(one: LogVariance, unit: string, comparisons = 1): Quantity {
  return quantityFromLog({ ...one, unit }, comparisons);
}

/**
 * At which end of the range a speed lies that was not towed; `null` for one inside.
 *
 * @param speed in m/s
 * @param range slowest and fastest speed towed, m/s
 * @returns the end that it lies beyond
 */
export function outside(speed: number, range: SpeedRange): "below" | "above" | null {
  return speed < range.from ? "below" : speed > range.to ? "above" : null;
}

/**
 * Best lift-to-drag by the rule of the edge.
 *
 * The best is no less than what the craft shows at any speed, so where its speed was not towed the edge gives a bound that
 * does not lean on the planform: 95 % sure, one-sided.
 *
 * @param series a design's fit
 * @param best its estimate
 * @param where of the best speed
 * @param range speeds towed
 * @returns two-sided inside; `atLeast` outside, whose value is the lift-to-drag at the edge
 */
export function bestLiftToDragQuantity(
  series: TowSeries,
  best: TowEstimate,
  where: "below" | "above" | null,
  range: SpeedRange,
): Quantity | null {
  if (where === null) return towQuantity(singleVariance(best), "1");
  const edge = liftToDragEstimate(series, where === "below" ? range.from : range.to);
  return edge === null ? null : edgeQuantity(edge);
}

/**
 * Best lift-to-drag as a bound, from that at a speed which was not the best.
 *
 * @param edge lift-to-drag at the speed nearest to the best one
 * @returns 95 % sure, one-sided
 */
export function edgeQuantity(edge: TowEstimate): Quantity {
  const { log, variance, degreesOfFreedom } = singleVariance(edge);
  const u = Math.sqrt(variance);
  return {
    value: Math.exp(log),
    standardUncertainty: Math.exp(log) * u,
    degreesOfFreedom,
    low: Math.exp(log - studentTQuantile(0.95, degreesOfFreedom ?? Infinity) * u),
    high: null,
    level: 0.95,
    kind: "atLeast",
    unit: "1",
  };
}

/**
 * A speed by the rule of the edge.
 *
 * @param least the speed found
 * @param estimate its logarithm with variance
 * @param range speeds towed
 * @returns two-sided inside; outside only on which side of the edge it lies
 */
export function speedQuantity(
  least: LeastSpeed,
  estimate: TowEstimate,
  range: SpeedRange,
): Quantity {
  const where = outside(least.speed, range);
  if (where === null) return towQuantity(singleVariance(estimate), "m/s");
  const edge = where === "below" ? range.from : range.to;
  return {
    value: edge,
    standardUncertainty: null,
    degreesOfFreedom: null,
    low: where === "above" ? edge : null,
    high: where === "below" ? edge : null,
    level: 0.95,
    kind: where === "above" ? "atLeast" : "atMost",
    unit: "m/s",
  };
}
