/**
 * The noncentral t distribution: what t does when there really is a difference. Tells how many runs will settle it.
 *
 * Source: Johnson, Kotz and Balakrishnan, Continuous Univariate Distributions 2, 1995, chapter 31: T = (Z + noncentrality) / U
 * with Z normal and n U^2 chi-square with n degrees of freedom. Here by Gauss-Legendre quadrature over ln U; both factors
 * of the integrand are positive with a single peak, so both tails keep their digits.
 *
 * @module
 */
import gammaln from "@stdlib/math-base-special-gammaln";
import { gaussLegendre } from "./gauss-legendre.ts";
import { checkNumber, normalLowerTail } from "./normal-distribution.ts";

/** Which noncentral t. */
export interface NoncentralTParameters {
  /** At least 1. */
  readonly degreesOfFreedom: number;
  /** The true difference in true standard errors. */
  readonly noncentrality: number;
}

/** ln of the density of U at 1, by Stirling's series where the gamma function would lose digits. */
function logPeak(n: number): number {
  const z = n / 2;
  if (z < 20) return Math.LN2 + z * Math.log(z) - z - gammaln(z);
  const series = 1 / (12 * z) - 1 / (360 * z ** 3) + 1 / (1260 * z ** 5) - 1 / (1680 * z ** 7);
  return Math.LN2 + 0.5 * Math.log(z / (2 * Math.PI)) - series;
}

/** ln of the normal lower tail, by its asymptotic series where the tail itself underflows. */
function logNormalLowerTail(z: number): number {
  if (z > -30) return Math.log(normalLowerTail(z));
  const w = 1 / (z * z);
  return -z * z / 2 - Math.log(-z * Math.sqrt(2 * Math.PI)) +
    Math.log1p(-w * (1 - w * (3 - 15 * w)));
}

/** Where a function with one peak on [low, high] is largest, by golden section. */
function peakOf(f: (x: number) => number, low: number, high: number): number {
  const share = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [low, high];
  for (let i = 0; i < 80; i++) {
    const left = b - share * (b - a);
    const right = a + share * (b - a);
    if (f(left) < f(right)) a = left;
    else b = right;
  }
  return (a + b) / 2;
}

/** The point between peak and end where f has fallen by 50 (e^-50 is nothing in doubles), or the end. */
function edge(f: (x: number) => number, peak: number, end: number): number {
  const floor = f(peak) - 50;
  if (f(end) > floor) return end;
  let [inside, outside] = [peak, end];
  for (let i = 0; i < 30; i++) {
    const middle = (inside + outside) / 2;
    if (f(middle) > floor) inside = middle;
    else outside = middle;
  }
  return outside;
}

function tail(
  t: number,
  { degreesOfFreedom: n, noncentrality }: NoncentralTParameters,
  lower: boolean,
) {
  checkNumber(t, "t");
  if (!(n >= 1 && n < Infinity) || !Number.isFinite(noncentrality)) {
    throw new RangeError(
      `Cannot use noncentral t as it needs 1 or more degrees of freedom and a finite noncentrality: ${n}, ${noncentrality}`,
    );
  }
  if (!Number.isFinite(t)) return (t > 0) === lower ? 1 : 0;
  const sign = lower ? 1 : -1;
  const atOne = logPeak(n);
  const logIntegrand = (v: number) =>
    atOne + n * (v - Math.expm1(2 * v) / 2) +
    logNormalLowerTail(sign * (t * Math.exp(v) - noncentrality));
  // The peak lies below max(1, noncentrality / 2), whatever t is.
  const [least, most] = [-600, Math.log(150 + Math.abs(noncentrality))];
  const peak = peakOf(logIntegrand, least, most);
  const from = edge(logIntegrand, peak, least);
  const to = edge(logIntegrand, peak, most);
  const { nodes, weights } = gaussLegendre(24);
  // Few degrees of freedom give a long, slow left tail; a large noncentrality gives a cliff where t U equals it.
  const pieces = n < 4 ? 48 : 16;
  const cliff = Math.log(noncentrality / t);
  const nearCliff = Number.isFinite(cliff)
    ? [-12, 12].map((z) => cliff + z / Math.max(1, Math.abs(noncentrality)))
    : [];
  const cuts = [from, ...nearCliff.filter((cut) => cut > from && cut < to), to];
  let sum = 0;
  for (let stretch = 1; stretch < cuts.length; stretch++) {
    const low = cuts[stretch - 1]!;
    const width = (cuts[stretch]! - low) / pieces;
    for (let piece = 0; piece < pieces; piece++) {
      for (let i = 0; i < nodes.length; i++) {
        sum += width * weights[i]! * Math.exp(logIntegrand(low + (piece + nodes[i]!) * width));
      }
    }
  }
  return Math.min(1, sum);
}

/**
 * Probability that a noncentral t is below a value.
 *
 * @param t the value, in estimated standard errors
 * @param parameters degrees of freedom and noncentrality
 * @returns probability, 0 to 1
 * @throws RangeError when an argument makes no sense
 * @example The power of a one-sided test at 5 % with 10 degrees of freedom and a true difference of 3 standard errors
 * ```ts
 * import { noncentralTLowerTail, studentTQuantile } from "lakeproof/numeric/distributions.ts";
 * import { assertAlmostEqual } from "lakeproof/base/assert.ts";
 * const needed = studentTQuantile(0.95, 10);
 * const missed = noncentralTLowerTail(needed, { degreesOfFreedom: 10, noncentrality: 3 });
 * assertAlmostEqual(1 - missed, 0.8742, 1e-3);
 * ```
 */
export function noncentralTLowerTail(t: number, parameters: NoncentralTParameters): number {
  return tail(t, parameters, true);
}

/**
 * Probability that a noncentral t is above a value: the power of a test when `t` is its limit.
 *
 * @param t the value, in estimated standard errors
 * @param parameters degrees of freedom and noncentrality
 * @returns probability, 0 to 1
 * @throws RangeError when an argument makes no sense
 */
export function noncentralTUpperTail(t: number, parameters: NoncentralTParameters): number {
  return tail(t, parameters, false);
}
