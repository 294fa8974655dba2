/**
 * The chi-square distribution: how far a sum of squared, weighted residuals may stray from its degrees of freedom.
 *
 * Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 26.4.19.
 *
 * @module
 */
import { gammaLower, gammaUpper } from "./incomplete-gamma.ts";
import { invertTail } from "./invert-tail.ts";
import { checkNumber, checkProbability } from "./normal-distribution.ts";

function checkDegrees(k: number): void {
  if (!(k > 0 && k < Infinity)) {
    throw new RangeError(
      `Cannot use chi-square as degrees of freedom must be positive and finite: ${k}`,
    );
  }
}

/**
 * Probability that chi-square is below a value.
 *
 * @param x the value, a sum of squares in units of their variance
 * @param degreesOfFreedom positive
 * @returns probability, 0 to 1
 * @throws RangeError when an argument makes no sense
 * @example
 * ```ts
 * import { chiSquareLowerTail } from "lakeproof/numeric/distributions.ts";
 * import { assertAlmostEqual } from "lakeproof/base/assert.ts";
 * assertAlmostEqual(chiSquareLowerTail(11.0705, 5), 0.95, 1e-5);
 * ```
 */
export function chiSquareLowerTail(x: number, degreesOfFreedom: number): number {
  checkNumber(x, "chi-square");
  checkDegrees(degreesOfFreedom);
  if (x <= 0) return 0;
  return x === Infinity ? 1 : gammaLower(x / 2, degreesOfFreedom / 2);
}

/**
 * Probability that chi-square is above a value: small means the scatter is larger than claimed.
 *
 * @param x the value, a sum of squares in units of their variance
 * @param degreesOfFreedom positive
 * @returns probability, 0 to 1
 * @throws RangeError when an argument makes no sense
 */
export function chiSquareUpperTail(x: number, degreesOfFreedom: number): number {
  checkNumber(x, "chi-square");
  checkDegrees(degreesOfFreedom);
  if (x <= 0) return 1;
  return x === Infinity ? 0 : gammaUpper(x / 2, degreesOfFreedom / 2);
}

/**
 * The value that chi-square stays below with probability `p`.
 *
 * @param p probability, strictly between 0 and 1
 * @param degreesOfFreedom positive
 * @returns chi-square
 * @throws RangeError when an argument makes no sense
 */
export function chiSquareQuantile(p: number, degreesOfFreedom: number): number {
  checkProbability(p);
  checkDegrees(degreesOfFreedom);
  return p < 0.5
    ? invertTail((x) => chiSquareLowerTail(x, degreesOfFreedom), p)
    : invertTail((x) => chiSquareUpperTail(x, degreesOfFreedom), 1 - p);
}
