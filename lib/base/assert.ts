/**
 * The one assertion that doc examples need: two numbers agree within a stated tolerance.
 *
 * @module
 */

/**
 * Throws unless two numbers differ by no more than the tolerance.
 *
 * @param actual what the code gives
 * @param expected what it should give
 * @param tolerance largest difference allowed, in the same unit
 * @throws Error when they differ by more, or either is not a number
 */
export function assertAlmostEqual(actual: number, expected: number, tolerance: number): void {
  if (!(Math.abs(actual - expected) <= tolerance)) {
    throw new Error(`Expected ${expected} within ${tolerance}, got ${actual}`);
  }
}
