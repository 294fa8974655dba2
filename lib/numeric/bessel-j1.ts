/**
 * The Bessel function J1 divided by its argument, smooth through zero.
 *
 * @module
 */

/** J1(z)/z on 0..8 as a Chebyshev series in 2 (z/8)^2 - 1. */
const NEAR = [
  0.081044846325658115,
  -0.14897514506765211,
  0.1609992623572097,
  -0.082680491766817907,
  0.022213639654966035,
  -0.003646940600769276,
  0.00040503377283548218,
  -3.2555548668572585e-5,
  1.9858774049915167e-6,
  -9.5219847567504362e-8,
  3.6871337590971482e-9,
  -1.1780266226958848e-10,
  3.1601545803480033e-12,
  -7.2217552396517734e-14,
  1.4232144003513942e-15,
  -2.4441972916190464e-17,
];

/** P of J1 = sqrt(2/(pi z)) (P cos chi - Q sin chi), chi = z - 3 pi/4, in 2 (8/z)^2 - 1. */
const FAR_P = [
  1.0009030408600137,
  0.00089898983308594086,
  -3.9872843004889085e-6,
  6.1776339606442985e-8,
  -1.8718907491063066e-9,
  8.8168986595823389e-11,
  -5.7048636403956447e-12,
  4.6991955152305424e-13,
  -4.6842237839904892e-14,
  5.4526748960447172e-15,
  -7.2211808422740179e-16,
  1.0667689114335412e-16,
];

/** Q z/8 in the same variable. */
const FAR_Q = [
  0.046777787069535325,
  -9.6277235491570793e-5,
  9.1386152579554541e-7,
  -2.0959781384083422e-8,
  8.2291933276505541e-10,
  -4.6863636881769452e-11,
  3.5152187949686081e-12,
  -3.2643156743278999e-13,
  3.5967765829165292e-14,
  -4.5612523950772972e-15,
  6.508282957783384e-16,
  -1.0269147531823243e-16,
];

/** Sum of a Chebyshev series by Clenshaw's recurrence; the first coefficient counts whole. */
function chebyshev(coefficients: readonly number[], x: number): number {
  let one = 0, two = 0;
  for (let k = coefficients.length - 1; k > 0; k--) {
    const next = 2 * x * one - two + coefficients[k]!;
    two = one;
    one = next;
  }
  return x * one - two + coefficients[0]!;
}

/**
 * Bessel function of the first kind of order one, divided by its argument: J1(z)/z, which is 1/2 at zero.
 *
 * It is the Fourier transform of an elliptic span loading, up to a factor. The quotient is computed as a whole, so that
 * there is no 0/0.
 *
 * Source: definition DLMF 10.2.2, far form DLMF 10.18.4 and 10.18.7 rearranged; coefficients are Chebyshev projections
 * of the function in 40-digit arithmetic (the parent script stands beside the test). Absolute error below 1e-15.
 *
 * @param z argument, 0 or more, 1
 * @returns J1(z)/z, 1
 * @throws RangeError for a negative or non-finite argument
 *
 * @example
 * ```ts
 * import { besselJ1OverArgument } from "lakeproof/numeric/bessel-j1.ts";
 * const j1 = 2 * besselJ1OverArgument(2);
 * if (Math.abs(j1 - 0.5767248077568734) > 1e-14) throw new Error(`${j1}`);
 * ```
 */
export function besselJ1OverArgument(z: number): number {
  if (!(z >= 0) || z === Infinity) {
    throw new RangeError(`Cannot take J1(z)/z as a finite z of 0 or more is needed: ${z}`);
  }
  if (z <= 8) return chebyshev(NEAR, z * z / 32 - 1);
  const inverse = 8 / z;
  const x = 2 * inverse * inverse - 1;
  const chi = z - 0.75 * Math.PI;
  const wave = chebyshev(FAR_P, x) * Math.cos(chi) -
    inverse * chebyshev(FAR_Q, x) * Math.sin(chi);
  return Math.sqrt(2 / (Math.PI * z)) * wave / z;
}
