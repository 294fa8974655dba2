/**
 * The few sums over a design's runs that its distance depends on.
 *
 * Leaving out a run, or moving one of its readings a little, changes the sums by that run's share alone: the jackknife and
 * the propagation of uncertainty stay cheap.
 *
 * @module
 */
import type { GlideRun, GlideTarget } from "./glide-run.ts";
import type { GlidingCraft } from "./gliding-craft.ts";
import { meanShape } from "./mean-shape.ts";

/** Sums over the runs that count. */
export interface GlideSums {
  /** m of height spent by all runs. */
  energy: number;
  /** m of height that the prior shape predicts for their distances at level 1. */
  predicted: number;
  /** m/s: end speeds of the stalled runs, moved to the reference weight. */
  end: number;
  /** Runs that stalled. */
  stalled: number;
}

/** What the sums come to: NaN where they give no result, which callers turn into a tagged failure. */
export interface GlideReach {
  /** ln of the distance in m. */
  logDistance: number;
  /** ln of distance over height spent. */
  logGlideRatio: number;
  /** m/s: the end speed that `shape` was worked out for; most changes of a reading leave it as it is. */
  shapeEnd: number;
  /** Mean drag over weight of the prior shape from the target's launch to that end. */
  shape: number;
}

/**
 * A place for results, for one reference craft, target and induced factor.
 *
 * @returns a reach of NaN, to be filled
 */
export function emptyReach(): GlideReach {
  return { logDistance: NaN, logGlideRatio: NaN, shapeEnd: NaN, shape: NaN };
}

/**
 * Height that a run spends, m: what it lost, and what its lost speed was worth.
 *
 * @param run for its craft
 * @param speeds launch and end, m/s
 * @param drop m
 * @param gravity m/s2
 * @returns m
 */
export function energyHeight(
  run: GlideRun,
  speeds: readonly [number, number],
  drop: number,
  gravity: number,
): number {
  const [v0, v1] = speeds;
  return drop + run.craft.inertia * (v0 * v0 - v1 * v1) / (2 * gravity);
}

/**
 * What moves a run's end speed to the reference weight: a stall speed goes with the root of the weight.
 *
 * @param run for its craft
 * @param reference the craft at the mass to compare at
 * @returns 1
 */
export function endFactor(run: GlideRun, reference: GlidingCraft): number {
  return Math.sqrt(reference.weight / run.craft.weight);
}

/**
 * The sums of some runs.
 *
 * @param runs one design's runs
 * @param reference the craft at the mass to compare at
 * @param gravity m/s2
 * @param induced factor on the induced term of the prior shape
 * @returns sums
 */
export function sumRuns(
  runs: readonly GlideRun[],
  reference: GlidingCraft,
  gravity: number,
  induced: number,
): GlideSums {
  const sums: GlideSums = { energy: 0, predicted: 0, end: 0, stalled: 0 };
  for (const run of runs) {
    const { launchSpeed, endSpeed, drop, distance, craft } = run;
    if (run.inLevel) {
      sums.energy += energyHeight(run, [launchSpeed, endSpeed], drop, gravity);
      sums.predicted += distance * meanShape(craft, launchSpeed, endSpeed, induced);
    }
    if (run.inEnd) {
      sums.end += endSpeed * endFactor(run, reference);
      sums.stalled += 1;
    }
  }
  return sums;
}

/**
 * Distance and glide ratio at the target: height to spend over (level times the shape's mean drag over weight).
 *
 * @param sums of the runs
 * @param reference the craft at the mass to compare at
 * @param target launch, height and end
 * @param induced factor on the induced term of the prior shape
 * @param out where the result goes, so that thousands of calls allocate nothing; only ever used with the same reference,
 *   target and factor
 */
export function reachTarget(
  sums: GlideSums,
  reference: GlidingCraft,
  target: GlideTarget,
  induced: number,
  out: GlideReach,
): void {
  const end = target.end ?? sums.end / sums.stalled;
  const height = target.drop +
    reference.inertia * (target.speed * target.speed - end * end) / (2 * target.gravity);
  if (
    !(sums.energy > 0 && sums.predicted > 0 && end < target.speed && end > 0 && height > 0)
  ) {
    out.logDistance = NaN;
    out.logGlideRatio = NaN;
    return;
  }
  const level = sums.energy / sums.predicted;
  if (end !== out.shapeEnd) {
    out.shapeEnd = end;
    out.shape = meanShape(reference, target.speed, end, induced);
  }
  out.logGlideRatio = -Math.log(level * out.shape);
  out.logDistance = Math.log(height) + out.logGlideRatio;
}

/**
 * Why sums give no result, in words.
 *
 * @param sums of the runs
 * @param target launch, height and end
 * @returns the reason, to stand behind a colon
 */
export function whyNoReach(sums: GlideSums, target: GlideTarget): string {
  if (!(sums.predicted > 0)) return "no run has launch speed, end speed, drop and distance";
  if (!(sums.energy > 0)) return "its runs end faster than they began, or higher";
  if (target.end === null && sums.stalled === 0) return "no run tells the end speed";
  return "the launch speed to compare at is not above the end speed";
}
