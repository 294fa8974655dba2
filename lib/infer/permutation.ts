/**
 * Shuffle the labels: how often would chance alone set two designs as far apart as they are?
 *
 * @module
 */
import type { SeededRandom } from "../numeric/random.ts";
import { checkSample, meanOf } from "./sample.ts";

/** What shuffling shows. */
export interface PermutationResult {
  /** Candidate less baseline, or the mean difference of pairs. */
  readonly difference: number;
  /** Two-sided: share of arrangements whose difference is at least as large in size. */
  readonly pValue: number;
  /** Arrangements at least as extreme, the observed one among them. */
  readonly asExtreme: number;
  /** Arrangements looked at, the observed one among them. */
  readonly arrangements: number;
  /** `exact`: all of them; `monte carlo`: a random draw, since all were too many. */
  readonly how: "exact" | "monte carlo";
}

/** How far to count and what to draw from. */
export interface PermutationOptions {
  /** Up to this many arrangements are counted out (default 200000). */
  readonly mostExact?: number;
  /** Random arrangements beyond that (default 20000). */
  readonly draws?: number;
  /** Where random arrangements come from; needed only beyond `mostExact`. */
  readonly random?: SeededRandom;
}

/** Ties in exact arithmetic must stay ties in doubles: a relative 1e-10 of the size of the numbers. */
function atLeast(observed: number, scale: number): (value: number) => boolean {
  const limit = Math.abs(observed) - 1e-10 * scale;
  return (value) => Math.abs(value) >= limit;
}

function needed(random: SeededRandom | undefined, arrangements: number): SeededRandom {
  if (random === undefined) {
    throw new RangeError(
      `Cannot count all ${arrangements} arrangements: a random stream is needed to draw from them`,
    );
  }
  return random;
}

/** Number of ways to choose k of n, as a double. */
function choose(n: number, k: number): number {
  let ways = 1;
  for (let i = 1; i <= k; i++) ways = ways * (n - k + i) / i;
  return Math.round(ways);
}

/** The test by drawn arrangements, the observed one counted among them. */
function byDrawing(
  difference: number,
  options: PermutationOptions,
  counts: (sum: number) => boolean,
  drawnSum: () => number,
): PermutationResult {
  const draws = options.draws ?? 20_000;
  let asExtreme = 1;
  for (let draw = 0; draw < draws; draw++) {
    if (counts(drawnSum())) asExtreme++;
  }
  const arrangements = draws + 1;
  return {
    difference,
    pValue: asExtreme / arrangements,
    asExtreme,
    arrangements,
    how: "monte carlo",
  };
}

/**
 * Two independent groups: the difference of means under every way of dealing out the labels.
 *
 * Two-sided here means: as large in size; the rival definition doubles the smaller tail.
 * Assumes only that under "no difference" each reading could as well have come from either design. With 3 and 3 readings
 * the smallest p-value there can be is 0.1.
 *
 * Source: Fisher, The Design of Experiments, 1935, section 21; Pitman 1937. Monte Carlo p-value with the observed
 * arrangement counted: Phipson and Smyth 2010.
 *
 * @param samples readings of baseline and candidate, one or more each
 * @param options how far to count, and a random stream for larger samples
 * @returns difference, two-sided p-value and how it was counted
 * @throws RangeError when a side is empty, a reading is not finite, or a random stream is needed and absent
 * @example
 * ```ts
 * import { permutationTest } from "lakeproof/infer/permutation.ts";
 * const { pValue, how } = permutationTest({ baseline: [1, 2, 3], candidate: [7, 8, 9] });
 * if (how !== "exact" || pValue !== 0.1) throw new Error(`2 of 20 arrangements: ${pValue}`);
 * ```
 */
export function permutationTest(
  samples: { readonly baseline: readonly number[]; readonly candidate: readonly number[] },
  options: PermutationOptions = {},
): PermutationResult {
  const { baseline, candidate } = samples;
  checkSample(baseline, 1, "readings of the baseline");
  checkSample(candidate, 1, "readings of the candidate");
  const all = [...candidate, ...baseline];
  const centre = meanOf(all);
  const centred = all.map((value) => value - centre);
  const scale = centred.reduce((sum, value) => sum + Math.abs(value), 0);
  const k = candidate.length;
  const n = all.length;
  // With the overall mean taken off, the difference of means follows from the candidate's sum alone.
  const observed = centred.slice(0, k).reduce((sum, value) => sum + value, 0);
  const counts = atLeast(observed, scale);
  const difference = meanOf(candidate) - meanOf(baseline);
  const ways = choose(n, k);
  let asExtreme = 0;
  if (ways <= (options.mostExact ?? 200_000)) {
    const visit = (from: number, left: number, sum: number): void => {
      if (left === 0) {
        if (counts(sum)) asExtreme++;
        return;
      }
      for (let i = from; i <= n - left; i++) visit(i + 1, left - 1, sum + centred[i]!);
    };
    visit(0, k, 0);
    return { difference, pValue: asExtreme / ways, asExtreme, arrangements: ways, how: "exact" };
  }
  const random = needed(options.random, ways);
  const pool = [...centred];
  return byDrawing(difference, options, counts, () => {
    let sum = 0;
    for (let i = 0; i < k; i++) {
      const j = i + random.integer(n - i);
      [pool[i], pool[j]] = [pool[j]!, pool[i]!];
      sum += pool[i]!;
    }
    return sum;
  });
}

/**
 * Pairs: the mean difference under every way of swapping within pairs.
 *
 * Source: Fisher, The Design of Experiments, 1935, section 21 (his own example is Darwin's maize).
 *
 * @param differences candidate less baseline of each pair, one or more
 * @param options how far to count, and a random stream for larger samples
 * @returns mean difference, two-sided p-value and how it was counted
 * @throws RangeError when there is no pair, a difference is not finite, or a random stream is needed and absent
 */
export function pairedPermutationTest(
  differences: readonly number[],
  options: PermutationOptions = {},
): PermutationResult {
  checkSample(differences, 1, "pairs");
  const n = differences.length;
  const scale = differences.reduce((sum, value) => sum + Math.abs(value), 0);
  const observed = differences.reduce((sum, value) => sum + value, 0);
  const counts = atLeast(observed, scale);
  const difference = observed / n;
  const ways = 2 ** n;
  let asExtreme = 0;
  if (ways <= Math.min(options.mostExact ?? 200_000, 2 ** 30)) {
    for (let signs = 0; signs < ways; signs++) {
      let sum = 0;
      for (let i = 0; i < n; i++) sum += (signs >>> i) & 1 ? differences[i]! : -differences[i]!;
      if (counts(sum)) asExtreme++;
    }
    return { difference, pValue: asExtreme / ways, asExtreme, arrangements: ways, how: "exact" };
  }
  const random = needed(options.random, ways);
  return byDrawing(difference, options, counts, () => {
    let sum = 0;
    for (const value of differences) sum += random.uniform() < 0.5 ? value : -value;
    return sum;
  });
}
