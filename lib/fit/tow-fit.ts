/**
 * A drag law through towed points: forces against adjusted speeds, three terms, a planform that steadies them.
 *
 * @module
 */
import type { Result } from "../base/quantity.ts";
import { drawnIn, halfWay, type RobustWeights, robustWeights } from "./robust-weights.ts";
import { groupsOf, type ScatterFrom, scatterOf } from "./tow-scatter.ts";
import { AdjustedPoints } from "./adjusted-points.ts";
import { expectedTerms } from "./expected-terms.ts";
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
import type { TowData } from "./tow-data.ts";

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
  /** Factors on the weights, one a reading, where a wild one was to count for little; else `null`. */
  readonly robustWeights: readonly number[] | null;
  /** Scale of the scaled residuals that these were found with; else `null`. */
  readonly robustScale: number | null;
}

/** Settings of a fit. */
export interface TowFitOptions {
  /** k taken from elsewhere, for what a shared error does to the same points. */
  readonly scatterScale?: number;
  /** True to let readings far off the law count for little. */
  readonly robust?: boolean;
  /** Its scale, taken from elsewhere like k. */
  readonly robustScale?: number;
}

/** The golden example settles to 1e-12 in 20 steps. */
const MOST_STEPS = 60;

/** The robust view goes half way each time, and its scale may creep. */
const MOST_ROBUST_STEPS = 2000;

/** Steps of the robust view before a scale from elsewhere counts. */
const OWN_SCALE_STEPS = 30;

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
 * @param options k from elsewhere; the robust view
 * @returns the fit, or why there is none
 * @throws RangeError when a reading is not a positive speed and pull, or the craft carries nothing
 */
export function fitTow(data: TowData, options: TowFitOptions = {}): Result<TowFit> {
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
  let robust: RobustWeights | null = null;
  const mostSteps = options.robust ? MOST_ROBUST_STEPS : MOST_STEPS;
  for (let step = 0; step < mostSteps && change > SETTLED; step++) {
    if (parameters !== null && !points.adjust(parameters)) {
      return { ok: false, reason: "the points do not settle on a law" };
    }
    equations = points.equations();
    const { normal, right } = equations;
    const covariance = inverseOfThree(plus(precision, normal, 1 / k));
    if (covariance === null) return { ok: false, reason: "the points can't tell the terms apart" };
    const before: Three | null = parameters;
    const p = robust === null
      ? solved({ covariance, right, pull }, 1 / k)
      : robustStep({ points, robust, precision, pull }, k);
    if (p === null) {
      return { ok: false, reason: "the readings disagree too much to tell which are wild" };
    }
    parameters = p;
    if (before !== null) change = largestChange(p, before, covariance);
    const residuals = points.residuals(p);
    const scaled = residuals.map((one, i) => one * Math.sqrt(points.weights[i]!));
    const effective = (dot(covariance[0], normal[0]) + dot(covariance[1], normal[1]) +
      dot(covariance[2], normal[2])) / k;
    if (options.robust) {
      // A scale from elsewhere would call most readings wild while the law is still far off.
      const scale = step < OWN_SCALE_STEPS ? undefined : options.robustScale;
      robust = halfWay(robust, robustWeights(scaled, scale));
    }
    const scatter = scatterOf(
      robust === null ? scaled : drawnIn(scaled, robust),
      groups,
      effective,
    );
    const settled = !(step + 1 < mostSteps && change > SETTLED);
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
        robustWeights: robust?.weights ?? null,
        robustScale: robust?.scale ?? null,
      };
    }
    if (options.scatterScale === undefined) k = scatter.scale;
  }
  if (found === null || !(change < UNSETTLED)) {
    return { ok: false, reason: "the points do not settle on a law" };
  }
  const { normal, right } = robust === null ? equations : points.equations(robust.weights);
  const alone = inverseOfThree(normal);
  return { ok: true, ...found, withoutPlanform: alone === null ? null : timesVector(alone, right) };
}

/** Parameters from the normal equations, each weighed by a share. */
function solved(
  { covariance, right, pull }: {
    readonly covariance: SymmetricThree;
    readonly right: Three;
    readonly pull: Three;
  },
  share: number,
): Three {
  return timesVector(covariance, [
    right[0] * share + pull[0],
    right[1] * share + pull[1],
    right[2] * share + pull[2],
  ]);
}

/** Steepness under which more readings are wild than not. */
const FLAT = 0.2;

/**
 * Parameters with wild readings held down. What readings pull with is weighed so that their information is that of the
 * whole, k and all, against which the planform stands.
 */
function robustStep(
  { points, robust: { weights, steepness }, precision, pull }: {
    readonly points: AdjustedPoints;
    readonly robust: RobustWeights;
    readonly precision: SymmetricThree;
    readonly pull: Three;
  },
  k: number,
): Three | null {
  if (!(steepness > FLAT)) return null;
  const { normal, right } = points.equations(weights);
  const share = 1 / (k * steepness);
  const covariance = inverseOfThree(plus(precision, normal, share));
  return covariance === null ? null : solved({ covariance, right, pull }, share);
}

/** Change of the parameters from step to step, in their standard uncertainties. */
function largestChange(now: Three, before: Three, covariance: SymmetricThree): number {
  return Math.max(
    Math.abs(now[0] - before[0]) / Math.sqrt(covariance[0][0]),
    Math.abs(now[1] - before[1]) / Math.sqrt(covariance[1][1]),
    Math.abs(now[2] - before[2]) / Math.sqrt(covariance[2][2]),
  );
}
