/**
 * Gauss-Legendre quadrature on (0, 1).
 *
 * @module
 */

/** Points and weights of a quadrature rule; the weights add to 1. */
export interface QuadratureRule {
  /** Rising, in (0, 1). */
  readonly nodes: readonly number[];
  readonly weights: readonly number[];
}

/**
 * The Gauss-Legendre rule with a number of points, on (0, 1).
 *
 * Exact for polynomials up to degree 2 n - 1. Note the interval: tables usually give (-1, 1).
 *
 * Source: Newton's method on the Legendre polynomial from its three-term recurrence (DLMF 18.9.1 and 3.5.v), started at the
 * asymptotic zeros `cos(pi (i - 1/4)/(n + 1/2))`.
 *
 * @param count number of points, 1 or more
 * @returns nodes and weights
 * @throws RangeError when the count is not a whole number of 1 or more
 *
 * @example
 * ```ts
 * import { gaussLegendre } from "lakeproof/numeric/gauss-legendre.ts";
 * const { nodes, weights } = gaussLegendre(3);
 * const integral = nodes.reduce((sum, x, i) => sum + weights[i]! * x ** 5, 0);
 * if (Math.abs(integral - 1 / 6) > 1e-15) throw new Error(`${integral}`);
 * ```
 */
export function gaussLegendre(count: number): QuadratureRule {
  if (!(Number.isInteger(count) && count >= 1)) {
    throw new RangeError(`Cannot make a quadrature rule as 1 or more points are needed: ${count}`);
  }
  const nodes = new Array<number>(count);
  const weights = new Array<number>(count);
  for (let i = 0; i < Math.ceil(count / 2); i++) {
    let x = Math.cos(Math.PI * (i + 0.75) / (count + 0.5));
    let slope = 0;
    for (let step = 0; step < 100; step++) {
      let before = 1, value = x;
      for (let k = 2; k <= count; k++) {
        [before, value] = [value, ((2 * k - 1) * x * value - (k - 1) * before) / k];
      }
      slope = count === 1 ? 1 : count * (x * value - before) / (x * x - 1);
      const change = (count === 1 ? x : value) / slope;
      x -= change;
      if (Math.abs(change) < 4e-16) break;
    }
    const weight = 1 / ((1 - x * x) * slope * slope);
    nodes[i] = (1 - x) / 2;
    nodes[count - 1 - i] = (1 + x) / 2;
    weights[i] = weights[count - 1 - i] = weight;
  }
  return { nodes, weights };
}
