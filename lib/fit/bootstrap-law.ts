/**
 * A law of three terms refitted to the same points drawn again and again with replacement.
 *
 * @module
 */
import { sampleQuantile } from "../infer/sample.ts";
import type { SeededRandom } from "../numeric/random.ts";
import type { Three } from "./symmetric-three.ts";

/** Points of a law that is linear in its three parameters. */
export interface LawPoints {
  /** One entry a point: what each parameter is multiplied by. */
  readonly terms: readonly Three[];
  readonly observed: readonly number[];
  /** One over the variance of each point, up to a common factor. */
  readonly weights: readonly number[];
}

/** What refits scatter by. */
export interface BootstrapLaw {
  /** Of all points once. */
  readonly parameters: Three;
  /** Standard deviation over the refits. */
  readonly standardErrors: Three;
  /** Percentile interval at 95 %. */
  readonly low: Three;
  readonly high: Three;
  /** Refits whose points could tell the three terms apart. */
  readonly used: number;
}

/** A determinant of the matrix scaled to unit diagonal under which three terms can't be told apart. */
const SINGULAR = 1e-14;

/**
 * Draws which points each refit takes.
 *
 * @param random stream
 * @param count points
 * @param resamples refits
 * @returns `count` places a refit, one refit after the other
 * @throws RangeError when a number is not a whole one above zero
 */
export function drawPlaces(random: SeededRandom, count: number, resamples: number): Int32Array {
  if (!(Number.isInteger(count) && count > 0 && Number.isInteger(resamples) && resamples > 0)) {
    throw new RangeError(
      `Cannot draw places as counts must be whole and above zero: ${count}, ${resamples}`,
    );
  }
  const places = new Int32Array(count * resamples);
  for (let i = 0; i < places.length; i++) places[i] = Math.floor(random.uniform() * count);
  return places;
}

/**
 * Refits a law by weighted least squares to resampled points.
 *
 * The bootstrap asks what the fit would have been had the same tow been made again, taking the points themselves as the
 * world. It holds what scatters from point to point, whatever its shape; it does not hold what all points share. Few points
 * make it too sure of itself: 20 and more are wanted.
 *
 * A refit needs no points, only how often each was drawn: nine sums of products, then three equations.
 *
 * Source: Efron, Annals of Statistics 7 (1979) 1, pairs bootstrap with percentile interval; from memory.
 *
 * @param points with their terms and weights
 * @param places which points each refit takes, from {@link drawPlaces}
 * @returns parameters, standard errors and intervals, or `null` where the points can't tell the terms apart
 * @throws RangeError when there are fewer than four points, or places do not fill whole refits
 *
 * @example
 * ```ts
 * import { bootstrapLaw, drawPlaces } from "lakeproof/fit/bootstrap-law.ts";
 * import { seededRandom } from "lakeproof/numeric/random.ts";
 *
 * const speeds = Array.from({ length: 24 }, (_, i) => 3.6 + 0.15 * i);
 * const random = seededRandom("bootstrap of a tow");
 * const found = bootstrapLaw({
 *   terms: speeds.map((v) => [v * v, 1, 1 / (v * v)]),
 *   observed: speeds.map((v) => 1.5 * v * v - 5 + 600 / (v * v) + random.normal()),
 *   weights: speeds.map(() => 1),
 * }, drawPlaces(random, 24, 2000))!;
 * if (!(found.low[0] < 1.5 && found.high[0] > 1.5)) throw new Error("the true constant lies inside");
 * ```
 */
export function bootstrapLaw(points: LawPoints, places: Int32Array): BootstrapLaw | null {
  const count = points.terms.length;
  const resamples = places.length / count;
  if (count < 4 || !Number.isInteger(resamples) || resamples < 2) {
    throw new RangeError(
      `Cannot refit as four points and whole refits are needed: ${count} points, ${places.length} places`,
    );
  }
  const sums = momentsOf(points);
  const all = new Float64Array(3);
  const once = new Float64Array(count).fill(1);
  if (!refit(sums, once, all)) return null;
  const values = [0, 1, 2].map(() => new Float64Array(resamples));
  const times = new Float64Array(count), found = new Float64Array(3);
  let used = 0;
  for (let b = 0; b < resamples; b++) {
    countPlaces(places, b * count, times);
    if (!refit(sums, times, found)) continue;
    for (let j = 0; j < 3; j++) values[j]![used] = found[j]!;
    used++;
  }
  if (used < 2) return null;
  const parts = values.map((one) => one.subarray(0, used).sort());
  const each = (value: (sorted: Float64Array) => number): Three => [
    value(parts[0]!),
    value(parts[1]!),
    value(parts[2]!),
  ];
  return {
    parameters: [all[0]!, all[1]!, all[2]!],
    standardErrors: each(standardDeviation),
    low: each((sorted) => sampleQuantile(sorted, 0.025)),
    high: each((sorted) => sampleQuantile(sorted, 0.975)),
    used,
  };
}

/** Products of terms, weights and observations, nine numbers a point. */
function momentsOf({ terms, observed, weights }: LawPoints): Float64Array {
  const sums = new Float64Array(9 * terms.length);
  terms.forEach(([x0, x1, x2], i) => {
    const w = weights[i]!, y = observed[i]!;
    sums.set([
      w * x0 * x0,
      w * x0 * x1,
      w * x0 * x2,
      w * x1 * x1,
      w * x1 * x2,
      w * x2 * x2,
      w * x0 * y,
      w * x1 * y,
      w * x2 * y,
    ], 9 * i);
  });
  return sums;
}

/** How often each point was drawn. */
function countPlaces(places: Int32Array, from: number, times: Float64Array): void {
  times.fill(0);
  const count = times.length;
  for (let i = 0; i < count; i++) times[places[from + i]!]!++;
}

/** The parameters of one refit; false where its points can't tell the terms apart. */
function refit(sums: Float64Array, times: Float64Array, out: Float64Array): boolean {
  let a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, u = 0, v = 0, w = 0;
  for (let i = 0, k = 0; i < times.length; i++, k += 9) {
    const n = times[i]!;
    a += n * sums[k]!;
    b += n * sums[k + 1]!;
    c += n * sums[k + 2]!;
    d += n * sums[k + 3]!;
    e += n * sums[k + 4]!;
    f += n * sums[k + 5]!;
    u += n * sums[k + 6]!;
    v += n * sums[k + 7]!;
    w += n * sums[k + 8]!;
  }
  // Cofactors of [[a b c] [b d e] [c e f]].
  const p = d * f - e * e, q = c * e - b * f, r = b * e - c * d;
  const determinant = a * p + b * q + c * r;
  if (!(determinant > SINGULAR * a * d * f)) return false;
  const s = a * f - c * c, t = b * c - a * e, z = a * d - b * b;
  out[0] = (p * u + q * v + r * w) / determinant;
  out[1] = (q * u + s * v + t * w) / determinant;
  out[2] = (r * u + t * v + z * w) / determinant;
  return true;
}

function standardDeviation(values: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i]!;
  const mean = sum / values.length;
  let square = 0;
  for (let i = 0; i < values.length; i++) square += (values[i]! - mean) ** 2;
  return Math.sqrt(square / (values.length - 1));
}
