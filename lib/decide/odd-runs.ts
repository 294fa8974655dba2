/**
 * Runs that look pumped, pushed or mistaken: flagged, never dropped.
 *
 * @module
 */
import type { GlideRun } from "../fit/glide-run.ts";
import type { GlideSeries } from "../fit/glide-series.ts";
import { energyHeight } from "../fit/glide-sums.ts";
import { studentTUpperTail } from "../numeric/distributions.ts";

/** Chance that a design without any odd run gets one flagged by its pseudo-values. */
const FALSE_ALARM = 0.05;

/** Runs from which on one can stand out from the others. */
const LEAST_RUNS = 4;

/**
 * What is odd about each run of a design, or `null`.
 *
 * Three signs: the speed rose after launch; the run spent no energy; its pseudo-value stands out from the others
 * (studentised deleted residual, two-sided, Bonferroni over the runs). A run is never flagged because its energy is merely
 * small: leaving such runs out would select noise. In simulated sessions without odd runs 5 to 7 % of designs get a flag.
 *
 * Source: deleted residuals in any text on regression diagnostics; common practice.
 *
 * @param runs of one design, in the order of the series
 * @param series of the same runs; `null` where there is none
 * @param gravity m/s2
 * @returns one entry a run
 */
export function oddRuns(
  runs: readonly GlideRun[],
  series: GlideSeries | null,
  gravity: number,
): (string | null)[] {
  return runs.map((run, i) => {
    if (run.inLevel) {
      const { launchSpeed: v0, endSpeed: v1, drop } = run;
      if (v1 > v0) return "the speed rose after launch: pumped or pushed?";
      if (energyHeight(run, [v0, v1], drop, gravity) <= 0) {
        return "it spent no energy: pumped, pushed, or a reading is wrong?";
      }
    }
    if (series === null || !standsOut(series.pseudoValues, i)) return null;
    const others = series.pseudoValues.filter((_, k) => k !== i);
    const middle = others.reduce((total, value) => total + value, 0) / others.length;
    return series.pseudoValues[i]! > middle
      ? "it goes further than the other runs allow: pumped, pushed, or a slip in a reading?"
      : "it falls short of the other runs: touched, turned, or a slip in a reading?";
  });
}

function standsOut(values: readonly number[], i: number): boolean {
  const n = values.length;
  if (n < LEAST_RUNS) return false;
  const others = values.filter((_, k) => k !== i);
  const mean = others.reduce((total, value) => total + value, 0) / (n - 1);
  const spread = Math.sqrt(
    others.reduce((total, value) => total + (value - mean) ** 2, 0) / (n - 2),
  );
  if (!(spread > 0)) return false;
  const t = Math.abs(values[i]! - mean) / (spread * Math.sqrt(1 + 1 / (n - 1)));
  return 2 * studentTUpperTail(t, n - 2) < FALSE_ALARM / n;
}
