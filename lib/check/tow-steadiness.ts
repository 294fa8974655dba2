/**
 * How steady a window behind the boat must be.
 *
 * A drift of 0.01 m/s2 is 2 % of the drag of a usual craft, taken off by its mass; beyond 0.03 m/s2 what is taken off is as
 * large as what is measured well.
 *
 * @module
 */

/** m/s2: a window that drifts by no more is steady. Common practice, no source. */
export const STEADY = 0.01;

/** m/s2: a window that drifts by more is no reading. Common practice, no source. */
export const UNSTEADY = 0.03;

/** s: a shorter window holds too few waves. Common practice, no source. */
export const LONG_ENOUGH = 5;

/** A drift within so many of its own standard uncertainties may be none. */
const SURE = 2;

/**
 * Whether a speed drifts by more than a limit, beyond what its own uncertainty leaves open.
 *
 * @param change m/s2; `null` where nobody looked
 * @param limit m/s2
 * @param uncertainty standard, m/s2; 0 where nobody states it
 * @returns true where it does
 */
export function drifts(change: number | null, limit: number, uncertainty = 0): boolean {
  const size = Math.abs(change ?? 0);
  return size > limit && size > SURE * uncertainty;
}
