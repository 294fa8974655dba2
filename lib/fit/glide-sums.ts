/**
 * The few sums over a design's runs that its distance depends on.
 *
 * @module
 */
import type { GlideRun, GlideTarget } from "./glide-run.ts";
import type { GlidingCraft } from "./gliding-craft.ts";
import { meanShape } from "./mean-shape.ts";

/** Sums over the runs that count: all that the result depends on. */
export interface Sums {
  energy: number;
  predicted: number;
  end: number;
  stalled: number;
}

/** Energy height over predicted path: what one run adds to the two sums of the level. */
export function energyOf(
  run: GlideRun,
  v0: number,
  v1: number,
  drop: number,
  gravity: number,
): number {
  return drop + run.craft.inertia * (v0 * v0 - v1 * v1) / (2 * gravity);
}

/** End speed at the reference weight: a stall speed goes with the root of the weight. */
export function endFactor(run: GlideRun, reference: GlidingCraft): number {
  return Math.sqrt(reference.weight / run.craft.weight);
}

export function sumsOf(
  runs: readonly GlideRun[],
  reference: GlidingCraft,
  gravity: number,
  induced: number,
): Sums {
  const sums: Sums = { energy: 0, predicted: 0, end: 0, stalled: 0 };
  for (const run of runs) {
    if (run.inLevel) {
      sums.energy += energyOf(run, run.launchSpeed, run.endSpeed, run.drop, gravity);
      sums.predicted += run.distance * meanShape(run.craft, run.launchSpeed, run.endSpeed, induced);
    }
    if (run.inEnd) {
      sums.end += run.endSpeed * endFactor(run, reference);
      sums.stalled += 1;
    }
  }
  return sums;
}

/** Result of the sums: NaN where they give none, which callers turn into a tagged failure. */
export interface Reached {
  logDistance: number;
  logGlideRatio: number;
}

/** ln distance and ln glide ratio at the target from the sums; writes into `out`. */
export function reach(
  sums: Sums,
  reference: GlidingCraft,
  target: GlideTarget,
  induced: number,
  out: Reached,
): void {
  const end = target.end ?? sums.end / sums.stalled;
  const height = target.drop +
    reference.inertia * (target.speed * target.speed - end * end) / (2 * target.gravity);
  if (
    !(sums.energy > 0) || !(sums.predicted > 0) || !(end < target.speed) || !(height > 0) ||
    !(end > 0)
  ) {
    out.logDistance = NaN;
    out.logGlideRatio = NaN;
    return;
  }
  out.logGlideRatio = -Math.log(
    sums.energy / sums.predicted * meanShape(reference, target.speed, end, induced),
  );
  out.logDistance = Math.log(height) + out.logGlideRatio;
}

/** Why the sums give no result, in words. */
export function whyNot(sums: Sums, target: GlideTarget): string {
  if (!(sums.predicted > 0)) return "no run has launch speed, end speed, drop and distance";
  if (!(sums.energy > 0)) return "the runs spent no energy: speed rose as much as height fell";
  if (target.end === null && sums.stalled === 0) return "no run tells the end speed";
  return "the launch speed to compare at is not above the end speed";
}
