/**
 * One design's glides brought to a common launch: level of drag, end speed, distance, and how well each is known.
 *
 * Plain numbers in, plain numbers out: notebooks, the command line and simulations over thousands of sessions call the
 * same code.
 *
 * @module
 */
import type { Result } from "../base/quantity.ts";
import { varianceOf } from "../infer/sample.ts";
import type { GlideRun, GlideTarget } from "./glide-run.ts";
import {
  emptyReach,
  endFactor,
  energyHeight,
  type GlideReach,
  type GlideSums,
  reachTarget,
  sumRuns,
  whyNoReach,
} from "./glide-sums.ts";
import type { GlidingCraft } from "./gliding-craft.ts";
import { meanShape } from "./mean-shape.ts";

/** A design's result at the target. `log` quantities are natural logarithms. */
export interface GlideSeries {
  /** Runs that count for the level or the end speed. */
  readonly count: number;
  /** Fitted drag over prior drag, 1. */
  readonly level: number;
  /** Jackknife standard error of ln level; `null` for one run. */
  readonly levelError: number | null;
  /** m/s */
  readonly endSpeed: number;
  /** m of height spent from the target launch to the end. */
  readonly energyHeight: number;
  /** Mean drag over weight that the prior shape predicts there, 1. */
  readonly meanShape: number;
  /** ln of the distance in m. */
  readonly logDistance: number;
  /** Jackknife pseudo-values of ln distance, one a run, in the order given. */
  readonly pseudoValues: readonly number[];
  /** The same for ln of the mean glide ratio (distance over energy height). */
  readonly glideRatioPseudoValues: readonly number[];
  /** Variance of ln distance from the scatter of the pseudo-values alone; `null` for one run. */
  readonly jackknifeVariance: number | null;
  /** Variance of ln distance that the stated uncertainties alone would cause. */
  readonly measurementVariance: number;
  /** The same of ln glide ratio. */
  readonly glideRatioMeasurementVariance: number;
  /** The larger of the jackknife variance and a quarter of the measurement variance; `null` for one run. */
  readonly variance: number | null;
  /** Change of ln distance for one standard uncertainty of the prior shape. */
  readonly shapeSensitivity: number;
  /** The same of ln glide ratio. */
  readonly glideRatioShapeSensitivity: number;
}

/**
 * ln of the distance from the target launch, without uncertainty: for shifted inputs and grids.
 *
 * @param runs one design's runs
 * @param reference the craft at the mass to compare at
 * @param target launch, height and end to move to
 * @param induced factor on the induced term of the prior shape
 * @returns ln of the distance in m, or the reason why there is none
 */
export function logDistance(
  runs: readonly GlideRun[],
  reference: GlidingCraft,
  target: GlideTarget,
  induced = 1,
): Result<{ readonly logDistance: number; readonly logGlideRatio: number }> {
  const sums = sumRuns(runs, reference, target.gravity, induced);
  const out: GlideReach = emptyReach();
  reachTarget(sums, reference, target, induced, out);
  if (!Number.isFinite(out.logDistance)) return { ok: false, reason: whyNoReach(sums, target) };
  return { ok: true, logDistance: out.logDistance, logGlideRatio: out.logGlideRatio };
}

/** Columns of a run that carry their own uncertainty. */
const COLUMNS = ["launchSpeed", "endSpeed", "drop", "distance"] as const;

/** Step of the central difference, in standard uncertainties. */
const STEP = 0.01;

/**
 * Brings one design's runs to the target launch.
 *
 * Level of drag: energy spent over energy that the prior shape predicts, as a ratio of sums over all runs, so that a
 * short run has the small weight that its noise deserves and no logarithm of a noisy quotient is taken. End speed: mean
 * of the stalled runs. Uncertainty: jackknife over runs, with a floor of a quarter of the variance that the stated
 * measurement uncertainties cause, so that a lucky row of equal readings claims nothing it can't know.
 *
 * Source: Cochran, Sampling Techniques, 1977, chapter 6 (ratio of sums) and Tukey 1958 (jackknife), from memory;
 * JCGM 100:2008 clause 5.1.2 (propagation). The quarter was chosen by simulation.
 *
 * @param runs one design's runs; at least one with all readings
 * @param reference the craft at the mass to compare at
 * @param target launch, height and end to move to
 * @returns the series, or the reason why there is none
 */
export function fitGlideSeries(
  runs: readonly GlideRun[],
  reference: GlidingCraft,
  target: GlideTarget,
): Result<GlideSeries> {
  const { gravity } = target;
  const counted = runs.filter((run) => run.inLevel || run.inEnd);
  const sums = sumRuns(counted, reference, gravity, 1);
  const full: GlideReach = emptyReach();
  reachTarget(sums, reference, target, 1, full);
  if (!Number.isFinite(full.logDistance)) return { ok: false, reason: whyNoReach(sums, target) };

  const n = counted.length;
  const pseudoValues: number[] = [];
  const glideRatioPseudoValues: number[] = [];
  const trial: GlideSums = { energy: 0, predicted: 0, end: 0, stalled: 0 };
  const out: GlideReach = emptyReach();
  const levels: number[] = [];
  let measurementVariance = 0, glideRatioMeasurementVariance = 0;
  for (const run of counted) {
    const { launchSpeed: v0, endSpeed: v1, drop, distance } = run;
    const energy = run.inLevel ? energyHeight(run, [v0, v1], drop, gravity) : 0;
    const predicted = run.inLevel ? distance * meanShape(run.craft, v0, v1, 1) : 0;
    const factor = run.inEnd ? endFactor(run, reference) : 0;
    if (n > 1) {
      trial.energy = sums.energy - energy;
      trial.predicted = sums.predicted - predicted;
      trial.end = sums.end - (run.inEnd ? v1 * factor : 0);
      trial.stalled = sums.stalled - (run.inEnd ? 1 : 0);
      reachTarget(trial, reference, target, 1, out);
      if (!Number.isFinite(out.logDistance)) {
        return { ok: false, reason: `leaving out one run: ${whyNoReach(trial, target)}` };
      }
      levels.push(Math.log(trial.energy / trial.predicted));
      pseudoValues.push(n * full.logDistance - (n - 1) * out.logDistance);
      glideRatioPseudoValues.push(n * full.logGlideRatio - (n - 1) * out.logGlideRatio);
    } else {
      pseudoValues.push(full.logDistance);
      glideRatioPseudoValues.push(full.logGlideRatio);
    }
    for (const column of COLUMNS) {
      const step = run.uncertainty[column] * STEP;
      if (!(step > 0)) continue;
      if (!run.inLevel && column !== "endSpeed") continue;
      let distanceChange = 0, glideRatioChange = 0;
      for (const sign of [1, -1] as const) {
        const w0 = column === "launchSpeed" ? v0 + sign * step : v0;
        const w1 = column === "endSpeed" ? v1 + sign * step : v1;
        const z = column === "drop" ? drop + sign * step : drop;
        const x = column === "distance" ? distance + sign * step : distance;
        trial.energy = sums.energy - energy +
          (run.inLevel ? energyHeight(run, [w0, w1], z, gravity) : 0);
        trial.predicted = sums.predicted - predicted +
          (!run.inLevel
            ? 0
            : column === "drop"
            ? predicted
            : column === "distance"
            ? predicted * x / distance
            : x * meanShape(run.craft, w0, w1, 1));
        trial.end = sums.end + (run.inEnd ? (w1 - v1) * factor : 0);
        trial.stalled = sums.stalled;
        reachTarget(trial, reference, target, 1, out);
        distanceChange += sign * out.logDistance;
        glideRatioChange += sign * out.logGlideRatio;
      }
      measurementVariance += (distanceChange / (2 * STEP)) ** 2;
      glideRatioMeasurementVariance += (glideRatioChange / (2 * STEP)) ** 2;
    }
  }
  if (!Number.isFinite(measurementVariance)) {
    return { ok: false, reason: "the end speed is too near to the launch speed to compare at" };
  }

  const up: GlideReach = emptyReach();
  const down: GlideReach = emptyReach();
  for (const [sign, into] of [[1, up], [-1, down]] as const) {
    const induced = Math.exp(sign * target.shapeUncertainty);
    reachTarget(sumRuns(counted, reference, gravity, induced), reference, target, induced, into);
  }

  const spread = n < 2 ? null : varianceOf(pseudoValues);
  const jackknifeVariance = spread === null ? null : spread / n;
  const endSpeed = target.end ?? sums.end / sums.stalled;
  return {
    ok: true,
    count: n,
    level: sums.energy / sums.predicted,
    levelError: n < 2 ? null : Math.sqrt(varianceOf(levels) * (n - 1) ** 2 / n),
    endSpeed,
    energyHeight: Math.exp(full.logDistance - full.logGlideRatio),
    meanShape: meanShape(reference, target.speed, endSpeed, 1),
    logDistance: full.logDistance,
    pseudoValues,
    glideRatioPseudoValues,
    jackknifeVariance,
    measurementVariance,
    glideRatioMeasurementVariance,
    variance: jackknifeVariance === null
      ? null
      : Math.max(jackknifeVariance, measurementVariance / 4),
    shapeSensitivity: (up.logDistance - down.logDistance) / 2,
    glideRatioShapeSensitivity: (up.logGlideRatio - down.logGlideRatio) / 2,
  };
}
