/**
 * The ellipse of two errors that hang together.
 *
 * @module
 */

/** A symmetric 2 by 2 covariance by rows. */
export type CovarianceOfTwo = readonly (readonly number[])[];

/** Axes of an ellipse of one standard uncertainty. */
export interface ErrorEllipse {
  /** Standard uncertainty along the long axis. */
  readonly semiMajor: number;
  /** Along the short one, across it. */
  readonly semiMinor: number;
  /** rad from the first coordinate's axis to the long one, above -pi/2 and up to pi/2. */
  readonly tilt: number;
}

/** Half-size of the ellipse that holds the truth of two normal errors in 95 of 100, in standard uncertainties: sqrt(-2 ln 0.05). */
export const ELLIPSE_95 = Math.sqrt(-2 * Math.log(0.05));

/**
 * Half axes and tilt of the ellipse of one standard uncertainty.
 *
 * The half axes are the roots of the covariance's eigenvalues, the tilt is the direction of the larger one's eigenvector. One
 * standard uncertainty holds the truth in 39 of 100 only, not in 68: that is for a single coordinate.
 *
 * Source: eigenvalues of a symmetric 2 by 2 matrix, any text.
 *
 * @param covariance symmetric, not negative
 * @returns the ellipse
 * @throws RangeError when it is no covariance
 *
 * @example Errors of 3 and 1 without covariance
 * ```ts
 * import { errorEllipse } from "lakeproof/numeric/error-ellipse.ts";
 * const { semiMajor, semiMinor, tilt } = errorEllipse([[1, 0], [0, 9]]);
 * if (semiMajor !== 3 || semiMinor !== 1 || Math.abs(tilt - Math.PI / 2) > 1e-15) throw new Error("unexpected");
 * ```
 */
export function errorEllipse(covariance: CovarianceOfTwo): ErrorEllipse {
  const [[a, b], [c, d]] = covariance as readonly [[number, number], [number, number]];
  const determinant = a * d - b * c;
  // Rounding may leave two fully dependent errors a hair below zero.
  if (
    !(a >= 0 && d >= 0 && Math.abs(b - c) <= 1e-9 * Math.abs(b) && determinant >= -1e-12 * a * d)
  ) {
    throw new RangeError(`Cannot draw an ellipse as this is no covariance: ${a}, ${b}, ${c}, ${d}`);
  }
  const large = (a + d) / 2 + Math.hypot((a - d) / 2, b);
  // By the determinant, since the difference of two near numbers would lose the small one.
  const small = large === 0 ? 0 : Math.max(0, determinant) / large;
  return {
    semiMajor: Math.sqrt(large),
    semiMinor: Math.sqrt(small),
    tilt: Math.atan2(2 * b, a - d) / 2,
  };
}

/**
 * Points around an ellipse, the first repeated at the end.
 *
 * @param centre of the ellipse
 * @param covariance of its two coordinates
 * @param options `scale` in standard uncertainties, 1 unless said otherwise; `count` of different points, 40
 * @returns points in the coordinates' own units
 * @throws RangeError when it is no covariance
 */
export function ellipsePoints(
  centre: readonly [number, number],
  covariance: CovarianceOfTwo,
  options: { readonly scale?: number; readonly count?: number } = {},
): [number, number][] {
  const { scale = 1, count = 40 } = options;
  const { semiMajor, semiMinor, tilt } = errorEllipse(covariance);
  const [cos, sin] = [Math.cos(tilt), Math.sin(tilt)];
  return Array.from({ length: count + 1 }, (_, i) => {
    const angle = 2 * Math.PI * (i % count) / count;
    const [along, across] = [
      scale * semiMajor * Math.cos(angle),
      scale * semiMinor * Math.sin(angle),
    ];
    return [centre[0] + along * cos - across * sin, centre[1] + along * sin + across * cos];
  });
}
