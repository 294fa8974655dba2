/**
 * Whether an instrument was the same after a session as before: two sets of known values against one line.
 *
 * @module
 */
import type { Result } from "../base/quantity.ts";
import { meanOf } from "../infer/sample.ts";
import { fisherFUpperTail } from "../numeric/distributions.ts";
import { linearLeastSquares } from "../numeric/linear-least-squares.ts";
import type { CalibrationPair } from "./calibration-line.ts";

/** How the second set differs from the first. */
export interface CalibrationChange {
  /** Value by the second set less value by the first, at the mean reading of both. */
  readonly atCentre: number;
  /** Likewise for the slope; 0 where one set has a single reading. */
  readonly slope: number;
  /** Mean reading of both sets. */
  readonly centre: number;
  readonly f: number;
  readonly numerator: number;
  readonly degreesOfFreedom: number;
  /** Of one line for both. */
  readonly pValue: number;
}

/**
 * Tests one calibration line for two sets of known values against a line for each.
 *
 * Source: Chow, Econometrica 28 (1960) 591, from memory; an F test of nested least-squares fits as in any text.
 *
 * @param before readings against known values
 * @param after likewise
 * @returns change and test, or why they can't be compared
 * @throws RangeError when a number is not finite
 *
 * @example A load cell that reads 1 % more after the session, with 0.1 N of scatter
 * ```ts
 * import { calibrationChange } from "lakeproof/fit/calibration-change.ts";
 * const pairs = (scale: number) =>
 *   [0, 40, 80, 120].map((applied, i) => ({ applied, reading: scale * applied + (i % 2 ? 0.1 : -0.1) }));
 * const change = calibrationChange(pairs(1), pairs(1.01));
 * if (!change.ok || !(change.pValue < 0.05)) throw new Error("it changed");
 * ```
 */
export function calibrationChange(
  before: readonly CalibrationPair[],
  after: readonly CalibrationPair[],
): Result<CalibrationChange> {
  if (before.length === 0 || after.length === 0) {
    return { ok: false, reason: "known loads are there on one side of the session only" };
  }
  const pairs = [...before, ...after];
  const centre = meanOf(pairs.map((one) => one.reading));
  const distance = pairs.map((one) => one.reading - centre);
  const late = pairs.map((_, i) => i < before.length ? 0 : 1);
  const common = [pairs.map(() => 1), distance];
  const levels = (set: readonly CalibrationPair[]) => new Set(set.map((one) => one.reading)).size;
  const own = levels(before) > 1 && levels(after) > 1
    ? [late, late.map((one, i) => one * distance[i]!)]
    : [late];
  const observed = pairs.map((one) => one.applied);
  const apart = linearLeastSquares({ columns: [...common, ...own], observed });
  const pooled = linearLeastSquares({ columns: common, observed });
  if (!apart.ok || !pooled.ok) return { ok: false, reason: "there are too few known loads" };
  const scatter = apart.chiSquare / apart.degreesOfFreedom;
  if (!(scatter > 0)) return { ok: false, reason: "the known loads show no scatter" };
  const numerator = own.length;
  const f = Math.max(0, pooled.chiSquare - apart.chiSquare) / numerator / scatter;
  return {
    ok: true,
    atCentre: apart.parameters[2]!,
    slope: apart.parameters[3] ?? 0,
    centre,
    f,
    numerator,
    degreesOfFreedom: apart.degreesOfFreedom,
    pValue: fisherFUpperTail(f, { numerator, denominator: apart.degreesOfFreedom }),
  };
}
