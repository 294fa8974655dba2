/**
 * What an instrument's reading means: a straight line through readings against known values.
 *
 * @module
 */
import type { Result } from "../base/quantity.ts";
import { meanOf } from "../infer/sample.ts";
import { linearLeastSquares } from "../numeric/linear-least-squares.ts";

/** One reading against a known value. */
export interface CalibrationPair {
  /** As the instrument shows it. */
  readonly reading: number;
  /** Known value, SI. */
  readonly applied: number;
}

/** A calibration line `value = valueAtCentre + slope (reading - centre)`, whose two numbers are independent. */
export interface CalibrationLine {
  /** Mean reading. */
  readonly centre: number;
  readonly valueAtCentre: number;
  readonly slope: number;
  /** Of the value at the centre, from the scatter about the line: an offset common to all later readings. */
  readonly offsetUncertainty: number;
  /** Of the slope, from the scatter about the line: a scale error common to all later readings. */
  readonly slopeUncertainty: number;
  /** Of the known values themselves, as a share of them: one more scale error, common to all. */
  readonly appliedShare: number;
  readonly residualStandardDeviation: number;
  readonly degreesOfFreedom: number;
  /** Smallest and largest reading of the calibration; beyond them the line is a guess. */
  readonly from: number;
  readonly to: number;
}

/** The same line about another origin, where offset and slope are no longer independent. */
export interface LineAboutOrigin {
  readonly intercept: number;
  readonly slope: number;
  readonly interceptUncertainty: number;
  readonly slopeUncertainty: number;
  readonly covariance: number;
}

/** A reading turned into a value. */
export interface CalibratedValue {
  readonly value: number;
  /** What the calibration leaves open; the reading's own scatter comes on top. */
  readonly standardUncertainty: number;
}

/**
 * Calibration line by ordinary least squares of known values on readings.
 *
 * Centred on the mean reading, offset and slope are independent, so that an answer can carry them as two separate
 * sources; about any other origin their covariance is part of the result (`lineAbout`). Uncertainties come from the
 * scatter about the line, hence at least three pairs.
 *
 * Source: JCGM 100:2008 (GUM), H.3, with its thermometer as check.
 *
 * @param pairs three or more readings at two or more different values
 * @param options `appliedShare`: standard uncertainty of the known values as a share of them, common to all, 1
 * @returns the line, or why there is none
 * @throws RangeError when a number is not finite, or the share is negative
 *
 * @example A load cell under weights of 0, 50, 100 and 150 N
 * ```ts
 * import { calibratedValue, calibrationLine } from "lakeproof/fit/calibration-line.ts";
 * const readings = [0.6, 51.9, 102.8, 153.9];
 * const line = calibrationLine(readings.map((reading, i) => ({ reading, applied: 50 * i })));
 * if (!line.ok) throw new Error(line.reason);
 * const { value, standardUncertainty } = calibratedValue(line, 77.3);
 * if (Math.abs(value - 75) > 0.2 || standardUncertainty > 0.2) throw new Error(`${value}`);
 * ```
 */
export function calibrationLine(
  pairs: readonly CalibrationPair[],
  options: { readonly appliedShare?: number } = {},
): Result<CalibrationLine> {
  const appliedShare = options.appliedShare ?? 0;
  const readings = pairs.map((one) => one.reading);
  if (!readings.every(Number.isFinite) || !(appliedShare >= 0 && appliedShare < Infinity)) {
    throw new RangeError("Cannot calibrate as readings and uncertainties must be finite numbers");
  }
  if (pairs.length < 3) {
    return { ok: false, reason: `a calibration needs three readings; there are ${pairs.length}` };
  }
  const centre = meanOf(readings);
  const fit = linearLeastSquares({
    columns: [readings.map(() => 1), readings.map((reading) => reading - centre)],
    observed: pairs.map((one) => one.applied),
  });
  if (!fit.ok) return fit;
  return {
    ok: true,
    centre,
    valueAtCentre: fit.parameters[0]!,
    slope: fit.parameters[1]!,
    offsetUncertainty: fit.standardErrors[0]!,
    slopeUncertainty: fit.standardErrors[1]!,
    appliedShare,
    residualStandardDeviation: fit.residualStandardDeviation!,
    degreesOfFreedom: fit.degreesOfFreedom,
    from: Math.min(...readings),
    to: Math.max(...readings),
  };
}

/**
 * The line about another origin, with the covariance that this brings.
 *
 * @param line from `calibrationLine`
 * @param origin a reading
 * @returns intercept there, slope, their standard uncertainties and covariance, without the known values' own share
 */
export function lineAbout(line: CalibrationLine, origin: number): LineAboutOrigin {
  const distance = origin - line.centre;
  return {
    intercept: line.valueAtCentre + line.slope * distance,
    slope: line.slope,
    interceptUncertainty: Math.hypot(line.offsetUncertainty, distance * line.slopeUncertainty),
    slopeUncertainty: line.slopeUncertainty,
    covariance: distance * line.slopeUncertainty ** 2,
  };
}

/**
 * A reading turned into a value.
 *
 * @param line from `calibrationLine`
 * @param reading as the instrument shows it
 * @returns value, and what the calibration leaves open about it, in the unit of the known values
 */
export function calibratedValue(line: CalibrationLine, reading: number): CalibratedValue {
  const distance = reading - line.centre;
  const value = line.valueAtCentre + line.slope * distance;
  const standardUncertainty = Math.hypot(
    line.offsetUncertainty,
    distance * line.slopeUncertainty,
    line.appliedShare * value,
  );
  return { value, standardUncertainty };
}
