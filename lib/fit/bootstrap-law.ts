/**
 * A law of three terms refitted to the same points drawn again and again with replacement.
 *
 * @module
 */
import { sampleQuantile } from "../infer/sample.ts";
import type { SeededRandom } from "../numeric/random.ts";
import { randomPlaces } from "../numeric/random-places.ts";
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

/** Numbers that stand for a point: six products of its terms, three with its observation. */
const SUMS = 9;

/** Points up to which sums of every two are tabulated: the table stays within 1 MB, near the processor. */
const MOST_IN_PAIRS = 120;

/**
 * Draws which points each refit takes.
 *
 * @param random stream
 * @param count points
 * @param resamples refits
 * @returns `count` places a refit, one refit after the other
 * @throws RangeError when a number is not a whole one above zero, or there are more than 65,536 points
 */
export function drawPlaces(random: SeededRandom, count: number, resamples: number): Int32Array {
  if (!(Number.isInteger(count) && count > 0 && Number.isInteger(resamples) && resamples > 0)) {
    throw new RangeError(
      `Cannot draw places as counts must be whole and above zero: ${count}, ${resamples}`,
    );
  }
  return randomPlaces(random, count, count * resamples);
}

/**
 * Refits a law by weighted least squares to resampled points.
 *
 * The bootstrap asks what the fit would have been had the same tow been made again, taking the points themselves as the
 * world. It holds what scatters from point to point, whatever its shape; it does not hold what all points share. Few points
 * make it too sure of itself: 20 and more are wanted.
 *
 * A refit needs of each point nine products, summed over the points drawn, then three equations. Points are taken two at a
 * time from a table of the sums of every two.
 *
 * Source: Efron, Annals of Statistics 7 (1979) 1, pairs bootstrap with percentile interval; from memory.
 *
 * @param points with their terms and weights
 * @param places which points each refit takes, from {@link drawPlaces}
 * @returns parameters, standard errors and intervals, or `null` where the points can't tell the terms apart
 * @throws RangeError when there are fewer than four points, places do not fill whole refits, or a number is not finite
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
  const all = new Float64Array(3), found = new Float64Array(3);
  if (!refit(sums, Int32Array.from({ length: count }, (_, i) => SUMS * i), all)) return null;
  if (!all.every(Number.isFinite)) {
    throw new RangeError("Cannot refit as a term, weight or observation is not finite");
  }
  const pairs = count <= MOST_IN_PAIRS;
  const table = pairs ? sumsOfPairs(sums) : sums;
  const rows = new Int32Array(pairs ? (count + 1) >> 1 : count);
  const values = [0, 1, 2].map(() => new Float64Array(resamples));
  const [first, second, third] = values as [Float64Array, Float64Array, Float64Array];
  let used = 0;
  for (let b = 0; b < resamples; b++) {
    if (pairs) rowsOfPairs(places, b * count, count, rows);
    else rowsOfPoints(places, b * count, rows);
    if (!refit(table, rows, found)) continue;
    first[used] = found[0]!;
    second[used] = found[1]!;
    third[used] = found[2]!;
    used++;
  }
  if (used < 2) return null;
  const parts = values.map((one) => one.subarray(0, used));
  const errors = parts.map(scatter);
  const ordered = parts.map((one, j) => tailsInOrder(one, errors[j]!));
  const each = (value: (part: number) => number): Three => [value(0), value(1), value(2)];
  return {
    parameters: [all[0]!, all[1]!, all[2]!],
    standardErrors: each((j) => errors[j]!.standardDeviation),
    low: each((j) => sampleQuantile(ordered[j]!, TAIL)),
    high: each((j) => sampleQuantile(ordered[j]!, 1 - TAIL)),
    used,
  };
}

/** Share below the interval, and above it. */
const TAIL = 0.025;

/** Products of terms, weights and observations, nine numbers a point. */
function momentsOf({ terms, observed, weights }: LawPoints): Float64Array {
  const sums = new Float64Array(SUMS * terms.length);
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
    ], SUMS * i);
  });
  return sums;
}

/** Row `i count + j` holds the sums of points `i` and `j`; after all of these come the points alone. */
function sumsOfPairs(sums: Float64Array): Float64Array {
  const size = sums.length;
  const table = new Float64Array(size * size / SUMS + size);
  for (let i = 0, at = 0; i < size; i += SUMS) {
    for (let j = 0; j < size; j += SUMS, at += SUMS) addRows(sums, i, j, table, at);
  }
  table.set(sums, size * size / SUMS);
  return table;
}

function addRows(sums: Float64Array, i: number, j: number, table: Float64Array, at: number): void {
  for (let k = 0; k < SUMS; k++) table[at + k] = sums[i + k]! + sums[j + k]!;
}

/** Where the table holds what one refit takes, two points at a time; an odd one comes last, alone. */
function rowsOfPairs(places: Int32Array, from: number, count: number, rows: Int32Array): void {
  const pairs = count >> 1;
  for (let i = 0, k = from; i < pairs; i++, k += 2) {
    rows[i] = SUMS * (places[k]! * count + places[k + 1]!);
  }
  if (rows.length > pairs) rows[pairs] = SUMS * (count * count + places[from + count - 1]!);
}

function rowsOfPoints(places: Int32Array, from: number, rows: Int32Array): void {
  for (let i = 0; i < rows.length; i++) rows[i] = SUMS * places[from + i]!;
}

/** The parameters of one refit; false where its points can't tell the terms apart. */
function refit(table: Float64Array, rows: Int32Array, out: Float64Array): boolean {
  let a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, u = 0, v = 0, w = 0;
  for (let i = 0; i < rows.length; i++) {
    const k = rows[i]!;
    a += table[k]!;
    b += table[k + 1]!;
    c += table[k + 2]!;
    d += table[k + 3]!;
    e += table[k + 4]!;
    f += table[k + 5]!;
    u += table[k + 6]!;
    v += table[k + 7]!;
    w += table[k + 8]!;
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

interface Scatter {
  readonly mean: number;
  readonly standardDeviation: number;
}

function scatter(values: Float64Array): Scatter {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i]!;
  const mean = sum / values.length;
  let square = 0;
  for (let i = 0; i < values.length; i++) square += (values[i]! - mean) ** 2;
  return { mean, standardDeviation: Math.sqrt(square / (values.length - 1)) };
}

/** Standard deviations from the mean beyond which values are sorted: 7 % on each side of a normal scatter. */
const SORTED_BEYOND = 1.5;

/** The values with their tails in increasing order, as far as the interval asks; all of them where the tails are short. */
function tailsInOrder(values: Float64Array, { mean, standardDeviation }: Scatter): Float64Array {
  const count = values.length;
  const [low, high] = [
    mean - SORTED_BEYOND * standardDeviation,
    mean + SORTED_BEYOND * standardDeviation,
  ];
  const sorted = new Float64Array(count);
  let below = 0, above = count;
  for (let i = 0; i < count; i++) {
    const value = values[i]!;
    if (value < low) sorted[below++] = value;
    else if (value > high) sorted[--above] = value;
  }
  // Both ranks that a quantile lies between.
  const needed = TAIL * (count - 1) + 2;
  if (below < needed || count - above < needed) return values.slice().sort();
  sorted.subarray(0, below).sort();
  sorted.subarray(above).sort();
  return sorted;
}
