/**
 * From a tow's estimate to the quantity that leaves the library: two-sided, or one-sided where the speed was not towed.
 *
 * @module
 */
import type { Quantity } from "../base/quantity.ts";
import type { SpeedRange } from "../fit/tow-curve.ts";
import { powerRiseEstimate } from "../fit/tow-power-rise.ts";
import { leastPowerSpeedEstimate, liftToDragEstimate } from "../fit/tow-estimates.ts";
import type { TowEstimate, TowSeries } from "../fit/tow-series.ts";
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

/** At which end of the range a speed lies that was not towed; `null` for one inside. */
export type Side = "below" | "above" | null;

/**
 * At which end of the range a speed surely lies: `null` where its 95 % interval reaches into the range.
 *
 * An estimate that falls outside by chance does so where the readings happen to drag too little at that edge, which is where
 * a bound taken at the edge is too high. So a side is stated only where the whole interval lies beyond the edge; else the
 * interval itself is told. Simulated: stated on the estimate alone the side was right in 66 to 80 % of ordinary sessions, and
 * in none that straddled the best speed; so stated it was right in all of some 8,000.
 *
 * @param speed on ln of m/s
 * @param range speeds towed
 * @returns the side, or `null`
 */
export function sureSide(speed: TowEstimate, range: SpeedRange): Side {
  const { low, high } = towQuantity(singleVariance(speed), "m/s");
  return high! < range.from ? "below" : low! > range.to ? "above" : null;
}

/**
 * Best lift-to-drag by the rule of the edge.
 *
 * The best is no less than what the craft shows at any speed, so where its speed was surely not towed the edge gives a bound
 * that does not lean on the planform.
 *
 * @param series a design's fit
 * @param best its estimate
 * @param where the best speed surely lies
 * @param range speeds towed
 * @returns two-sided inside and near the edge; `atLeast` outside, whose value is the lift-to-drag at the edge
 */
export function bestLiftToDragQuantity(
  series: TowSeries,
  best: TowEstimate,
  where: Side,
  range: SpeedRange,
): Quantity | null {
  if (where === null) return towQuantity(singleVariance(best), "1");
  const edge = liftToDragEstimate(series, where === "below" ? range.from : range.to);
  return edge === null ? null : edgeQuantity(edge);
}

/**
 * Best lift-to-drag as a bound, from that at a speed which was not the best.
 *
 * The bound is the lower end of the two-sided interval at the edge, so by itself it holds in 97.5 %: the room is for the
 * sessions picked out by their estimate, among which one taken at 95 % held in 85 to 97 %.
 *
 * @param edge lift-to-drag at the speed nearest to the best one
 * @returns one-sided, 95 % sure and more
 */
export function edgeQuantity(edge: TowEstimate): Quantity {
  return { ...towQuantity(singleVariance(edge), "1"), high: null, kind: "atLeast" };
}

/**
 * A speed by the rule of the edge.
 *
 * @param estimate its logarithm with variance
 * @param range speeds towed
 * @returns two-sided where its interval reaches into the range; else only on which side of the edge it lies
 */
export function speedQuantity(estimate: TowEstimate, range: SpeedRange): Quantity {
  const where = sureSide(estimate, range);
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

/**
 * How sure the rise of power must be on one side: more than 97.5 %, as the formula of the free surface, on whose slope it
 * rests, may itself be off by a third, and only sessions picked out by their estimate come to this test.
 */
const RISES = 0.995;

/**
 * Speed of least power by the rule of the edge.
 *
 * Beyond the edge its interval rests on the free surface at speeds nobody towed, and where power is flat the dip slides far
 * along: simulated, the side was then right in 90 to 95 %. So a side is told only where power itself rises or falls at the
 * edge beyond doubt, which was right in 97 %; where it does not, nothing is told.
 *
 * @param series a design's fit
 * @param range speeds towed
 * @returns two-sided where its interval reaches into the range, else the side; `null` where there is no dip or no sure side
 */
export function leastPowerQuantity(series: TowSeries, range: SpeedRange): Quantity | null {
  const speed = leastPowerSpeedEstimate(series);
  if (speed === null) return null;
  const where = sureSide(speed, range);
  if (where !== null) {
    const rise = powerRiseEstimate(series, where === "below" ? range.from : range.to);
    if (rise === null) return null;
    const { log, variance, degreesOfFreedom } = singleVariance(rise);
    const reach = studentTQuantile(RISES, degreesOfFreedom ?? Infinity) * Math.sqrt(variance);
    if (!(where === "below" ? log > reach : log < -reach)) return null;
  }
  return speedQuantity(speed, range);
}
