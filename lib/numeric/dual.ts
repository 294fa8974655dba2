/**
 * Numbers that carry their derivatives along: exact gradients of a formula without deriving it by hand.
 *
 * Forward mode: each value stands beside its slope in every parameter, and every operation applies its rule of
 * differentiation. Exact to rounding; the cost grows with the number of parameters.
 *
 * Source: Griewank and Walther, Evaluating Derivatives, 2nd edition, 2008, chapter 3.
 *
 * @module
 */

/** What a formula is written in: plain numbers (`PLAIN`) or numbers with slopes (`DUAL`). */
export interface Arithmetic<N> {
  constant(value: number): N;
  add(a: N, b: N): N;
  subtract(a: N, b: N): N;
  multiply(a: N, b: N): N;
  divide(a: N, b: N): N;
  /** a to the power b; the base must be positive unless b is a whole number. */
  power(a: N, b: N): N;
  exp(a: N): N;
  log(a: N): N;
  sqrt(a: N): N;
  sin(a: N): N;
  cos(a: N): N;
  atan(a: N): N;
}

/** A value and its slopes. */
export interface Dual {
  readonly value: number;
  readonly slopes: Float64Array;
}

/** Arithmetic on plain numbers. */
export const PLAIN: Arithmetic<number> = {
  constant: (value) => value,
  add: (a, b) => a + b,
  subtract: (a, b) => a - b,
  multiply: (a, b) => a * b,
  divide: (a, b) => a / b,
  power: (a, b) => a ** b,
  exp: Math.exp,
  log: Math.log,
  sqrt: Math.sqrt,
  sin: Math.sin,
  cos: Math.cos,
  atan: Math.atan,
};

/**
 * Arithmetic on numbers with slopes in `count` parameters.
 *
 * @param count how many parameters
 * @returns the operations
 */
function dualArithmetic(count: number): Arithmetic<Dual> {
  const chain = (value: number, a: Dual, slope: number): Dual => {
    const slopes = new Float64Array(count);
    for (let i = 0; i < count; i++) slopes[i] = slope * a.slopes[i]!;
    return { value, slopes };
  };
  const both = (value: number, a: Dual, byA: number, b: Dual, byB: number): Dual => {
    const slopes = new Float64Array(count);
    for (let i = 0; i < count; i++) slopes[i] = byA * a.slopes[i]! + byB * b.slopes[i]!;
    return { value, slopes };
  };
  return {
    constant: (value) => ({ value, slopes: new Float64Array(count) }),
    add: (a, b) => both(a.value + b.value, a, 1, b, 1),
    subtract: (a, b) => both(a.value - b.value, a, 1, b, -1),
    multiply: (a, b) => both(a.value * b.value, a, b.value, b, a.value),
    divide: (a, b) => both(a.value / b.value, a, 1 / b.value, b, -a.value / (b.value * b.value)),
    power: (a, b) => {
      const value = a.value ** b.value;
      const fixed = b.slopes.every((slope) => slope === 0);
      const byBase = b.value * a.value ** (b.value - 1);
      return fixed ? chain(value, a, byBase) : both(value, a, byBase, b, value * Math.log(a.value));
    },
    exp: (a) => {
      const value = Math.exp(a.value);
      return chain(value, a, value);
    },
    log: (a) => chain(Math.log(a.value), a, 1 / a.value),
    sqrt: (a) => {
      const value = Math.sqrt(a.value);
      return chain(value, a, 0.5 / value);
    },
    sin: (a) => chain(Math.sin(a.value), a, Math.cos(a.value)),
    cos: (a) => chain(Math.cos(a.value), a, -Math.sin(a.value)),
    atan: (a) => chain(Math.atan(a.value), a, 1 / (1 + a.value * a.value)),
  };
}

/**
 * A formula's value and its exact slope in every parameter.
 *
 * @param formula written in the operations it is handed
 * @param parameters where to evaluate
 * @returns value and slopes, in the units of the formula
 * @example
 * ```ts
 * import { gradientOf } from "lakeproof/numeric/dual.ts";
 * import { assertAlmostEqual } from "lakeproof/base/assert.ts";
 * const { value, slopes } = gradientOf((n, [x, y]) => n.multiply(x!, n.exp(y!)), [2, 1]);
 * assertAlmostEqual(value, 2 * Math.E, 1e-15);
 * assertAlmostEqual(slopes[0]!, Math.E, 1e-15);
 * ```
 */
export function gradientOf(
  formula: (n: Arithmetic<Dual>, parameters: readonly Dual[]) => Dual,
  parameters: readonly number[],
): Dual {
  const count = parameters.length;
  return formula(
    dualArithmetic(count),
    parameters.map((value, i) => {
      const slopes = new Float64Array(count);
      slopes[i] = 1;
      return { value, slopes };
    }),
  );
}
