/**
 * The normal distribution: errors that are the sum of many small ones.
 *
 * Both tails are computed as such, never as one minus the other, so that a small probability keeps all its digits.
 *
 * Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 26.2.29; complementary error function of stdlib.
 *
 * @module
 */
import erfc from "@stdlib/math-base-special-erfc";
import erfcinv from "@stdlib/math-base-special-erfcinv";

/**
 * Throws unless `p` is a probability strictly between 0 and 1.
 *
 * @param p a probability
 * @throws RangeError otherwise
 */
export function checkProbability(p: number): void {
  if (!(p > 0 && p < 1)) {
    throw new RangeError(`Cannot compute a quantile as it needs a probability in (0, 1): ${p}`);
  }
}

/**
 * Throws unless `value` is a number (infinite ones allowed).
 *
 * @param value the number
 * @param what what it is, for the message
 * @throws RangeError otherwise
 */
export function checkNumber(value: number, what: string): void {
  if (Number.isNaN(value)) {
    throw new RangeError(`Cannot compute a probability as ${what} is not a number`);
  }
}

/**
 * Probability that a standard normal deviate is below `z`.
 *
 * @param z in standard deviations
 * @returns probability, 0 to 1
 * @throws RangeError when `z` is not a number
 * @example
 * ```ts
 * import { normalLowerTail } from "lakeproof/numeric/distributions.ts";
 * import { assertAlmostEqual } from "lakeproof/base/assert.ts";
 * assertAlmostEqual(normalLowerTail(1.96), 0.975002, 1e-6);
 * ```
 */
export function normalLowerTail(z: number): number {
  checkNumber(z, "z");
  return erfc(-z / Math.SQRT2) / 2;
}

/**
 * Probability that a standard normal deviate is above `z`.
 *
 * @param z in standard deviations
 * @returns probability, 0 to 1
 * @throws RangeError when `z` is not a number
 * @example
 * ```ts
 * import { normalUpperTail } from "lakeproof/numeric/distributions.ts";
 * import { assertAlmostEqual } from "lakeproof/base/assert.ts";
 * assertAlmostEqual(normalUpperTail(10) / 7.619853024160526e-24, 1, 1e-12);
 * ```
 */
export function normalUpperTail(z: number): number {
  checkNumber(z, "z");
  return erfc(z / Math.SQRT2) / 2;
}

/**
 * The deviate that a standard normal stays below with probability `p`.
 *
 * @param p probability, strictly between 0 and 1
 * @returns deviate in standard deviations
 * @throws RangeError when `p` is outside (0, 1)
 * @example
 * ```ts
 * import { normalQuantile } from "lakeproof/numeric/distributions.ts";
 * import { assertAlmostEqual } from "lakeproof/base/assert.ts";
 * assertAlmostEqual(normalQuantile(0.975), 1.959964, 1e-6);
 * ```
 */
export function normalQuantile(p: number): number {
  checkProbability(p);
  return -Math.SQRT2 * erfcinv(2 * p);
}

/**
 * Probability density of a standard normal deviate.
 *
 * @param z in standard deviations
 * @returns density per standard deviation
 */
export function normalDensity(z: number): number {
  return Math.exp(-z * z / 2) / Math.sqrt(2 * Math.PI);
}
