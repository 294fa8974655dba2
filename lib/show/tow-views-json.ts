/**
 * Further views of a towed design as other programs read them: lift against pitch.
 *
 * @module
 */
import type { TowLiftCurve } from "../base/tow-answer.ts";
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
