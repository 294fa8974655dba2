/**
 * What formulas let expect of a towed wing, beside what was measured.
 *
 * @module
 */
import { dragBuildUp } from "../model/planform-drag.ts";
import type { DragSplit } from "./drag-split.ts";
import { USUAL_THICKNESS_RATIO } from "./glide-craft.ts";

/** What a formula lets expect of the wing, N. */
export interface ExpectedWing {
  readonly frictionAndForm: number;
  readonly viscousLift: number;
  readonly inducedAndWave: number;
}

/**
 * Standard uncertainties as shares. Friction of a hand-finished wing lies 19 % under to 48 % over the formula's; the section's
 * own growth of drag with lift is known to a half; induced drag and waves to a tenth. Common practice, no source.
 */
export const WING_DOUBT = { frictionAndForm: 0.3, viscousLift: 0.5, inducedAndWave: 0.1 } as const;

/** Thickness over chord beyond which no formula here holds. */
const THICKEST = 0.3;

/**
 * What formulas let expect of the wing alone at the full lift.
 *
 * @param split of a design
 * @returns N by speed in m/s; `null` for a wing that is thicker than the formulas know
 * @throws RangeError later, for a speed that is not above zero
 */
export function expectedWing(
  { spec, medium, series, depth }: DragSplit,
): ((speed: number) => ExpectedWing) | null {
  const thicknessRatio = spec.thicknessRatio ?? USUAL_THICKNESS_RATIO;
  if (!(thicknessRatio >= 0 && thicknessRatio <= THICKEST)) return null;
  const { density, kinematicViscosity, gravity } = medium;
  const craft = {
    span: spec.span,
    area: spec.area,
    thicknessRatio,
    struts: { count: 0, chord: 0, thickness: 0 },
    airDragArea: 0,
  };
  const build = dragBuildUp(craft, { density, kinematicViscosity, gravity, depth });
  return (speed: number): ExpectedWing => {
    const { wingFriction, viscousLift, inducedAndWave } = build({
      speed,
      weightInWater: series.fit.data.craft.lift,
    });
    return { frictionAndForm: wingFriction, viscousLift, inducedAndWave };
  };
}
