/**
 * Gauss-Legendre nodes and weights on (0, 1), for any number of points.
 *
 * A sum of weight times value over the nodes is the mean of a function over (0, 1), exact for polynomials up to degree
 * 2N - 1. Multiply by the width for an integral over another stretch.
 *
 * Source: Golub and Welsch 1969 for the theory; nodes here by Newton's method on the three-term recurrence of the
 * Legendre polynomials, Abramowitz and Stegun 22.7.10 and 25.4.29.
 *
 * @module
 */

/** Points and their weights; the weights add to 1. */
export interface QuadratureRule {
  readonly nodes: readonly number[];
  readonly weights: readonly number[];
}

const known = new Map<number, QuadratureRule>();

/**
 * The rule with N points. Rules are kept, so asking again costs nothing.
 *
 * @param points how many, a whole number from 1
 * @returns nodes in increasing order, strictly inside (0, 1), and weights
 * @throws RangeError when `points` is not a whole number from 1 to 10000
 * @example The mean of x^2 over (0, 1) is a third
 * ```ts
 * import { gaussLegendre } from "lakeproof/numeric/gauss-legendre.ts";
 * import { assertAlmostEqual } from "lakeproof/base/assert.ts";
 * const { nodes, weights } = gaussLegendre(2);
 * assertAlmostEqual(nodes.reduce((sum, x, i) => sum + weights[i]! * x ** 2, 0), 1 / 3, 1e-15);
 * ```
 */
export function gaussLegendre(points: number): QuadratureRule {
  if (!Number.isInteger(points) || points < 1 || points > 10_000) {
    throw new RangeError(
      `Cannot make a Gauss-Legendre rule as points must be 1 to 10000: ${points}`,
    );
  }
  const kept = known.get(points);
  if (kept !== undefined) return kept;
  const nodes: number[] = new Array(points);
  const weights: number[] = new Array(points);
  for (let i = 0; i < Math.ceil(points / 2); i++) {
    let x = Math.cos(Math.PI * (i + 0.75) / (points + 0.5));
    let slope = 1;
    for (let iteration = 0; iteration < 100; iteration++) {
      let before = 1;
      let here = x;
      for (let k = 2; k <= points; k++) {
        [before, here] = [here, ((2 * k - 1) * x * here - (k - 1) * before) / k];
      }
      slope = points * (before - x * here) / ((1 - x) * (1 + x));
      const change = here / slope;
      x -= change;
      if (Math.abs(change) < 1e-15) break;
    }
    if (2 * i + 1 === points) x = 0;
    const weight = 1 / ((1 - x) * (1 + x) * slope * slope);
    nodes[i] = (1 - x) / 2;
    nodes[points - 1 - i] = (1 + x) / 2;
    weights[i] = weight;
    weights[points - 1 - i] = weight;
  }
  const rule = { nodes, weights };
  known.set(points, rule);
  return rule;
}
