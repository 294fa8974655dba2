/**
 * Two designs, a handful of runs each, scatters that need not be alike: how far apart are the means?
 *
 * @module
 */
import type { Quantity } from "../base/quantity.ts";
import { studentTUpperTail } from "../numeric/distributions.ts";
import { type IntervalOptions, studentInterval } from "./mean-interval.ts";
import { checkSample, meanOf, varianceOf } from "./sample.ts";

/** The difference of two means. */
export interface MeanDifference {
  /** Candidate less baseline, with its t interval. */
  readonly difference: Quantity;
  /** Difference in standard errors. */
  readonly t: number;
  readonly degreesOfFreedom: number;
  /** Two-sided: how often chance alone would do at least as much, were the means equal. */
  readonly pValue: number;
}

/**
 * Welch's comparison of two means without assuming equal scatter.
 *
 * The rival (pooled variances, "Student's two-sample t") is wrong where the scatters differ and the numbers of runs do
 * too. Degrees of freedom by Welch and Satterthwaite, not whole in general.
 *
 * Source: Welch, Biometrika 34 (1947) 28; Satterthwaite, Biometrics Bulletin 2 (1946) 110.
 *
 * @param samples readings of baseline and candidate, two or more each, in the same SI unit
 * @param options level and unit
 * @returns difference of means with interval, t, degrees of freedom and two-sided p-value
 * @throws RangeError when a side has fewer than two readings, or neither side scatters at all
 * @example
 * ```ts
 * import { welchComparison } from "lakeproof/infer/welch.ts";
 * import { assertAlmostEqual } from "lakeproof/base/assert.ts";
 * const { difference, pValue } = welchComparison({ baseline: [40, 42, 44], candidate: [47, 50, 53] });
 * assertAlmostEqual(difference.value, 8, 1e-12);
 * assertAlmostEqual(pValue, 0.0237, 0.0005);
 * ```
 */
export function welchComparison(
  samples: { readonly baseline: readonly number[]; readonly candidate: readonly number[] },
  options: IntervalOptions = {},
): MeanDifference {
  const { baseline, candidate } = samples;
  checkSample(baseline, 2, "readings of the baseline");
  checkSample(candidate, 2, "readings of the candidate");
  const fromBaseline = varianceOf(baseline) / baseline.length;
  const fromCandidate = varianceOf(candidate) / candidate.length;
  const variance = fromBaseline + fromCandidate;
  if (variance === 0) {
    throw new RangeError("Cannot compare two means as neither side scatters: all readings alike");
  }
  const degreesOfFreedom = variance ** 2 /
    (fromBaseline ** 2 / (baseline.length - 1) + fromCandidate ** 2 / (candidate.length - 1));
  const value = meanOf(candidate) - meanOf(baseline);
  const standardUncertainty = Math.sqrt(variance);
  const t = value / standardUncertainty;
  return {
    difference: studentInterval({ value, standardUncertainty, degreesOfFreedom }, options),
    t,
    degreesOfFreedom,
    pValue: 2 * studentTUpperTail(Math.abs(t), degreesOfFreedom),
  };
}
