/**
 * Leave out one run at a time: what each run does to the result, and the uncertainty that follows.
 *
 * @module
 */

/** What leaving out one item at a time shows. */
export interface Jackknife {
  /** The statistic of all items. */
  readonly estimate: number;
  /** The statistic without each item in turn. */
  readonly leftOut: readonly number[];
  /** n * estimate - (n - 1) * leftOut: each item's own share, as if it were a reading of the result. */
  readonly pseudoValues: readonly number[];
  /** The estimate less its estimated bias is the mean of the pseudo-values. */
  readonly bias: number;
  readonly standardError: number;
}

/**
 * The jackknife of any smooth statistic.
 *
 * For the mean it gives exactly the usual standard error. It fails for medians and other statistics that jump; the
 * bootstrap does not.
 *
 * Source: Efron and Tibshirani, An Introduction to the Bootstrap, 1993, equations 11.4 to 11.6; Tukey 1958.
 *
 * @param items the runs, two or more
 * @param statistic computes the result from any subset with one left out
 * @returns estimate, the values with each left out, pseudo-values, bias and standard error
 * @throws RangeError when there are fewer than two items, or the statistic is not finite for some subset
 * @example The mean of four readings
 * ```ts
 * import { jackknife } from "lakeproof/infer/jackknife.ts";
 * import { meanOf } from "lakeproof/infer/sample.ts";
 * import { assertAlmostEqual } from "lakeproof/base/assert.ts";
 * assertAlmostEqual(jackknife([1, 2, 3, 6], meanOf).standardError, 1.0801, 1e-4);
 * ```
 */
export function jackknife<T>(
  items: readonly T[],
  statistic: (items: readonly T[]) => number,
): Jackknife {
  const n = items.length;
  if (n < 2) throw new RangeError(`Cannot leave one out as at least two are needed: ${n}`);
  const finite = (value: number, which: string): number => {
    if (!Number.isFinite(value)) {
      throw new RangeError(`Cannot use the jackknife as the result ${which} is ${value}`);
    }
    return value;
  };
  const estimate = finite(statistic(items), "of all items");
  const leftOut = items.map((_item, out) =>
    finite(statistic(items.filter((_other, i) => i !== out)), `without item ${out + 1}`)
  );
  const mean = leftOut.reduce((sum, value) => sum + (value - estimate), 0) / n + estimate;
  const squares = leftOut.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return {
    estimate,
    leftOut,
    pseudoValues: leftOut.map((value) => estimate + (n - 1) * (estimate - value)),
    bias: (n - 1) * (mean - estimate),
    standardError: Math.sqrt((n - 1) / n * squares),
  };
}
