/**
 * A drag law through towed points: forces against adjusted speeds, three terms, a planform that steadies them.
 *
 * @module
 */
import type { Result } from "../base/quantity.ts";
import { AdjustedPoints } from "./adjusted-points.ts";
import {
  dot,
  inverseOfThree,
  mapThree,
  plus,
  sandwich,
  type SymmetricThree,
  type Three,
  timesVector,
} from "./symmetric-three.ts";
import type { TowData, TowedCraft } from "./tow-data.ts";

/** Where the size of the scatter comes from. */
export type ScatterFrom = "stated" | "within" | "between";

/** A fitted law `D = p1 (v/v0)^2 + p2 + p3 phi(v) (v0/v)^2` at the lift of the craft; all three in newtons. */
export interface TowFit {
  readonly data: TowData;
  /** v0 in m/s: geometric mean of the speeds. */
  readonly referenceSpeed: number;
  readonly parameters: Three;
  /** Of the parameters from scatter and planform together, without what all readings share. */
  readonly covariance: SymmetricThree;
  /** The part of it that comes from the scatter of the points. */
  readonly dataCovariance: SymmetricThree;
  /** k: variance of the points over what was stated for them, not under 1. */
  readonly scatterScale: number;
  readonly scatterFrom: ScatterFrom;
  /** The two scales that were looked at; `between` only where enough speeds were repeated. */
  readonly within: number;
  readonly between: number | null;
  /** nu of the scatter. */
  readonly degreesOfFreedom: number;
  /** How many parameters the points themselves pay for; the planform pays for the rest of the three. */
  readonly effectiveParameters: number;
  /** What the points say without the planform; `null` where they can't fix three terms. */
  readonly withoutPlanform: Three | null;
  /** m/s, one a reading: where on the law its point belongs. */
  readonly adjustedSpeeds: readonly number[];
  /** N, one a reading. */
  readonly residuals: readonly number[];
  /** Residual over stated standard uncertainty, one a reading, 1. */
  readonly scaledResiduals: readonly number[];
  /** One over the stated variance across the law, one a reading, 1/N2. */
  readonly weights: readonly number[];
}

/** The golden example settles to 1e-12 in 20 steps. */
const MOST_STEPS = 60;

/** Change of the parameters in their standard uncertainties at which they have settled, and above which they have not. */
const SETTLED = 1e-10, UNSETTLED = 1e-6;

/**
 * Fits the law to the points of one design.
 *
 * Forces, not coefficients: points that share a noisy speed fake a polar, while near the least drag the speed's error drops
 * out of the force. Each speed is moved along the law as far as its own uncertainty allows (York's adjusted points on a
 * curve). Two of the three terms lean on the planform by two weak pseudo-observations. The scatter found can widen the stated
 * uncertainties, never narrow them: over all points (`within`), or over the means of repeats, where something changes from
 * speed to speed (`between`).
 *
 * The three constants are those of the law over the speeds towed, not physics: the middle one is not camber.
 *
 * Source: York et al., American Journal of Physics 72 (2004) 367, for the adjusted points; generalised least squares with a
 * Gaussian prior, any text; the choice of terms, prior and floors rests on our own simulated tows.
 *
 * @param data readings and craft
 * @param options `scatterScale`: k taken from elsewhere, for what a shared error does to the same points
 * @returns the fit, or why there is none
 * @throws RangeError when a reading is not a positive speed and pull, or the craft carries nothing
 */
export function fitTow(
  data: TowData,
  options: { readonly scatterScale?: number } = {},
): Result<TowFit> {
  const { readings, craft } = data;
  const count = readings.length;
  if (!(craft.lift > 0 && craft.lift < Infinity)) {
    throw new RangeError(`Cannot fit a tow as the lift must be above zero: ${craft.lift} N`);
  }
  for (const one of readings) {
    if (!(one.speed > 0 && one.tension > 0 && Math.abs(one.angle) < Math.PI / 2)) {
      throw new RangeError(
        `Cannot fit a tow as speed and tension must be above zero: ${one.speed} m/s, ${one.tension} N`,
      );
    }
  }
  if (count < 4) return { ok: false, reason: `a law needs four readings; there are ${count}` };
  const v0 = Math.exp(readings.reduce((sum, one) => sum + Math.log(one.speed), 0) / count);
  const points = new AdjustedPoints(data, v0);
  const { precision, pull } = expectedTerms(craft, v0);
  const groups = groupsOf(data);

  let k = options.scatterScale ?? 1;
  let parameters: Three | null = null;
  let change = Infinity;
  let found: Omit<TowFit, "withoutPlanform"> | null = null;
  let equations = points.equations();
  for (let step = 0; step < MOST_STEPS && change > SETTLED; step++) {
    if (parameters !== null && !points.adjust(parameters)) {
      return { ok: false, reason: "the points do not settle on a law" };
    }
    equations = points.equations();
    const { normal, right } = equations;
    const covariance = inverseOfThree(plus(precision, normal, 1 / k));
    if (covariance === null) return { ok: false, reason: "the points can't tell the terms apart" };
    const before: Three | null = parameters;
    const p = timesVector(covariance, [
      right[0] / k + pull[0],
      right[1] / k + pull[1],
      right[2] / k + pull[2],
    ]);
    parameters = p;
    if (before !== null) change = largestChange(p, before, covariance);
    const residuals = points.residuals(p);
    const scaled = residuals.map((one, i) => one * Math.sqrt(points.weights[i]!));
    const effective = (dot(covariance[0], normal[0]) + dot(covariance[1], normal[1]) +
      dot(covariance[2], normal[2])) / k;
    const scatter = scatterOf(scaled, groups, effective);
    const settled = !(step + 1 < MOST_STEPS && change > SETTLED);
    if (settled) {
      const spread = sandwich(covariance, normal);
      found = {
        data,
        referenceSpeed: v0,
        parameters: p,
        covariance,
        dataCovariance: mapThree((i, j) => spread[i]![j]! / k),
        scatterScale: k,
        scatterFrom: scatter.scatterFrom,
        within: scatter.within,
        between: scatter.between,
        degreesOfFreedom: scatter.degreesOfFreedom,
        effectiveParameters: effective,
        adjustedSpeeds: [...points.speeds],
        residuals,
        scaledResiduals: scaled,
        weights: [...points.weights],
      };
    }
    if (options.scatterScale === undefined) k = scatter.scale;
  }
  if (found === null || !(change < UNSETTLED)) {
    return { ok: false, reason: "the points do not settle on a law" };
  }
  const { normal, right } = equations;
  const alone = inverseOfThree(normal);
  return { ok: true, ...found, withoutPlanform: alone === null ? null : timesVector(alone, right) };
}

/** Change of the parameters from step to step, in their standard uncertainties. */
function largestChange(now: Three, before: Three, covariance: SymmetricThree): number {
  return Math.max(
    Math.abs(now[0] - before[0]) / Math.sqrt(covariance[0][0]),
    Math.abs(now[1] - before[1]) / Math.sqrt(covariance[1][1]),
    Math.abs(now[2] - before[2]) / Math.sqrt(covariance[2][2]),
  );
}

/**
 * The planform's two pseudo-observations, in newtons at v0.
 *
 * @param craft with or without an expectation
 * @param v0 m/s
 * @returns their precision in 1/N2, and precision times mean
 */
export function expectedTerms(
  { expected }: TowedCraft,
  v0: number,
): { readonly precision: SymmetricThree; readonly pull: Three } {
  if (expected === null) return { precision: mapThree(() => 0), pull: [0, 0, 0] };
  const constant = expected.constant.standardUncertainty ** -2;
  const liftTerm = (expected.liftTerm.standardUncertainty / v0 ** 2) ** -2;
  return {
    precision: [[0, 0, 0], [0, constant, 0], [0, 0, liftTerm]],
    pull: [0, constant * expected.constant.mean, liftTerm * expected.liftTerm.mean / v0 ** 2],
  };
}

/** Places of the readings of each speed that was repeated. */
function groupsOf({ readings }: TowData): readonly (readonly number[])[] {
  const places = new Map<string, number[]>();
  readings.forEach((one, i) => places.set(one.group, [...(places.get(one.group) ?? []), i]));
  return [...places.values()].filter((group) => group.length > 1);
}

/** The scatter over all points and over the means of repeats; the larger one counts, and neither counts under 1. */
function scatterOf(
  scaled: readonly number[],
  groups: readonly (readonly number[])[],
  effective: number,
) {
  const free = scaled.length - effective;
  const within = scaled.reduce((sum, z) => sum + z * z, 0) / free;
  const freeGroups = groups.length - effective;
  const between = freeGroups < 1 ? null : groups.reduce(
    (sum, group) => sum + group.reduce((total, i) => total + scaled[i]!, 0) ** 2 / group.length,
    0,
  ) / freeGroups;
  const wins = between !== null && between > Math.max(1, within);
  const scatterFrom: ScatterFrom = wins ? "between" : within > 1 ? "within" : "stated";
  return {
    within,
    between,
    scale: wins ? between : Math.max(1, within),
    scatterFrom,
    degreesOfFreedom: wins ? freeGroups : free,
  };
}
