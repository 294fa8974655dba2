/**
 * The regularised incomplete gamma functions, lower and upper.
 *
 * stdlib's function serves up to a shape of 400. Above, its uniform expansion goes wrong (0.04 relative at shape 2500,
 * measured against mpmath for version 0.3.1), so there the series or the continued fraction is summed directly.
 *
 * Source: Abramowitz and Stegun 6.5.29 (series) and 6.5.31 (continued fraction); prefactor by Stirling's series 6.1.41.
 *
 * @module
 */
import gammainc from "@stdlib/math-base-special-gammainc";

/** x^s e^-x / Gamma(s), without the cancellation of its three large factors. */
function prefactor(x: number, s: number): number {
  const h = (x - s) / s;
  // h - ln(1 + h), by its series where the two nearly cancel.
  let gap = 0;
  if (Math.abs(h) < 0.1) {
    let power = h * h;
    for (let k = 2; k < 40; k++) {
      gap += (k % 2 === 0 ? power : -power) / k;
      power *= h;
    }
  } else gap = h - Math.log1p(h);
  const stirling = 1 / (12 * s) - 1 / (360 * s ** 3);
  return Math.exp(-s * gap - stirling) * Math.sqrt(s / (2 * Math.PI));
}

function lowerSeries(x: number, s: number): number {
  let term = 1 / s;
  let sum = term;
  for (let k = 1; k < 100_000 && term > sum * 1e-17; k++) {
    term *= x / (s + k);
    sum += term;
  }
  return prefactor(x, s) * sum;
}

function upperFraction(x: number, s: number): number {
  // Lentz's method on the even part of the fraction.
  let b = x + 1 - s;
  let c = 1e300;
  let d = 1 / b;
  let value = d;
  for (let k = 1; k < 100_000; k++) {
    const a = -k * (k - s);
    b += 2;
    d = 1 / (a * d + b);
    c = b + a / c;
    value *= c * d;
    if (Math.abs(c * d - 1) < 1e-16) break;
  }
  return prefactor(x, s) * value;
}

/**
 * The share of the gamma integral below x.
 *
 * @param x upper limit, 0 or more
 * @param shape positive
 * @returns share, 0 to 1
 * @example
 * ```ts
 * import { gammaLower } from "lakeproof/numeric/incomplete-gamma.ts";
 * import { assertAlmostEqual } from "lakeproof/base/assert.ts";
 * assertAlmostEqual(gammaLower(2, 1), 1 - Math.exp(-2), 1e-15);
 * ```
 */
export function gammaLower(x: number, shape: number): number {
  if (shape <= 400) return gammainc(x, shape, true, false);
  return x < shape ? lowerSeries(x, shape) : 1 - upperFraction(x, shape);
}

/**
 * The share of the gamma integral above x.
 *
 * @param x lower limit, 0 or more
 * @param shape positive
 * @returns share, 0 to 1
 */
export function gammaUpper(x: number, shape: number): number {
  if (shape <= 400) return gammainc(x, shape, true, true);
  return x < shape ? 1 - lowerSeries(x, shape) : upperFraction(x, shape);
}
