/**
 * Drag of a design as its plain glides tell it: launch and end speed, height lost and distance, without a speed trace.
 *
 * @module
 */
import { varianceOf } from "../infer/sample.ts";
import type { DragLaw } from "../model/drag-law.ts";
import { bracketedRoot } from "../numeric/roots.ts";
import type { GlideRun } from "./glide-run.ts";
import { energyHeight, sumRuns } from "./glide-sums.ts";
import type { GlidingCraft } from "./gliding-craft.ts";
import { meanShape } from "./mean-shape.ts";
import type { TowEstimate } from "./tow-series.ts";

/** Runs of one design, and the prior law at the lift and depth that their drag is told at. */
export interface GlideLevelData {
  /** Those that count for the level. */
  readonly runs: readonly GlideRun[];
  /** The law whose shape is the runs' own, at the lift and depth to tell drag at. */
  readonly told: DragLaw & Pick<GlidingCraft, "phi">;
  /** m/s2 */
  readonly gravity: number;
}

/** An error that all runs share. */
export interface SharedLevelError {
  readonly name: string;
  /** Errors with the same key are one error, also in a tow; `null` is the glides' own. */
  readonly key: string | null;
  /** The same runs with the error taken off at plus and at minus one standard uncertainty. */
  readonly shifted: readonly [GlideLevelData, GlideLevelData];
}

/** Columns of a run that carry their own uncertainty. */
const COLUMNS = ["launchSpeed", "endSpeed", "drop", "distance"] as const;

/** Step of a central difference, in standard uncertainties and in ln of the induced share. */
const STEP = 0.01;

/** The scatter of few runs can be small by luck: at least this share of the variance that the readings alone would cause. */
const FLOOR = 0.25;

/**
 * Drag at a speed: the prior law there, times what the runs spent over what it lets them spend.
 *
 * @param data runs and law
 * @param speed m/s
 * @param induced factor on the induced term of the shape, 1 for the prior itself
 * @returns ln of N; NaN where the runs spent nothing
 */
export function logGlideDrag(data: GlideLevelData, speed: number, induced = 1): number {
  const { runs, told: { a, d, e, phi }, gravity } = data;
  const { energy, predicted } = sumRuns(runs, runs[0]!.craft, gravity, induced);
  const square = speed * speed;
  const law = a * square + d + induced * e * (phi?.(speed) ?? 1) / square;
  return Math.log(energy / predicted) + Math.log(law);
}

/** Change of ln drag for a change of ln of the induced share: above zero when slow, below when fast. */
function shapeSlope(data: GlideLevelData, speed: number): number {
  const at = (sign: number) => logGlideDrag(data, speed, Math.exp(sign * STEP));
  return (at(1) - at(-1)) / (2 * STEP);
}

/**
 * The speed at which glides tell the drag without leaning on the shape of the law.
 *
 * A glide tells the mean drag on its way, not the drag at one speed. Whatever share of it is induced, there is one speed
 * between launch and end at which the law has just that mean: slower, more induced drag would mean more than the mean, faster
 * less. It is not the mean of the two speeds, though near it.
 *
 * @param data runs and law
 * @returns m/s, between the slowest end and the fastest launch; `null` where there is none
 */
export function glideMeanSpeed(data: GlideLevelData): number | null {
  const low = Math.min(...data.runs.map((one) => one.endSpeed));
  const high = Math.max(...data.runs.map((one) => one.launchSpeed));
  if (!(low > 0 && shapeSlope(data, low) > 0 && shapeSlope(data, high) < 0)) return null;
  return bracketedRoot((speed) => shapeSlope(data, speed), { low, high }, {
    relativeTolerance: 1e-10,
  });
}

/**
 * Drag at a speed with its variance apart by origin.
 *
 * Own: jackknife over the runs, with a floor of a quarter of what the stated uncertainties of the readings would cause. Shape:
 * one standard uncertainty of the induced share, nothing at the glides' mean speed. Shared errors one by one, with their signs.
 *
 * Source: jackknife of a ratio of sums, Cochran, Sampling Techniques, 1977, chapter 6 (from memory); JCGM 100:2008 clause
 * 5.1.2 (propagation).
 *
 * @param data two runs or more, and the law
 * @param errors shared by all runs
 * @param at speed in m/s; standard uncertainty of ln of the induced share
 * @returns parts as a tow has them; `null` where the runs carry no level
 */
export function glideDragEstimate(
  data: GlideLevelData,
  errors: readonly SharedLevelError[],
  { speed, shapeUncertainty }: { readonly speed: number; readonly shapeUncertainty: number },
): TowEstimate | null {
  const { runs } = data;
  const n = runs.length;
  const log = logGlideDrag(data, speed);
  if (n < 2 || !Number.isFinite(log)) return null;
  const without = runs.map((_, i) =>
    logGlideDrag({ ...data, runs: runs.filter((_, j) => j !== i) }, speed)
  );
  if (!without.every(Number.isFinite)) return null;
  const jackknife = varianceOf(without) * (n - 1) ** 2 / n;
  const shared = errors.map(({ name, key, shifted: [plus, minus] }) => ({
    name,
    key,
    change: (logGlideDrag(plus, speed) - logGlideDrag(minus, speed)) / 2,
  }));
  if (!shared.every((one) => Number.isFinite(one.change))) return null;
  return {
    log,
    dataVariance: Math.max(jackknife, FLOOR * readingVariance(data)),
    dataDegreesOfFreedom: n - 1,
    planformVariance: (shapeUncertainty * shapeSlope(data, speed)) ** 2,
    sweepVariance: 0,
    sweepDegreesOfFreedom: 0,
    shared,
  };
}

/**
 * Change of ln drag by one standard uncertainty of the induced share, with its sign: what it shares with a tow.
 *
 * @param data runs and law
 * @param at speed in m/s; standard uncertainty of ln of the induced share
 * @returns 1
 */
export function glideShapeChange(
  data: GlideLevelData,
  at: { readonly speed: number; readonly shapeUncertainty: number },
): number {
  return at.shapeUncertainty * shapeSlope(data, at.speed);
}

/** Variance of ln level that the readings' own uncertainties would cause. */
function readingVariance({ runs, gravity }: GlideLevelData): number {
  const sums = sumRuns(runs, runs[0]!.craft, gravity, 1);
  let variance = 0;
  for (const run of runs) {
    const partOf = (one: GlideRun) => ({
      energy: energyHeight(one, [one.launchSpeed, one.endSpeed], one.drop, gravity),
      predicted: one.distance * meanShape(one.craft, one.launchSpeed, one.endSpeed, 1),
    });
    const here = partOf(run);
    for (const column of COLUMNS) {
      const step = run.uncertainty[column] * STEP;
      if (!(step > 0)) continue;
      const at = (sign: number) => {
        const { energy, predicted } = partOf({ ...run, [column]: run[column] + sign * step });
        return Math.log(
          (sums.energy - here.energy + energy) / (sums.predicted - here.predicted + predicted),
        );
      };
      variance += ((at(1) - at(-1)) / (2 * STEP)) ** 2;
    }
  }
  return variance;
}
