/**
 * What glides in one run: weight, effective mass, and the prior shape of its drag.
 *
 * @module
 */

/**
 * One craft at one carried mass, ready for the sums of a glide.
 *
 * `a`, `d` and `e` are the prior drag law `D(v) = a v^2 + d + e phi(v)/v^2` of the whole craft. Glides use its shape only:
 * the level is fitted from the runs.
 */
export interface GlidingCraft {
  /** N: weight less buoyancy, the force that a metre of height pays with. */
  readonly weight: number;
  /** 1: effective mass over mass less buoyancy; how much more height a given speed is worth than in a free fall. */
  readonly inertia: number;
  /** N s2/m2 */
  readonly a: number;
  /** N */
  readonly d: number;
  /** N m2/s2 */
  readonly e: number;
  /** Induced and wave drag at the run's depth over that of deep water, by speed in m/s; `null` for 1 throughout. */
  readonly phi: ((speed: number) => number) | null;
}
