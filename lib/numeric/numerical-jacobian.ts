/**
 * Slopes of a computed function by differences, for functions that exact derivatives can't reach.
 *
 * @module
 */

/** How far to step. */
export interface DifferenceOptions {
  /**
   * A typical size of each argument: the step is a share of the larger of this and the argument's own size, so that an
   * argument of 1e-7 gets a step of 1e-10 and not one of 1e-3. Default: the argument's own size, or 1 at zero.
   */
  readonly sizes?: readonly number[];
}

/** Step as a share of the argument: fourth-order truncation and rounding balance at about eps^(1/5). */
const SHARE = 7.4e-4;

/**
 * The slopes of several results in every argument, by the five-point central difference.
 *
 * About 11 to 13 digits for smooth functions. Where a stepped argument gives no number, the step is cut to a sixteenth, three times.
 *
 * Source: Abramowitz and Stegun 25.3.21.
 *
 * @param f results as a function of the arguments
 * @param at where
 * @param options typical sizes of the arguments
 * @returns one column an argument: the slope of each result in it
 * @throws RangeError when no step gives numbers on both sides
 * @example
 * ```ts
 * import { numericalJacobian } from "lakeproof/numeric/numerical-jacobian.ts";
 * import { assertAlmostEqual } from "lakeproof/base/assert.ts";
 * const [byX, byY] = numericalJacobian(([x, y]) => [x! * Math.exp(y!)], [2, 1]);
 * assertAlmostEqual(byX![0]!, Math.E, 1e-11);
 * assertAlmostEqual(byY![0]!, 2 * Math.E, 1e-11);
 * ```
 */
export function numericalJacobian(
  f: (x: readonly number[]) => readonly number[],
  at: readonly number[],
  options: DifferenceOptions = {},
): Float64Array[] {
  return at.map((value, j) => {
    let step = SHARE * Math.max(Math.abs(value), options.sizes?.[j] ?? 0) || SHARE;
    const shifted = (by: number) => f(at.map((x, k) => (k === j ? x + by : x)));
    for (let attempt = 0; attempt < 4; attempt++) {
      // A step that the doubles around the value can represent exactly.
      const exact = (value + step) - value;
      const [far2, far1, near1, near2] = [
        shifted(-2 * exact),
        shifted(-exact),
        shifted(exact),
        shifted(2 * exact),
      ];
      const slopes = Float64Array.from(
        near1,
        (after, i) => (8 * (after - far1[i]!) - (near2[i]! - far2[i]!)) / (12 * exact),
      );
      if (slopes.every(Number.isFinite)) return slopes;
      step /= 16;
    }
    throw new RangeError(
      `Cannot take differences as argument ${j + 1} gives no numbers near ${value}`,
    );
  });
}
