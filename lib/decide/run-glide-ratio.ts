/**
 * What one run says by itself: distance over height spent.
 *
 * @module
 */
import type { Quantity } from "../base/quantity.ts";
import type { GlideRun } from "../fit/glide-run.ts";
import { energyHeight } from "../fit/glide-sums.ts";
import { normalQuantile } from "../numeric/distributions.ts";

/** Energy height and glide ratio of one run. */
export interface RunGlideRatio {
  /** m: drop plus the height that the lost speed was worth. */
  readonly energyHeight: number;
  /** `null` where the run spent no energy. */
  readonly glideRatio: Quantity | null;
}

/**
 * Energy-corrected glide ratio of one run, `x/dH` with `dH = dz + kappa (v0^2 - v1^2)/(2 g)`.
 *
 * It is the whole craft's mean lift-to-drag over that run. A fair display, not the verdict: it ignores at which speeds the
 * drag was paid. A short run spends little height, so that its own noise is a large share; the interval is therefore taken
 * on `dH/x`, whose noise is nearly normal, and turned over: where it reaches zero only a lower end is known.
 *
 * Source: JCGM 100:2008 clause 5.1.2.
 *
 * @param run all four readings known
 * @param gravity m/s2
 * @returns m and 1
 */
export function runGlideRatio(run: GlideRun, gravity: number): RunGlideRatio {
  const { launchSpeed: v0, endSpeed: v1, drop, distance, craft, uncertainty: u } = run;
  const spent = energyHeight(run, [v0, v1], drop, gravity);
  if (!(spent > 0 && distance > 0)) return { energyHeight: spent, glideRatio: null };
  const speed = craft.inertia / gravity;
  const height = Math.hypot(u.drop, speed * v0 * u.launchSpeed, speed * v1 * u.endSpeed);
  const share = Math.hypot(height / spent, u.distance / distance);
  const inverse = spent / distance;
  const half = normalQuantile(0.975) * share * inverse;
  const value = 1 / inverse;
  return {
    energyHeight: spent,
    glideRatio: {
      value,
      standardUncertainty: share * value,
      degreesOfFreedom: null,
      low: 1 / (inverse + half),
      high: inverse > half ? 1 / (inverse - half) : null,
      level: 0.95,
      kind: inverse > half ? "interval" : "atLeast",
      unit: "1",
    },
  };
}
