/**
 * How many digits our distributions keep of values computed elsewhere to 20 digits.
 *
 * @module
 */
import {
  chiSquareLowerTail,
  chiSquareQuantile,
  chiSquareUpperTail,
  fisherFLowerTail,
  fisherFQuantile,
  fisherFUpperTail,
  noncentralTLowerTail,
  noncentralTUpperTail,
  normalLowerTail,
  normalQuantile,
  studentTQuantile,
  studentTUpperTail,
} from "../../numeric/distributions.ts";
import type { DistributionValue } from "../../base/certified-set.ts";
import { correctDigits } from "./certified-digits.ts";

/** Digits kept by one function over all its points. */
export interface DistributionDigits {
  readonly function: string;
  readonly points: number;
  /** Of the worst point, at most 15. */
  readonly digits: number;
  /** The worst point's arguments. */
  readonly worstAt: readonly number[];
}

type Evaluate = (x: number, a: number, b: number) => number;

const FUNCTIONS: Readonly<Record<string, Evaluate>> = {
  normalLowerTail,
  normalQuantile,
  studentTUpperTail,
  studentTQuantile,
  chiSquareLowerTail,
  chiSquareUpperTail,
  chiSquareQuantile,
  fisherFLowerTail: (x, a, b) => fisherFLowerTail(x, { numerator: a, denominator: b }),
  fisherFUpperTail: (x, a, b) => fisherFUpperTail(x, { numerator: a, denominator: b }),
  fisherFQuantile: (x, a, b) => fisherFQuantile(x, { numerator: a, denominator: b }),
  noncentralTLowerTail: (x, a, b) =>
    noncentralTLowerTail(x, { degreesOfFreedom: a, noncentrality: b }),
  noncentralTUpperTail: (x, a, b) =>
    noncentralTUpperTail(x, { degreesOfFreedom: a, noncentrality: b }),
};

/**
 * Digits kept, function by function.
 *
 * @param values from `readDistributionValues`
 * @returns one row a function, in the order in which they first appear
 * @throws RangeError for a function that we do not have
 * @example
 * ```ts
 * import { distributionDigits } from "lakeproof/decide/published-checks/distribution-digits.ts";
 * import { readDistributionValues } from "lakeproof/read/distribution-values.ts";
 * const few = distributionDigits(readDistributionValues()).filter((row) => row.digits < 12);
 * if (few.length > 0) throw new Error(JSON.stringify(few));
 * ```
 */
export function distributionDigits(values: readonly DistributionValue[]): DistributionDigits[] {
  const rows = new Map<string, DistributionDigits>();
  for (const one of values) {
    const evaluate = Object.hasOwn(FUNCTIONS, one.function) ? FUNCTIONS[one.function] : undefined;
    if (evaluate === undefined) throw new RangeError(`Cannot check the function ${one.function}`);
    const [x, a, b] = one.arguments;
    const digits = correctDigits(evaluate(x ?? NaN, a ?? NaN, b ?? NaN), one.value, 15);
    const before = rows.get(one.function);
    const worse = before === undefined || digits < before.digits;
    rows.set(one.function, {
      function: one.function,
      points: (before?.points ?? 0) + 1,
      digits: worse ? digits : before.digits,
      worstAt: worse ? one.arguments : before.worstAt,
    });
  }
  return [...rows.values()];
}
