/**
 * How many runs a side would tell a difference of interest.
 *
 * @module
 */
import { noncentralTUpperTail, studentTQuantile } from "../numeric/distributions.ts";

/** What the number of runs depends on. */
export interface RunsNeededInput {
  /** Variance of ln distance of one run, baseline and candidate. */
  readonly runVariances: readonly [number, number];
  /** Variance of the log ratio that no number of runs makes smaller. */
  readonly fixedVariance: number;
  /** Smallest ratio worth finding, above 1. */
  readonly smallestRatio: number;
}

/** Chance of telling the difference when it is there. */
const POWER = 0.8;

/** Sum of the normal quantiles of 97.5 % and 80 %: standard errors that a difference must have to be found so often. */
const REACH = 2.8;

/** More runs a side than anyone flies. */
const MOST = 5000;

/**
 * Smallest number of runs a side that tells the smallest ratio of interest in four sessions of five.
 *
 * The difference is the one that the builder cares about, not the one observed: an observed difference that just fails
 * to convince is too hopeful a guide.
 *
 * Source: power of the two-sided t test by the noncentral t distribution; any text on sample size.
 *
 * @param input scatter of a run, fixed variance, smallest ratio
 * @returns runs a side; `null` when no number would do
 *
 * @example
 * ```ts
 * import { runsNeeded } from "lakeproof/fit/runs-needed.ts";
 *
 * const spread = 0.12 ** 2;
 * const runs = runsNeeded({ runVariances: [spread, spread], fixedVariance: 0, smallestRatio: 1.1 });
 * if (runs !== 26) throw new Error(`unexpected ${runs}`);
 * ```
 */
export function runsNeeded(input: RunsNeededInput): number | null {
  const difference = Math.log(input.smallestRatio);
  if (!(difference > 0) || difference < REACH * Math.sqrt(input.fixedVariance)) return null;
  const enough = (n: number) => power(input, difference, n) >= POWER;
  let high = 2;
  while (!enough(high)) {
    if (high >= MOST) return null;
    high *= 2;
  }
  let low = high / 2;
  if (high === 2) return 2;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (enough(middle)) high = middle;
    else low = middle;
  }
  return high;
}

function power(input: RunsNeededInput, difference: number, n: number): number {
  const [first, second] = input.runVariances.map((variance) => variance / n) as [number, number];
  const variance = first + second + input.fixedVariance;
  if (!(variance > 0)) return 1;
  const degreesOfFreedom = Math.min(
    1e6,
    variance ** 2 / ((first ** 2 + second ** 2) / (n - 1)),
  );
  const t = studentTQuantile(0.975, degreesOfFreedom);
  return noncentralTUpperTail(t, {
    degreesOfFreedom,
    noncentrality: difference / Math.sqrt(variance),
  });
}
