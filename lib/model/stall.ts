/**
 * The slowest speed at which a wing carries its load.
 *
 * @module
 */

/** A wing at its largest lift coefficient. */
export interface StallTask {
  /** N: weight less buoyancy. */
  readonly weightInWater: number;
  /** kg/m3 */
  readonly density: number;
  /** m2, projected. */
  readonly area: number;
  /** Largest lift coefficient of the wing (about nine tenths of its section's), 1. */
  readonly largestLiftCoefficient: number;
  /** Share of it that is used, 1; 0.85 is a convention for takeoff. */
  readonly usableShare?: number;
  /** Height lost over distance in a glide, 1: the path's tilt takes a little off the lift. */
  readonly slope?: number;
}

/** How the largest lift coefficient moves with Reynolds number: `C_Lmax (Re/reference)^exponent`. */
export interface LiftScaling {
  /** m2/s */
  readonly kinematicViscosity: number;
  /** m, mean chord. */
  readonly chord: number;
  /** Reynolds number at which the largest lift coefficient is stated, 1. */
  readonly reference: number;
  /** 0.10 give or take 0.05 between 1e5 and 3e6 (from memory), 1. */
  readonly exponent: number;
}

/**
 * Stall speed: the least speed of steady flight with the board clear of the water, `sqrt(2 (W - B)/(rho S C_Lmax))`.
 *
 * With a usable share below 1 it is the takeoff speed at that share. With a slope it is the speed at which a glide ends in a stall. With
 * Reynolds scaling the equation has a closed form too. The surface lowers the lift slope, hence costs incidence; no loss of the largest
 * lift coefficient itself is known below two chords of depth.
 *
 * Source: lift equation solved for speed; textbook form, common practice. Lift in a glide: `(W - B) cos(gamma)`.
 *
 * @param task weight in water in N, density in kg/m3, area in m2, largest lift coefficient
 * @param scaling how the largest lift coefficient moves with Reynolds number; left out, it is constant
 * @returns m/s
 * @throws RangeError when a part is not above zero: a craft that floats has no stall speed
 *
 * @example
 * ```ts
 * import { stallSpeed } from "lakeproof/model/stall.ts";
 * const speed = stallSpeed({ weightInWater: 900, density: 1025, area: 0.12, largestLiftCoefficient: 0.9 });
 * if (Math.abs(speed - 4.0324) > 1e-4) throw new Error(`${speed}`);
 * ```
 */
export function stallSpeed(task: StallTask, scaling?: LiftScaling): number {
  const { weightInWater, density, area, largestLiftCoefficient, usableShare = 1, slope = 0 } = task;
  for (
    const [name, value] of Object.entries({
      weightInWater,
      density,
      area,
      largestLiftCoefficient,
      usableShare,
    })
  ) {
    if (!(value > 0 && value < Infinity)) {
      throw new RangeError(`Cannot give a stall speed as ${name} must be above zero: ${value}`);
    }
  }
  const lift = weightInWater / Math.sqrt(1 + slope * slope);
  const squared = 2 * lift / (density * area * usableShare * largestLiftCoefficient);
  if (!Number.isFinite(squared)) {
    throw new RangeError(`Cannot give a stall speed as the slope must be finite: ${slope}`);
  }
  if (scaling === undefined) return Math.sqrt(squared);
  const { kinematicViscosity, chord, reference, exponent } = scaling;
  if (!(kinematicViscosity > 0 && chord > 0 && reference > 0 && exponent > -2)) {
    throw new RangeError(
      `Cannot scale a stall speed as viscosity, chord and reference must be above zero: ${
        JSON.stringify(scaling)
      }`,
    );
  }
  const speedAtReference = kinematicViscosity * reference / chord;
  return (squared * speedAtReference ** exponent) ** (1 / (2 + exponent));
}
