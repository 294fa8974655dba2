/**
 * The mass that must be slowed down: what flies, and the water that moves with it.
 *
 * @module
 */

/** A wing, for the water it drags along when its speed changes. */
export interface MovingWing {
  /** kg, all that flies. */
  readonly mass: number;
  /** kg/m3 of the water. */
  readonly density: number;
  /** m */
  readonly span: number;
  /** m2, projected. */
  readonly area: number;
  /** Thickness over chord, 1. */
  readonly thicknessRatio: number;
  /** rad between the wing's path and its plane; 0.15 is that of a wing near its stall under the surface. */
  readonly incidence?: number;
}

/**
 * Effective mass in surge: carried mass plus added mass of the wing.
 *
 * Added mass is taken strip by strip: an ellipse of the section's chord and thickness, moved along its chord
 * (`pi rho t^2/4` a metre of span) and, for the share of the motion that goes through the wing's plane, broadside
 * (`pi rho c^2/4`). One per cent for a small wing, two to three for a very wide one. Struts add a tenth of that, the board and the
 * rider in air nothing. It rests on flow without lift, so the share itself is known to about half. It enters a comparison of two wings
 * almost equally on both sides.
 *
 * Source: Lamb, Hydrodynamics, sixth edition, article 71 (ellipse; from memory); kinetic energy of a body moved at an angle to its
 * principal axes.
 *
 * @param wing mass in kg, density in kg/m3, span in m, area in m2, thickness ratio, incidence in rad
 * @returns kg
 * @throws RangeError when mass, density, span or area is not above zero
 *
 * @example
 * ```ts
 * import { effectiveMass } from "lakeproof/model/effective-mass.ts";
 * const kg = effectiveMass({ mass: 88, density: 999.1, span: 0.9, area: 0.15, thicknessRatio: 0.12 });
 * if (!(kg > 88.5 && kg < 89)) throw new Error(`${kg}`);
 * ```
 */
export function effectiveMass(wing: MovingWing): number {
  const { mass, density, span, area, thicknessRatio, incidence = 0.15 } = wing;
  if (
    !(mass > 0 && density > 0 && span > 0 && area > 0 && thicknessRatio >= 0 &&
      Number.isFinite(mass + density + span + area + thicknessRatio + incidence))
  ) {
    throw new RangeError(
      `Cannot give the effective mass as mass, density, span and area must be above zero: ${
        JSON.stringify({ mass, density, span, area, thicknessRatio, incidence })
      }`,
    );
  }
  const chord = area / span;
  const broadside = Math.PI / 4 * density * chord * chord * span;
  const through = Math.sin(incidence) ** 2;
  return mass + broadside * (thicknessRatio ** 2 * (1 - through) + through);
}
