/**
 * How much the struts alone drag, from tare readings: towed without the wing.
 *
 * @module
 */
import type { Result } from "../base/quantity.ts";
import { towedDrag, type TowReading } from "./tow-data.ts";

/** One steady window with the struts alone. */
export interface TareReading
  extends Pick<TowReading, "speed" | "tension" | "angle" | "inertia" | "uncertainty"> {
  /** m of strut under water; `null` where nobody measured it. */
  readonly depth: number | null;
  /** m, independent standard uncertainty of the depth. */
  readonly depthUncertainty: number;
}

/** Drag of the struts up to a factor, N by speed in m/s and depth in m. */
export type StrutShape = (speed: number, depth: number | null) => number;

/** Covariance of the logarithm of a factor and of an exponent. */
export interface TareCovariance {
  readonly factor: number;
  readonly exponent: number;
  readonly both: number;
}

/** What tare readings make of a shape: `factor shape(v) (v/v0)^exponent`. */
export interface TareFit {
  readonly shape: StrutShape;
  /** v0 in m/s: geometric mean of the speeds. */
  readonly referenceSpeed: number;
  /** 1 where the shape is a formula's drag; N s2/m2 where it is the square of the speed. */
  readonly factor: number;
  /** How much faster the drag grows with speed than the shape, 1; held near 0. */
  readonly exponent: number;
  /** Of ln factor and exponent, scatter and doubt about the exponent together; what readings share is carried apart. */
  readonly covariance: TareCovariance;
  /** The part of it that comes from the scatter of the readings. */
  readonly dataCovariance: TareCovariance;
  /** Variance of the readings over what was stated for them, not under 1. */
  readonly scatterScale: number;
  /** `null` where there are too few readings to see their scatter: what was stated then counts as known. */
  readonly degreesOfFreedom: number | null;
  /** N, one a reading. */
  readonly residuals: readonly number[];
}

/**
 * Standard uncertainty of the exponent before there is a reading: struts drag as v^1.5 where the flow is laminar, v^1.85 where
 * it is turbulent, and faster than v^2 where it turns from one to the other. Common practice, no source.
 */
const EXPONENT = 0.3;

/** The uncertainties depend on the drag found: a few rounds settle them to the last digit. */
const ROUNDS = 25;

/** Share of speed and depth over which the shape's slopes are taken. */
const STEP = 0.01;

/**
 * The drag of known shape that fits tare readings, by weighted least squares.
 *
 * Struts drag nearly as the square of the speed: one unknown, the factor. How nearly is not known (where the flow turns
 * turbulent moves it), so the exponent has a second unknown that is held near zero by one weak pseudo-observation: few
 * readings leave it there with its doubt, many find it. The error of a speed or a depth counts as error of the drag by the
 * shape's slope. As in the fit of a whole craft the scatter found can widen what was stated, never narrow it.
 *
 * What a tare holds: friction, form and spray of the struts, and whatever held them. Not the junction with a wing that is
 * not there, nor the rider.
 *
 * Source: generalised least squares with a Gaussian prior, any text; effective variance, Orear, American Journal of Physics
 * 50 (1982) 912.
 *
 * @param readings one or more
 * @param shape drag up to the factor
 * @param options `scatterScale`: taken from elsewhere, for what a shared error does to the same readings
 * @returns the fit, or why there is none
 * @throws RangeError when a speed is not above zero, or the shape is not
 *
 * @example Struts that drag as the square of the speed
 * ```ts
 * import { fitTare } from "lakeproof/fit/tare-fit.ts";
 * const known = { fixed: 0, share: 0.01 };
 * const readings = [3, 4, 5, 6].map((speed) => ({
 *   speed, tension: 0.25 * speed ** 2, angle: 0, inertia: 0, depth: 0.4, depthUncertainty: 0,
 *   uncertainty: { speed: known, tension: known, angle: 0.01 },
 * }));
 * const fit = fitTare(readings, (speed) => speed ** 2);
 * if (!fit.ok || Math.abs(fit.factor - 0.25) > 1e-9) throw new Error("unexpected");
 * ```
 */
export function fitTare(
  readings: readonly TareReading[],
  shape: StrutShape,
  options: { readonly scatterScale?: number } = {},
): Result<TareFit> {
  const count = readings.length;
  if (count === 0) return { ok: false, reason: "there is no tare reading" };
  const drag = readings.map(towedDrag);
  const shapes = readings.map(({ speed, depth }) => {
    const value = speed > 0 ? shape(speed, depth) : 0;
    if (!(value > 0 && value < Infinity)) {
      throw new RangeError(`Cannot fit a tare as its speed must be above zero: ${speed} m/s`);
    }
    return value;
  });
  const slopes = readings.map((one) => slopesOf(shape, one));
  const referenceSpeed = Math.exp(sumOf(readings, (one) => Math.log(one.speed)) / count);
  const logs = readings.map((one) => Math.log(one.speed / referenceSpeed));
  let factor = sumOf(drag, (one) => one) / sumOf(shapes, (one) => one);
  if (!(factor > 0)) return { ok: false, reason: "the struts do not drag" };
  let exponent = 0, k = options.scatterScale ?? 1;
  let found: TareFit | null = null;
  for (let round = 0; round < ROUNDS; round++) {
    const law = shapes.map((one, i) => factor * one * Math.exp(exponent * logs[i]!));
    const weights = readings.map((one, i) =>
      1 / statedVariance(one, law[i]!, shapes[i]!, slopes[i]!)
    );
    if (!weights.every((one) => one > 0 && one < Infinity)) {
      return { ok: false, reason: "a tare reading has no uncertainty" };
    }
    // Terms of ln factor and exponent: law and law times its logarithm.
    const moment = (power: number) =>
      sumOf(weights, (w, i) => w * law[i]! ** 2 * logs[i]! ** power);
    const normal = [moment(0), moment(1), moment(2)] as const;
    const right = [0, 1].map((power) =>
      sumOf(weights, (w, i) => w * law[i]! * logs[i]! ** power * (drag[i]! - law[i]!))
    );
    const covariance = inverse([normal[0] / k, normal[1] / k, normal[2] / k + EXPONENT ** -2]);
    const pull = [right[0]! / k, right[1]! / k - exponent * EXPONENT ** -2] as const;
    const effective = (covariance.factor * normal[0] + 2 * covariance.both * normal[1] +
      covariance.exponent * normal[2]) / k;
    const free = count - effective;
    const squares = sumOf(weights, (w, i) => w * (drag[i]! - law[i]!) ** 2);
    found = {
      shape,
      referenceSpeed,
      factor,
      exponent,
      covariance,
      dataCovariance: sandwiched(covariance, normal, k),
      scatterScale: k,
      degreesOfFreedom: free > LEAST_FREE ? free : null,
      residuals: drag.map((one, i) => one - law[i]!),
    };
    const step = covariance.factor * pull[0] + covariance.both * pull[1];
    // A wild start must not run away.
    factor *= Math.exp(Math.max(-1, Math.min(1, step)));
    exponent += covariance.both * pull[0] + covariance.exponent * pull[1];
    if (options.scatterScale === undefined && free > LEAST_FREE) k = Math.max(1, squares / free);
  }
  return { ok: true, ...found! };
}

/** Readings less parameters under which their scatter is not looked at. */
const LEAST_FREE = 0.5;

interface Slopes {
  readonly speed: number;
  readonly depth: number;
}

function slopesOf(shape: StrutShape, { speed, depth }: TareReading): Slopes {
  const slope = (value: number, at: (value: number) => number) =>
    (at(value * (1 + STEP)) - at(value * (1 - STEP))) / (2 * STEP * value);
  return {
    speed: slope(speed, (one) => shape(one, depth)),
    depth: depth === null ? 0 : slope(depth, (one) => shape(speed, one)),
  };
}

/** N2: what is stated for a reading across the law. */
function statedVariance(
  { speed, angle, depthUncertainty, uncertainty }: TareReading,
  law: number,
  shape: number,
  slopes: Slopes,
): number {
  const pull = law / Math.cos(angle);
  const { tension } = uncertainty;
  const uSpeed = Math.hypot(uncertainty.speed.fixed, uncertainty.speed.share * speed);
  return (Math.cos(angle) * Math.hypot(tension.fixed, tension.share * pull)) ** 2 +
    (pull * Math.sin(angle) * uncertainty.angle) ** 2 +
    (law / shape * slopes.speed * uSpeed) ** 2 +
    (law / shape * slopes.depth * depthUncertainty) ** 2;
}

function inverse([a, b, c]: readonly [number, number, number]): TareCovariance {
  const determinant = a * c - b * b;
  return { factor: c / determinant, exponent: a / determinant, both: -b / determinant };
}

/** `covariance normal covariance / k`. */
function sandwiched(
  { factor: p, exponent: q, both: r }: TareCovariance,
  [a, b, c]: readonly [number, number, number],
  k: number,
): TareCovariance {
  const form = (x: readonly [number, number], y: readonly [number, number]) =>
    (x[0] * (a * y[0] + b * y[1]) + x[1] * (b * y[0] + c * y[1])) / k;
  return {
    factor: form([p, r], [p, r]),
    exponent: form([r, q], [r, q]),
    both: form([p, r], [r, q]),
  };
}

const sumOf = <T>(values: readonly T[], term: (value: T, i: number) => number) =>
  values.reduce((sum, value, i) => sum + term(value, i), 0);

/**
 * Drag of the struts at a speed and depth, as tared.
 *
 * @param fit of the tare readings
 * @param speed m/s
 * @param depth m; `null` where nobody measured it
 * @returns N
 */
export function tareDrag(
  { shape, factor, exponent, referenceSpeed }: TareFit,
  speed: number,
  depth: number | null,
): number {
  return factor * shape(speed, depth) * (speed / referenceSpeed) ** exponent;
}

/**
 * Variance of the logarithm of that drag, by origin; away from the speeds that were tared it grows.
 *
 * @param fit of the tare readings
 * @param speed m/s
 * @returns from scatter, and from the doubt about the exponent
 */
export function tareLogVariance(
  { covariance, dataCovariance, referenceSpeed }: TareFit,
  speed: number,
): { readonly data: number; readonly exponent: number } {
  const log = Math.log(speed / referenceSpeed);
  const at = ({ factor, exponent, both }: TareCovariance) =>
    factor + 2 * both * log + exponent * log ** 2;
  const data = at(dataCovariance);
  return { data, exponent: Math.max(0, at(covariance) - data) };
}
