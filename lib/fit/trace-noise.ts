/**
 * Noise of a speed trace that remembers itself: whitened sums, and how strong and how lasting it is.
 *
 * @module
 */
import { minimumBetween } from "../numeric/minimum.ts";

/** Columns of one run: launch, offset, first, third, steepening, and its residuals; one entry a sample each. */
export type TraceColumns = readonly [
  Float64Array,
  Float64Array,
  Float64Array,
  Float64Array,
  Float64Array,
  Float64Array,
];

/** How many columns there are, and the place of the residuals. */
export const TRACE_COLUMNS = 6, RESIDUAL = 5;

const N = TRACE_COLUMNS;

/** Symmetric sums of products of whitened columns, by rows. */
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
  const gram = new Float64Array(N * N);
  const before = new Float64Array(N), here = new Float64Array(N);
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
    for (let j = 0; j < N; j++) {
      const value = columns[j]![i]!;
      here[j] = (value - kept * before[j]!) * scale;
      before[j] = value;
    }
    for (let j = 0; j < N; j++) {
      const one = here[j]!;
      for (let k = j; k < N; k++) gram[N * j + k]! += one * here[k]!;
    }
  }
  for (let j = 0; j < N; j++) for (let k = 0; k < j; k++) gram[N * j + k] = gram[N * k + j]!;
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
  const pivot = gram[(N + 1) * at]!;
  if (!(pivot > NOTHING_LEFT * whole)) {
    for (let j = 0; j < N; j++) gram[N * j + at] = gram[N * at + j] = 0;
    return null;
  }
  for (let j = 0; j < N; j++) {
    if (j === at) continue;
    const share = gram[N * j + at]! / pivot;
    for (let k = 0; k < N; k++) {
      if (k !== at) gram[N * j + k]! -= share * gram[N * at + k]!;
    }
  }
  return Math.log(pivot);
}

/** Minus twice the restricted log likelihood at a memory, and the variance that belongs to it. */
function restricted(runs: readonly NoisyRun[], memory: number) {
  const total = new Float64Array(N * N);
  const whole = new Float64Array(N);
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
    for (let j = 0; j < N; j++) whole[j]! += gram[(N + 1) * j]!;
    for (const at of [0, 1]) remove(gram, at, gram[(N + 1) * at]!);
    for (let j = 0; j < N * N; j++) total[j]! += gram[j]!;
  }
  for (const at of [2, 3, 4]) remove(total, at, whole[at]!);
  const variance = total[N * N - 1]! / count;
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
