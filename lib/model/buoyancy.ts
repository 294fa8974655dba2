/**
 * What is carried, less what the water carries.
 *
 * @module
 */

/** A mass hanging on a wet volume. */
export interface ImmersedMass {
  /** kg, all that flies: rider, board, struts, wing. */
  readonly mass: number;
  /** m3 of water pushed aside while flying. */
  readonly wetVolume: number;
  /** kg/m3 */
  readonly density: number;
  /** m/s2 */
  readonly gravity: number;
}

/**
 * Weight in water `(m - rho V) g`: what the wing must lift, and what a metre of height is worth.
 *
 * The wet volume sinks with the rest, so a metre of drop gives `W - B`, not `W`. A foam-cored wing of seven litres takes 7 % off a
 * rider's weight. Zero or negative means that it floats and can't glide down: the number says so, the caller decides.
 *
 * Source: Archimedes' principle; common practice.
 *
 * @param body mass in kg, wet volume in m3, density in kg/m3, gravity in m/s2
 * @returns N, downwards
 * @throws RangeError for a negative or non-finite part
 *
 * @example
 * ```ts
 * import { weightInWater } from "lakeproof/model/buoyancy.ts";
 * const newtons = weightInWater({ mass: 84, wetVolume: 0.002, density: 999.1, gravity: 9.80665 });
 * if (Math.abs(newtons - 804.162952) > 1e-6) throw new Error(`${newtons}`);
 * ```
 */
export function weightInWater({ mass, wetVolume, density, gravity }: ImmersedMass): number {
  for (const [name, value] of Object.entries({ mass, wetVolume, density, gravity })) {
    if (!(value >= 0 && value < Infinity)) {
      throw new RangeError(
        `Cannot give the weight in water as ${name} must be 0 or more: ${value}`,
      );
    }
  }
  return (mass - density * wetVolume) * gravity;
}
