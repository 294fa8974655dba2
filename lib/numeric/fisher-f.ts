/**
 * Fisher's F distribution: the ratio of two estimates of the same variance.
 *
 * Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 26.6.2; incomplete beta function of stdlib.
 *
 * @module
 */
import betainc from "@stdlib/math-base-special-betainc";
import { invertTail } from "./invert-tail.ts";
import { checkNumber, checkProbability } from "./normal-distribution.ts";

/** Degrees of freedom of the two variances. */
export interface FisherFDegrees {
  readonly numerator: number;
  readonly denominator: number;
}

function checkDegrees({ numerator, denominator }: FisherFDegrees): void {
  if (!(numerator > 0 && numerator < Infinity && denominator > 0 && denominator < Infinity)) {
    throw new RangeError(
      `Cannot use F as degrees of freedom must be positive and finite: ${numerator} and ${denominator}`,
    );
  }
}

/**
 * Probability that F is below a value.
 *
 * @param f the ratio of variances
 * @param degrees degrees of freedom of numerator and denominator
 * @returns probability, 0 to 1
 * @throws RangeError when an argument makes no sense
 * @example
 * ```ts
 * import { fisherFLowerTail } from "lakeproof/numeric/distributions.ts";
 * import { assertAlmostEqual } from "lakeproof/base/assert.ts";
 * assertAlmostEqual(fisherFLowerTail(1, { numerator: 4, denominator: 4 }), 0.5, 1e-14);
 * ```
 */
export function fisherFLowerTail(f: number, degrees: FisherFDegrees): number {
  checkNumber(f, "F");
  checkDegrees(degrees);
  const { numerator: a, denominator: b } = degrees;
  if (f <= 0) return 0;
  return f === Infinity ? 1 : betainc(a * f / (a * f + b), a / 2, b / 2);
}

/**
 * Probability that F is above a value.
 *
 * @param f the ratio of variances
 * @param degrees degrees of freedom of numerator and denominator
 * @returns probability, 0 to 1
 * @throws RangeError when an argument makes no sense
 */
export function fisherFUpperTail(f: number, degrees: FisherFDegrees): number {
  checkNumber(f, "F");
  checkDegrees(degrees);
  const { numerator: a, denominator: b } = degrees;
  if (f <= 0) return 1;
  return f === Infinity ? 0 : betainc(b / (a * f + b), b / 2, a / 2);
}

/**
 * The value that F stays below with probability `p`.
 *
 * @param p probability, strictly between 0 and 1
 * @param degrees degrees of freedom of numerator and denominator
 * @returns the ratio of variances
 * @throws RangeError when an argument makes no sense
 */
export function fisherFQuantile(p: number, degrees: FisherFDegrees): number {
  checkProbability(p);
  checkDegrees(degrees);
  return p < 0.5
    ? invertTail((x) => fisherFLowerTail(x, degrees), p)
    : invertTail((x) => fisherFUpperTail(x, degrees), 1 - p);
}
