/**
 * All towed points of one design, with what scatters and what they share.
 *
 * @module
 */
import type { Result } from "../base/quantity.ts";
import { quadraticForm, type Three } from "./symmetric-three.ts";
import {
  type FittedLaw,
  towDrag,
  towedBestSpeed,
  towedLeastPowerSpeed,
  towTerms,
} from "./tow-curve.ts";
import type { TowData } from "./tow-data.ts";
import { fitTow, type TowFit } from "./tow-fit.ts";

/** How well the size of an error is itself known, where only so many readings told it. */
export interface KnownBy {
  /** Errors of one origin were told by the same readings, so that they are too small or too large together. */
  readonly origin: string;
  readonly degreesOfFreedom: number;
}

/** An error that all points share, so that it stands in no scatter. */
export interface SharedError {
  readonly name: string;
  /** Errors of two designs with the same key are one error and cancel in a comparison; `null` is the design's own. */
  readonly key: string | null;
  /** The same points with the error taken off at plus and at minus one standard uncertainty. */
  readonly shifted: readonly [TowData, TowData];
  /** Nothing where the size of the error counts as known. */
  readonly knownBy?: KnownBy;
}

/** What one shared error does. */
export interface ShiftedFit {
  readonly name: string;
  readonly key: string | null;
  readonly fits: readonly [TowFit, TowFit];
  readonly knownBy?: KnownBy;
}

/** A design's fit with its shared errors. */
export interface TowSeries {
  readonly fit: TowFit;
  readonly shifts: readonly ShiftedFit[];
  /** Variance of the relative drag from sweep to sweep that the points' own scatter does not explain, over the sweeps. */
  readonly sweepVariance: number;
  /** Of that variance; 0 with a single sweep, whose own offset nobody can see. */
  readonly sweepDegreesOfFreedom: number;
}

/** A quantity on the logarithm, its variance apart by origin. */
export interface TowEstimate {
  readonly log: number;
  /** From the scatter of the points. */
  readonly dataVariance: number;
  readonly dataDegreesOfFreedom: number;
  /** From the doubt about the planform. */
  readonly planformVariance: number;
  readonly sweepVariance: number;
  readonly sweepDegreesOfFreedom: number;
  /** Change by one standard uncertainty of each shared error, with its sign. */
  readonly shared: readonly {
    readonly name: string;
    readonly key: string | null;
    readonly change: number;
    readonly knownBy?: KnownBy;
  }[];
}

/**
 * Fits a design and what each shared error does to it.
 *
 * @param data readings and craft
 * @param errors shared by all readings
 * @param options `robust`: readings far off the law count for little
 * @returns the series, or why there is none
 * @throws RangeError from `fitTow`
 */
export function fitTowSeries(
  data: TowData,
  errors: readonly SharedError[],
  options: { readonly robust?: boolean } = {},
): Result<TowSeries> {
  const fit = fitTow(data, options);
  if (!fit.ok) return fit;
  const shifts: ShiftedFit[] = [];
  for (const { name, key, shifted, knownBy } of errors) {
    const scale = {
      ...options,
      scatterScale: fit.scatterScale,
      ...(fit.robustScale === null ? {} : { robustScale: fit.robustScale }),
    };
    const plus = fitTow(shifted[0], scale);
    if (!plus.ok) return { ok: false, reason: `with the error of ${name}: ${plus.reason}` };
    const minus = fitTow(shifted[1], scale);
    if (!minus.ok) return { ok: false, reason: `with the error of ${name}: ${minus.reason}` };
    shifts.push({ name, key, fits: [plus, minus], ...(knownBy === undefined ? {} : { knownBy }) });
  }
  return { ok: true, fit, shifts, ...sweepScatter(fit) };
}

/** What differs from sweep to sweep beyond the scatter inside them. */
function sweepScatter(fit: TowFit) {
  const relative = fit.residuals.map((one, i) => one / towDrag(fit, fit.adjustedSpeeds[i]!));
  const sweeps = new Map<string, number[]>();
  fit.data.readings.forEach(({ block }, i) =>
    sweeps.set(block, [...(sweeps.get(block) ?? []), relative[i]!])
  );
  const groups = [...sweeps.values()];
  const count = groups.length;
  const inside = relative.length - count;
  if (count < 2 || inside < 1) return { sweepVariance: 0, sweepDegreesOfFreedom: 0 };
  const means = groups.map((one) => one.reduce((sum, r) => sum + r, 0) / one.length);
  const mean = means.reduce((sum, one) => sum + one, 0) / count;
  const among = means.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (count - 1);
  const within = groups.reduce(
    (sum, one, g) => sum + one.reduce((total, r) => total + (r - means[g]!) ** 2, 0),
    0,
  ) / inside;
  return {
    sweepVariance: Math.max(0, among - within * count / relative.length) / count,
    sweepDegreesOfFreedom: count - 1,
  };
}

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

function estimate(
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
  return estimate(series, (fit) => logDrag(fit, speed), true);
}

/** Drag at a speed, on ln of N, of any fitted law. */
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
  return estimate(series, (fit) => logLiftToDrag(fit, speed), true);
}

/** Lift over drag at a speed, on ln of 1, of any fitted law. */
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
  return estimate(series, (fit) => {
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
  return estimate(series, logBestLiftToDrag, true);
}

/** Best lift over drag, on ln of 1, of any fitted law. */
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
  return estimate(series, logBestSpeed, false);
}

/** Speed of best lift over drag, on ln of m/s, of any fitted law. */
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
  return estimate(series, (fit) => {
    const least = towedLeastPowerSpeed(fit);
    return least === null
      ? null
      : { log: Math.log(least.speed), gradient: scaled(least.gradient, 1 / least.speed) };
  }, false);
}
