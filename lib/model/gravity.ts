/**
 * Gravity by latitude and height.
 *
 * @module
 */

/** The value agreed for all places where none is measured, m/s2 (CGPM 1901). */
export const STANDARD_GRAVITY = 9.80665;

/**
 * Normal gravity at a latitude and a height above the sea.
 *
 * From the equator to the poles it grows by half a per cent, which is as much as many a scale's error.
 *
 * Source: Somigliana's closed form and the second-order height term on the WGS 84 ellipsoid, NIMA TR8350.2, third edition
 * (2000), equations 4-1 and 4-3 (numbers from memory); constants there. Local rock changes it by less than 1e-4.
 *
 * @param latitude rad, north or south
 * @param height m above the sea, -500 to 10000
 * @returns m/s2
 * @throws RangeError outside -pi/2 to pi/2 or the stated heights
 *
 * @example
 * ```ts
 * import { gravity } from "lakeproof/model/gravity.ts";
 * const g = gravity(50 * Math.PI / 180);
 * if (Math.abs(g - 9.8107021356) > 1e-9) throw new Error(`${g}`);
 * ```
 */
export function gravity(latitude: number, height = 0): number {
  if (!(Math.abs(latitude) <= Math.PI / 2)) {
    throw new RangeError(
      `Cannot give gravity as the latitude must be -pi/2 to pi/2 rad: ${latitude} rad`,
    );
  }
  if (!(height >= -500 && height <= 10_000)) {
    throw new RangeError(`Cannot give gravity as the height must be -500 to 10000 m: ${height} m`);
  }
  const squared = Math.sin(latitude) ** 2;
  const atSea = 9.7803253359 * (1 + 0.00193185265241 * squared) /
    Math.sqrt(1 - 0.00669437999014 * squared);
  const radius = 6378137;
  const flattening = 1 / 298.257223563;
  const spin = 0.00344978650684;
  const relative = height / radius;
  return atSea * (1 - 2 * (1 + flattening + spin - 2 * flattening * squared) * relative +
    3 * relative * relative);
}
