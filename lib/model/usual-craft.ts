/**
 * The numbers that stand in where nobody measured.
 *
 * @module
 */
import { STANDARD_GRAVITY } from "./gravity.ts";
import type { SteadyCraft } from "./steady-craft.ts";

/**
 * Usual numbers of a hand-made foil under a standing rider, in a lake. Common practice, no source, but for those of the drag build-up,
 * whose sources stand there.
 *
 * The largest lift coefficient of the wing is nine tenths of the section's; where the kind of section is known, see
 * {@link usualLargestLift}.
 */
export const USUAL_CRAFT: SteadyCraft = {
  mass: 88,
  span: 0.95,
  area: 0.15,
  wingVolume: 0.002,
  thicknessRatio: 0.12,
  largestLiftCoefficient: 1,
  liftReference: 4e5,
  liftExponent: 0.1,
  usableShare: 0.85,
  strutCount: 1,
  strutChord: 0.12,
  strutThickness: 0.0144,
  runningDepth: 0.4,
  takeoffDepth: 0.65,
  spanEfficiency: 0.95,
  viscousLiftFactor: 0.01,
  liftCoefficientOfLeastDrag: 0.1,
  transitionReynolds: 2e5,
  roughness: 0,
  airDragArea: 0.55,
  extraDragArea: 0,
  wingForm: 1,
  strutForm: 1,
  spray: 1,
  junction: 1,
  surface: 1,
  temperature: 288.15,
  salinity: 0,
  densityFactor: 1,
  gravity: STANDARD_GRAVITY,
  altitude: 0,
  lineAngle: 0,
  headwind: 0,
};

/**
 * Largest lift coefficient, and lift coefficient of least section drag, of a hand-made wing by its kind of section.
 *
 * Source: common practice, no source; Reynolds numbers of 2e5 to 6e5.
 *
 * @param section kind of section; `null` where nobody said
 * @returns both, 1
 *
 * @example
 * ```ts
 * import { usualLargestLift } from "lakeproof/model/usual-craft.ts";
 * if (usualLargestLift("cambered").largest !== 1.1) throw new Error("cambered by 2 to 4 %");
 * ```
 */
export function usualLargestLift(
  section: "symmetric" | "cambered" | null,
): { readonly largest: number; readonly leastDrag: number } {
  if (section === "symmetric") return { largest: 0.85, leastDrag: 0 };
  if (section === "cambered") return { largest: 1.1, leastDrag: 0.2 };
  return {
    largest: USUAL_CRAFT.largestLiftCoefficient,
    leastDrag: USUAL_CRAFT.liftCoefficientOfLeastDrag,
  };
}
