/**
 * Student's t distribution: how far a mean of few runs may stray, in units of its own estimated error.
 *
 * Infinite degrees of freedom give the normal distribution. Degrees of freedom need not be whole (Welch).
 *
 * Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 26.7.1 with 26.5.27.
 *
 * @module
 */
import betainc from "@stdlib/math-base-special-betainc";
import { invertTail } from "./invert-tail.ts";
import {
  checkNumber,
  checkProbability,
  normalLowerTail,
  normalQuantile,
} from "./normal-distribution.ts";

function checkDegrees(n: number): void {
  if (!(n > 0)) {
    throw new RangeError(`Cannot use Student's t as degrees of freedom must be positive: ${n}`);
  }
}

/** Probability beyond x >= 0 on one side. */
function outside(x: number, n: number): number {
  if (x === Infinity) return 0;
  const square = x * x;
  // One form alone loses digits where the other keeps them.
  return square < n
    ? betainc(square / (n + square), 0.5, n / 2, true, true) / 2
    : betainc(n / (n + square), n / 2, 0.5) / 2;
}

/**
 * Probability that t is below a value.
 *
 * @param t the value, in estimated standard errors
 * @param degreesOfFreedom positive, may be infinite
 * @returns probability, 0 to 1
 * @throws RangeError when an argument makes no sense
 * @example Student's sleep data: two-sided probability
 * ```ts
 * import { studentTLowerTail } from "lakeproof/numeric/distributions.ts";
 * import { assertAlmostEqual } from "lakeproof/base/assert.ts";
 * assertAlmostEqual(2 * studentTLowerTail(-4.0621, 9), 0.00283, 1e-5);
 * ```
 */
export function studentTLowerTail(t: number, degreesOfFreedom: number): number {
  checkNumber(t, "t");
  checkDegrees(degreesOfFreedom);
  if (degreesOfFreedom === Infinity) return normalLowerTail(t);
  return t < 0 ? outside(-t, degreesOfFreedom) : 1 - outside(t, degreesOfFreedom);
}

/**
 * Probability that t is above a value, with all digits where it is small.
 *
 * @param t the value, in estimated standard errors
 * @param degreesOfFreedom positive, may be infinite
 * @returns probability, 0 to 1
 * @throws RangeError when an argument makes no sense
 */
export function studentTUpperTail(t: number, degreesOfFreedom: number): number {
  return studentTLowerTail(-t, degreesOfFreedom);
}

/**
 * The value that t stays below with probability `p`.
 *
 * @param p probability, strictly between 0 and 1
 * @param degreesOfFreedom positive, may be infinite
 * @returns t
 * @throws RangeError when an argument makes no sense
 * @example The factor for a 95 % interval from six runs
 * ```ts
 * import { studentTQuantile } from "lakeproof/numeric/distributions.ts";
 * import { assertAlmostEqual } from "lakeproof/base/assert.ts";
 * assertAlmostEqual(studentTQuantile(0.975, 5), 2.571, 5e-4);
 * ```
 */
export function studentTQuantile(p: number, degreesOfFreedom: number): number {
  checkProbability(p);
  checkDegrees(degreesOfFreedom);
  if (degreesOfFreedom === Infinity) return normalQuantile(p);
  if (p === 0.5) return 0;
  const n = degreesOfFreedom;
  const side = p < 0.5 ? -1 : 1;
  const tail = p < 0.5 ? p : 1 - p;
  // Near the middle the central probability keeps the digits; further out the tail does.
  if (tail > 0.25) {
    const within = 2 * Math.abs(p - 0.5);
    return side * invertTail((x) => betainc(x * x / (n + x * x), 0.5, n / 2), within);
  }
  return side * invertTail((x) => outside(x, n), tail);
}
