/**
 * Noise of a speed trace that remembers itself: whitened sums, and how strong and how lasting it is.
 *
 * @module
 */
import { minimumBetween } from "../numeric/minimum.ts";

/** Columns of one run, and its residuals last: launch, offset, first, third, residual; one entry a sample each. */
export type TraceColumns = readonly [
  Float64Array,
  Float64Array,
  Float64Array,
  Float64Array,
  Float64Array,
];

/** Symmetric sums of products of whitened columns, 5 by 5 by rows. */
export type TraceGram = Float64Array;

/**
 * Sums of products of a run's columns after whitening for noise whose correlation falls with time.
 *
 * @param columns of the run
 * @param times of its samples, s
 * @param memory s in which the correlation falls to 1/e; 0 for white noise
 * @returns sums for noise of unit variance
 */
export function whitenedSums(
  columns: TraceColumns,
  times: readonly number[],
  memory: number,
): TraceGram {
  const gram = new Float64Array(25);
  const before = new Float64Array(5), here = new Float64Array(5);
  let spacing = 0, kept = 0, scale = 1;
  for (let i = 0; i < times.length; i++) {
    if (i > 0 && memory > 0) {
      const here = times[i]! - times[i - 1]!;
      // Equal to rounding: samples at a steady rate need one exponential in all.
      if (Math.abs(here - spacing) > 1e-9 * here) {
        spacing = here;
        kept = Math.exp(-spacing / memory);
        scale = 1 / Math.sqrt(1 - kept * kept);
      }
    }
    for (let j = 0; j < 5; j++) {
      const value = columns[j]![i]!;
      here[j] = (value - kept * before[j]!) * scale;
      before[j] = value;
    }
    for (let j = 0; j < 5; j++) {
      const one = here[j]!;
      for (let k = j; k < 5; k++) gram[5 * j + k]! += one * here[k]!;
    }
  }
  for (let j = 0; j < 5; j++) for (let k = 0; k < j; k++) gram[5 * j + k] = gram[5 * k + j]!;
  return gram;
}

/** Logarithm of the determinant of the whitening: what the correlation takes off the likelihood. */
function logDeterminant(times: readonly number[], memory: number): number {
  if (memory === 0) return 0;
  let sum = 0;
  for (let i = 1; i < times.length; i++) {
    sum += Math.log1p(-Math.exp(2 * (times[i - 1]! - times[i]!) / memory));
  }
  return sum;
}

/** Noise of all runs of a design. */
export interface TraceNoise {
  /** m/s */
  readonly standardDeviation: number;
  /** s in which its correlation falls to 1/e; 0 for white noise. */
  readonly memory: number;
}

/** One run for the noise. */
export interface NoisyRun {
  readonly times: readonly number[];
  readonly columns: TraceColumns;
}

/** A column of which less than this share is left by the columns before it tells nothing of its own. */
const NOTHING_LEFT = 1e-10;

/** Removes a column from sums of products by elimination; its logarithm of the pivot, or `null` where nothing was left of it. */
function eliminate(gram: Float64Array, at: number, whole: number): number | null {
  const pivot = gram[6 * at]!;
  if (!(pivot > NOTHING_LEFT * whole)) {
    for (let j = 0; j < 5; j++) gram[5 * j + at] = gram[5 * at + j] = 0;
    return null;
  }
  for (let j = 0; j < 5; j++) {
    if (j === at) continue;
    const share = gram[5 * j + at]! / pivot;
    for (let k = 0; k < 5; k++) {
      if (k !== at) gram[5 * j + k]! -= share * gram[5 * at + k]!;
    }
  }
  return Math.log(pivot);
}

/** Minus twice the restricted log likelihood at a memory, and the variance that belongs to it. */
function restricted(runs: readonly NoisyRun[], memory: number) {
  const total = new Float64Array(25);
  const whole = new Float64Array(5);
  let count = 0, log = 0;
  const remove = (gram: Float64Array, at: number, before: number) => {
    const pivot = eliminate(gram, at, before);
    if (pivot === null) return;
    log += pivot;
    count -= 1;
  };
  for (const { times, columns } of runs) {
    const gram = whitenedSums(columns, times, memory);
    log += logDeterminant(times, memory);
    // Launch and constant force are each run's own: nothing is asked of them here.
    count += times.length;
    for (let j = 0; j < 5; j++) whole[j]! += gram[6 * j]!;
    for (const at of [0, 1]) remove(gram, at, gram[6 * at]!);
    for (let j = 0; j < 25; j++) total[j]! += gram[j]!;
  }
  for (const at of [2, 3]) remove(total, at, whole[at]!);
  const variance = total[24]! / count;
  return { variance, count, criterion: count * Math.log(variance) + log };
}

/** Longest memory looked at, as a share of the mean length of a run. */
const LONGEST = 1;

/**
 * Strength and memory of the noise by restricted maximum likelihood.
 *
 * The fit eats slow noise: residuals look whiter and smaller than the noise was. The restricted likelihood takes account of
 * what each run's launch speed and constant force and the law's shape have eaten.
 *
 * Source: Patterson and Thompson, Biometrika 58 (1971) 545; Ornstein-Uhlenbeck correlation exp(-|t - s|/memory), which is an
 * autoregression of first order at equal spacing and serves any spacing.
 *
 * @param runs of one design, their columns at the fit of the moment
 * @param options `white`: no memory
 * @returns the noise, with how many samples it rests on after what was fitted
 */
export function traceNoise(
  runs: readonly NoisyRun[],
  options: { readonly white?: boolean } = {},
): TraceNoise & { readonly free: number } {
  const spacing = runs.reduce(
    (least, { times }) => Math.min(least, (times.at(-1)! - times[0]!) / (times.length - 1)),
    Infinity,
  );
  const length = runs.reduce((sum, { times }) => sum + times.at(-1)! - times[0]!, 0) / runs.length;
  const white = restricted(runs, 0);
  const result = (memory: number, one: { variance: number; count: number }) => ({
    standardDeviation: Math.sqrt(Math.max(one.variance, 1e-18)),
    memory,
    free: one.count,
  });
  if (options.white === true || !(white.variance > 1e-18)) return result(0, white);
  // On the logarithm; below a fifth of the spacing the correlation is under 1 %.
  const low = Math.log(spacing / 5), high = Math.log(Math.max(LONGEST * length, 2 * spacing));
  const criterion = (log: number) => restricted(runs, Math.exp(log)).criterion;
  const looks = Array.from({ length: 9 }, (_, i) => low + (high - low) * i / 8);
  const values = looks.map(criterion);
  const best = values.indexOf(Math.min(...values));
  // To a hundredth of the memory or better: what the samples know of it is coarser by far.
  const { at } = minimumBetween(criterion, {
    low: looks[Math.max(0, best - 1)]!,
    high: looks[Math.min(8, best + 1)]!,
  }, { tolerance: 1e-3 });
  const found = restricted(runs, Math.exp(at));
  return white.criterion <= found.criterion ? result(0, white) : result(Math.exp(at), found);
}
