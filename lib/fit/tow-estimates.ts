/**
 * What follows from a fitted law: drag, lift over drag, the best speeds, each on its logarithm with its variance apart by origin.
 *
 * @module
 */
import { quadraticForm, type Three } from "./symmetric-three.ts";
import {
  type FittedLaw,
  towDrag,
  towedBestSpeed,
  towedLeastPowerSpeed,
  towTerms,
} from "./tow-curve.ts";
import type { TowFit } from "./tow-fit.ts";
import type { TowEstimate, TowSeries } from "./tow-series.ts";

/** A quantity's logarithm and how it changes with the parameters. */
export interface LogValue {
  readonly log: number;
  readonly gradient: Three;
}

const scaled = (vector: Three, factor: number): Three => [
  vector[0] * factor,
  vector[1] * factor,
  vector[2] * factor,
];

/**
 * Any quantity that a law gives at its parameters, with its variance apart by origin.
 *
 * @param series a design's fit
 * @param value of a fit, with its gradient
 * @param ofForce true where what a sweep has of its own moves it
 * @returns its parts, or `null` where the law gives none
 */
export function towEstimate(
  series: TowSeries,
  value: (fit: TowFit) => LogValue | null,
  ofForce: boolean,
): TowEstimate | null {
  const here = value(series.fit);
  if (here === null || !Number.isFinite(here.log)) return null;
  const { fit } = series;
  const own = quadraticForm(fit.covariance, here.gradient);
  const dataVariance = quadraticForm(fit.dataCovariance, here.gradient);
  const shared = [];
  for (const { fits, ...error } of series.shifts) {
    const [plus, minus] = fits.map(value);
    if (plus == null || minus == null) return null;
    shared.push({ ...error, change: (plus.log - minus.log) / 2 });
  }
  return {
    log: here.log,
    dataVariance,
    dataDegreesOfFreedom: fit.degreesOfFreedom,
    planformVariance: Math.max(0, own - dataVariance),
    sweepVariance: ofForce ? series.sweepVariance : 0,
    sweepDegreesOfFreedom: series.sweepDegreesOfFreedom,
    shared,
  };
}

/**
 * Drag at a speed and the full lift.
 *
 * @param series a design's fit
 * @param speed m/s
 * @returns on ln of N, or `null` where the law gives none
 */
export function dragEstimate(series: TowSeries, speed: number): TowEstimate | null {
  return towEstimate(series, (fit) => logDrag(fit, speed), true);
}

/**
 * Drag at a speed, on ln of N, of any fitted law.
 *
 * @param fit any law
 * @param speed in m/s
 * @returns ln of the drag and its slopes by the law's three constants; `null` where the law gives no drag above zero
 */
export function logDrag(fit: FittedLaw, speed: number): LogValue | null {
  const drag = towDrag(fit, speed);
  return drag > 0
    ? { log: Math.log(drag), gradient: scaled(towTerms(fit, speed), 1 / drag) }
    : null;
}

/**
 * Lift over drag at one speed.
 *
 * @param series a design's fit
 * @param speed m/s
 * @returns on ln of 1, or `null` where the law gives none
 */
export function liftToDragEstimate(series: TowSeries, speed: number): TowEstimate | null {
  return towEstimate(series, (fit) => logLiftToDrag(fit, speed), true);
}

/**
 * Lift over drag at a speed, on ln of 1, of any fitted law.
 *
 * @param fit any law
 * @param speed in m/s
 * @returns ln of the ratio and its slopes by the law's three constants; `null` where the law gives no drag above zero
 */
export function logLiftToDrag(fit: FittedLaw, speed: number): LogValue | null {
  const drag = towDrag(fit, speed);
  if (!(drag > 0)) return null;
  return {
    log: Math.log(fit.data.craft.lift / drag),
    gradient: scaled(towTerms(fit, speed), -1 / drag),
  };
}

/**
 * Drag over lift at a lift coefficient: the speed is the one that carries the full lift with it, and so moves with the lift.
 *
 * @param series a design's fit
 * @param at lift coefficient, density in kg/m3, area in m2
 * @returns on ln of 1, or `null` where the law gives none
 */
export function dragToLiftEstimate(
  series: TowSeries,
  at: { readonly liftCoefficient: number; readonly density: number; readonly area: number },
): TowEstimate | null {
  return towEstimate(series, (fit) => {
    const { lift } = fit.data.craft;
    const speed = Math.sqrt(2 * lift / (at.density * at.area * at.liftCoefficient));
    const drag = towDrag(fit, speed);
    return drag > 0
      ? { log: Math.log(drag / lift), gradient: scaled(towTerms(fit, speed), 1 / drag) }
      : null;
  }, true);
}

/**
 * Best lift over drag of the whole craft. Its speed need not be differentiated: drag is flat there.
 *
 * @param series a design's fit
 * @returns on ln of 1, or `null` where the law has no dip
 */
export function bestLiftToDragEstimate(series: TowSeries): TowEstimate | null {
  return towEstimate(series, logBestLiftToDrag, true);
}

/**
 * Best lift over drag, on ln of 1, of any fitted law.
 *
 * @param fit any law
 * @returns ln of the ratio and its slopes; `null` where the law has no best speed
 */
export function logBestLiftToDrag(fit: FittedLaw): LogValue | null {
  const best = towedBestSpeed(fit);
  return best === null ? null : logLiftToDrag(fit, best.speed);
}

/**
 * Speed of best lift over drag.
 *
 * @param series a design's fit
 * @returns on ln of m/s, or `null` where the law has no dip
 */
export function bestSpeedEstimate(series: TowSeries): TowEstimate | null {
  return towEstimate(series, logBestSpeed, false);
}

/**
 * Speed of best lift over drag, on ln of m/s, of any fitted law.
 *
 * @param fit any law
 * @returns ln of the speed and its slopes; `null` where the law has none
 */
export function logBestSpeed(fit: FittedLaw): LogValue | null {
  const best = towedBestSpeed(fit);
  return best === null
    ? null
    : { log: Math.log(best.speed), gradient: scaled(best.gradient, 1 / best.speed) };
}

/**
 * Speed of least power.
 *
 * @param series a design's fit
 * @returns on ln of m/s, or `null` where the law has no dip of drag times speed
 */
export function leastPowerSpeedEstimate(series: TowSeries): TowEstimate | null {
  return towEstimate(series, (fit) => {
    const least = towedLeastPowerSpeed(fit);
    return least === null
      ? null
      : { log: Math.log(least.speed), gradient: scaled(least.gradient, 1 / least.speed) };
  }, false);
}
