/**
 * Plain summaries of a handful of numbers, with the checks that keep NaN out.
 *
 * @module
 */

/**
 * Throws unless there are enough numbers and all are finite.
 *
 * @param values the numbers
 * @param least how many are needed
 * @param what what they are, for the message
 * @throws RangeError otherwise
 */
export function checkSample(values: readonly number[], least: number, what = "values"): void {
  if (values.length < least) {
    throw new RangeError(`Cannot go on as at least ${least} ${what} are needed: ${values.length}`);
  }
  const bad = values.findIndex((value) => !Number.isFinite(value));
  if (bad >= 0) {
    throw new RangeError(
      `Cannot go on as ${what} must be finite numbers: number ${bad + 1} is ${values[bad]}`,
    );
  }
}

/**
 * The arithmetic mean, summed about the first value so that a large common offset costs no digits.
 *
 * @param values one or more numbers
 * @returns mean, in their unit
 * @throws RangeError when there is none, or one is not finite
 * @example
 * ```ts
 * import { meanOf } from "lakeproof/infer/sample.ts";
 * if (meanOf([1e9 + 1, 1e9 + 2, 1e9 + 3]) !== 1e9 + 2) throw new Error("digits lost");
 * ```
 */
export function meanOf(values: readonly number[]): number {
  checkSample(values, 1);
  const first = values[0]!;
  let sum = 0;
  for (const value of values) sum += value - first;
  return first + sum / values.length;
}

/**
 * The sample variance with n - 1 in the denominator, by the two-pass formula.
 *
 * @param values two or more numbers
 * @returns variance, in their unit squared
 * @throws RangeError when there are fewer, or one is not finite
 */
export function varianceOf(values: readonly number[]): number {
  checkSample(values, 2);
  const mean = meanOf(values);
  let sum = 0;
  for (const value of values) sum += (value - mean) ** 2;
  return sum / (values.length - 1);
}

/**
 * The sample covariance of pairs, with n - 1 in the denominator.
 *
 * @param x two or more numbers
 * @param y as many numbers
 * @returns covariance, in the product of the units
 * @throws RangeError when there are fewer, or not as many of both
 */
export function covarianceOf(x: readonly number[], y: readonly number[]): number {
  checkSample(x, 2);
  checkSample(y, 2);
  if (x.length !== y.length) {
    throw new RangeError(
      `Cannot take a covariance as the lists must be as long: ${x.length}, ${y.length}`,
    );
  }
  const [mx, my] = [meanOf(x), meanOf(y)];
  let sum = 0;
  for (let i = 0; i < x.length; i++) sum += (x[i]! - mx) * (y[i]! - my);
  return sum / (x.length - 1);
}

/**
 * The value below which a share of a sorted sample lies, with straight lines between the order statistics.
 *
 * The rival definitions differ for small samples; this is number 7 of Hyndman and Fan 1996, the default of most programs.
 *
 * @param sorted numbers in increasing order, one or more
 * @param share 0 to 1
 * @returns quantile, in the unit of the numbers
 * @throws RangeError when there is none, or the share is outside
 */
export function sampleQuantile(sorted: ArrayLike<number>, share: number): number {
  if (sorted.length === 0 || !(share >= 0 && share <= 1)) {
    throw new RangeError(
      `Cannot take a quantile as it needs values and a share in 0 to 1: ${sorted.length}, ${share}`,
    );
  }
  const at = share * (sorted.length - 1);
  const below = Math.floor(at);
  const lower = sorted[below]!;
  const upper = sorted[Math.min(below + 1, sorted.length - 1)]!;
  return lower + (at - below) * (upper - lower);
}

/**
 * Throws unless a coverage is strictly between 0 and 1.
 *
 * @param level coverage of an interval, 0 to 1
 * @throws RangeError otherwise
 */
export function checkLevel(level: number): void {
  if (!(level > 0 && level < 1)) {
    throw new RangeError(`Cannot make an interval as its level must be in (0, 1): ${level}`);
  }
}
