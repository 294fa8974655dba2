/**
 * Whether two measurements of one thing agree, and the two as one.
 *
 * @module
 */
import { studentTQuantile } from "../numeric/distributions.ts";

/** A measured value; `null` stands for unlimited degrees of freedom. */
export interface MeasuredValue {
  readonly value: number;
  readonly variance: number;
  readonly degreesOfFreedom: number | null;
}

const reach = (one: MeasuredValue) =>
  studentTQuantile(0.975, one.degreesOfFreedom ?? Infinity) * Math.sqrt(one.variance);

/**
 * Difference of two measurements over the 95 % uncertainty of that difference: agrees while it is within 1 either way.
 *
 * Each uncertainty is widened by its own Student's t before the two are joined, so that a value known from few readings is
 * not taken for more than it is; what both share (the same scale weighed both) cancels. "Agrees" is weak evidence: of two
 * values that truly differ by two standard uncertainties every other pair agrees.
 *
 * Source: normalised error E_n of ISO 13528 (from memory), with a covariance; size 3 to 4 % in our own simulation with t.
 *
 * @param one a measurement
 * @param other another of the same thing
 * @param covariance of the two
 * @returns signed, 1
 * @throws RangeError when nothing is left of the uncertainty
 *
 * @example Two values 3 apart, each good to 1.96 times 1 and 1.96 times 2
 * ```ts
 * import { normalisedError } from "lakeproof/infer/agreement.ts";
 * const known = { degreesOfFreedom: null };
 * const en = normalisedError({ value: 13, variance: 1, ...known }, { value: 10, variance: 4, ...known }, 0);
 * if (Math.abs(en - 3 / (1.959964 * Math.sqrt(5))) > 1e-6) throw new Error(`${en}`);
 * ```
 */
export function normalisedError(
  one: MeasuredValue,
  other: MeasuredValue,
  covariance: number,
): number {
  const [a, b] = [reach(one), reach(other)];
  // The shared part is widened by both factors.
  const shared = covariance * a * b / Math.sqrt(one.variance * other.variance);
  const square = a * a + b * b - 2 * shared;
  if (!(square > 0)) {
    throw new RangeError("Cannot compare two values as their difference has no uncertainty");
  }
  return (one.value - other.value) / Math.sqrt(square);
}

/**
 * Two measurements of one thing as one: weights by least squares, widened where they lie further apart than they should.
 *
 * Only for values that agree. A weight is never negative: a value that shares nearly all its errors with the better one
 * adds nothing to it.
 *
 * Source: generalised least squares of two correlated values; Birge, Physical Review 40 (1932) 207, for the widening.
 *
 * @param one a measurement
 * @param other another of the same thing
 * @param covariance of the two
 * @returns value, variance, degrees of freedom by Welch and Satterthwaite
 *
 * @example Independent and as far apart as their uncertainty: the mean by inverse variance
 * ```ts
 * import { combinedValue } from "lakeproof/infer/agreement.ts";
 * const known = { degreesOfFreedom: null };
 * const both = combinedValue({ value: 10, variance: 1, ...known }, { value: 11, variance: 4, ...known }, 0);
 * if (Math.abs(both.value - 10.2) + Math.abs(both.variance - 0.8) > 1e-12) throw new Error("wrong");
 * ```
 */
export function combinedValue(
  one: MeasuredValue,
  other: MeasuredValue,
  covariance: number,
): MeasuredValue {
  const apart = one.variance + other.variance - 2 * covariance;
  const weight = Math.min(1, Math.max(0, (other.variance - covariance) / apart));
  const rest = 1 - weight;
  const birge = Math.max(1, (one.value - other.value) ** 2 / apart);
  const variance = birge * (weight ** 2 * one.variance + rest ** 2 * other.variance +
    2 * weight * rest * covariance);
  const share = (part: MeasuredValue, factor: number) =>
    part.degreesOfFreedom === null
      ? 0
      : (birge * factor ** 2 * part.variance) ** 2 / part.degreesOfFreedom;
  const fourth = share(one, weight) + share(other, rest);
  return {
    value: weight * one.value + rest * other.value,
    variance,
    degreesOfFreedom: fourth === 0 ? null : variance ** 2 / fourth,
  };
}
