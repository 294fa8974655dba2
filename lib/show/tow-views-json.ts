/**
 * Further views of a towed design as other programs read them: lift against pitch, the robust view, uncertainty by drawing.
 *
 * @module
 */
import type { TowBothWays, TowDrawn, TowLiftCurve, TowRobust } from "../base/tow-views.ts";
import { type Plain, quantityObject } from "./plain-answer.ts";

/**
 * The lift curve with its keys in order.
 *
 * @param curve of a design, or `null`
 * @returns plain data
 */
export function liftCurveObject(curve: TowLiftCurve | null): Plain | null {
  if (curve === null) return null;
  const { fallsOff } = curve;
  return {
    slope: quantityObject(curve.slope),
    slopePerDegree: quantityObject(curve.slopePerDegree),
    zeroLiftPitch: quantityObject(curve.zeroLiftPitch),
    expectedSlope: quantityObject(curve.expectedSlope),
    from: curve.from,
    to: curve.to,
    fallsOff: fallsOff === null
      ? null
      : { rows: fallsOff.rows, deficit: fallsOff.deficit, pValue: fallsOff.pValue },
    points: curve.points.map((one) => ({
      point: one.point,
      row: one.row,
      pitch: one.pitch,
      pitchUncertainty: one.pitchUncertainty,
      liftCoefficient: one.liftCoefficient,
      liftCoefficientUncertainty: one.liftCoefficientUncertainty,
    })),
  };
}

/**
 * The robust view with its keys in order.
 *
 * @param robust of a design, or `null`
 * @returns plain data
 */
export function robustObject(robust: TowRobust | null): Plain | null {
  return robust === null ? null : {
    bestLiftToDrag: quantityObject(robust.bestLiftToDrag),
    speedOfBestLiftToDrag: quantityObject(robust.speedOfBestLiftToDrag),
    weightedDown: robust.weightedDown.map(({ point, row, weight }) => ({ point, row, weight })),
  };
}

const bothWays = ({ firstOrder, drawn, widthRatio, agree }: TowBothWays): Plain => ({
  firstOrder: quantityObject(firstOrder),
  drawn: quantityObject(drawn),
  widthRatio,
  agree,
});

/**
 * Both ways of carrying uncertainty with their keys in order.
 *
 * @param drawn of a design, or `null`
 * @returns plain data
 */
export function drawnObject(drawn: TowDrawn | null): Plain | null {
  return drawn === null ? null : {
    draws: drawn.draws,
    tolerance: drawn.tolerance,
    bestLiftToDrag: bothWays(drawn.bestLiftToDrag),
    speedOfBestLiftToDrag: bothWays(drawn.speedOfBestLiftToDrag),
  };
}
