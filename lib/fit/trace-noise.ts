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
  const [c0, c1, c2, c3, c4, c5] = columns;
  let s00 = 0, s01 = 0, s02 = 0, s03 = 0, s04 = 0, s05 = 0;
  let s11 = 0, s12 = 0, s13 = 0, s14 = 0, s15 = 0;
  let s22 = 0, s23 = 0, s24 = 0, s25 = 0;
  let s33 = 0, s34 = 0, s35 = 0;
  let s44 = 0, s45 = 0;
  let s55 = 0;
  let b0 = 0, b1 = 0, b2 = 0, b3 = 0, b4 = 0, b5 = 0;
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
    const v0 = c0[i]!, v1 = c1[i]!, v2 = c2[i]!, v3 = c3[i]!, v4 = c4[i]!, v5 = c5[i]!;
    const w0 = (v0 - kept * b0) * scale,
      w1 = (v1 - kept * b1) * scale,
      w2 = (v2 - kept * b2) * scale,
      w3 = (v3 - kept * b3) * scale,
      w4 = (v4 - kept * b4) * scale,
      w5 = (v5 - kept * b5) * scale;
    b0 = v0;
    b1 = v1;
    b2 = v2;
    b3 = v3;
    b4 = v4;
    b5 = v5;
    s00 += w0 * w0;
    s01 += w0 * w1;
    s02 += w0 * w2;
    s03 += w0 * w3;
    s04 += w0 * w4;
    s05 += w0 * w5;
    s11 += w1 * w1;
    s12 += w1 * w2;
    s13 += w1 * w3;
    s14 += w1 * w4;
    s15 += w1 * w5;
    s22 += w2 * w2;
    s23 += w2 * w3;
    s24 += w2 * w4;
    s25 += w2 * w5;
    s33 += w3 * w3;
    s34 += w3 * w4;
    s35 += w3 * w5;
    s44 += w4 * w4;
    s45 += w4 * w5;
    s55 += w5 * w5;
  }
  // deno-fmt-ignore
  return Float64Array.of(
    s00, s01, s02, s03, s04, s05,
    s01, s11, s12, s13, s14, s15,
    s02, s12, s22, s23, s24, s25,
    s03, s13, s23, s33, s34, s35,
    s04, s14, s24, s34, s44, s45,
    s05, s15, s25, s35, s45, s55,
  );
}

/**
 * The last of {@link whitenedSums}, that of the squared residuals, alone.
 *
 * @param residuals of a run, m/s
 * @param times of its samples, s
 * @param memory s in which the correlation falls to 1/e; 0 for white noise
 * @returns the sum of squares for noise of unit variance, m2/s2
 */
export function whitenedSquares(
  residuals: Float64Array,
  times: readonly number[],
  memory: number,
): number {
  let sum = 0, before = 0, spacing = 0, kept = 0, scale = 1;
  for (let i = 0; i < times.length; i++) {
    if (i > 0 && memory > 0) {
      const here = times[i]! - times[i - 1]!;
      if (Math.abs(here - spacing) > 1e-9 * here) {
        spacing = here;
        kept = Math.exp(-spacing / memory);
        scale = 1 / Math.sqrt(1 - kept * kept);
      }
    }
    const value = residuals[i]!;
    const white = (value - kept * before) * scale;
    before = value;
    sum += white * white;
  }
  return sum;
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
