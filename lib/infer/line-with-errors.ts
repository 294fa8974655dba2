/**
 * The straight line through points that are uncertain in both coordinates.
 *
 * @module
 */
import type { Result } from "../base/quantity.ts";

/** One point with its standard uncertainties; an uncertainty of 0 means exact. */
export interface UncertainPoint {
  readonly x: number;
  readonly y: number;
  /** Unit of x. */
  readonly xUncertainty: number;
  /** Unit of y. */
  readonly yUncertainty: number;
  /** Correlation of the two errors, -1 to 1; 0 when left out. */
  readonly correlation?: number;
}

/** A line with what it is worth. */
export interface LineWithErrors {
  readonly slope: number;
  readonly intercept: number;
  /** From the stated uncertainties, at the adjusted points. */
  readonly slopeUncertainty: number;
  readonly interceptUncertainty: number;
  readonly covariance: number;
  /** S: sum of squared distances from the line over their variances; about `degreesOfFreedom` when all is as stated. */
  readonly weightedSquares: number;
  readonly degreesOfFreedom: number;
  /** The points moved onto the line, each as its own uncertainties allow. */
  readonly adjusted: readonly { readonly x: number; readonly y: number }[];
}

/** The published example settles in 10 steps; 500 are for points that hardly line up at all. */
const MOST_STEPS = 500;

/** Change of the slope at which it has settled: of its own size, or of its standard uncertainty. */
const SETTLED = { ofSlope: 4e-15, ofUncertainty: 1e-12 } as const;

/**
 * Fits a straight line to points with errors in x and y, by York's unified equations.
 *
 * Ordinary least squares takes x as exact and finds too flat a line when it is not. Here each point counts by its own
 * variance across the line, which depends on the slope, so the slope is found by repeated substitution.
 *
 * Four definitions of the standard errors circulate, and for the same published points they differ (slope: 0.0580,
 * 0.0576 twice, 0.0706). These are those of York and others 2004: from the stated uncertainties alone, evaluated at the
 * **adjusted** points, equal to the least-squares and maximum-likelihood errors. Not those evaluated at the points as
 * observed, not those from the curvature of the sum of squares at the points as observed, and not multiplied by the square
 * root of S over its degrees of freedom; who wants the last multiplies by it.
 *
 * Source: York, Evensen, Martinez and De Basabe Delgado, American Journal of Physics 72 (2004) 367, equation 13.
 *
 * @param points two or more, with their standard uncertainties
 * @returns slope, intercept, their standard uncertainties and covariance, S; or why there is no line
 * @throws RangeError when a number is not finite, an uncertainty negative, or a point exact in both coordinates
 *
 * @example
 * ```ts
 * import { lineWithErrors } from "lakeproof/infer/line-with-errors.ts";
 * import { assertAlmostEqual } from "lakeproof/base/assert.ts";
 * const u = { xUncertainty: 0.1, yUncertainty: 0.2 };
 * const line = lineWithErrors([{ x: 0, y: 1, ...u }, { x: 1, y: 3, ...u }, { x: 2, y: 5, ...u }]);
 * if (!line.ok) throw new Error(line.reason);
 * assertAlmostEqual(line.slope, 2, 1e-12);
 * ```
 */
export function lineWithErrors(points: readonly UncertainPoint[]): Result<LineWithErrors> {
  if (points.length < 2) return { ok: false, reason: "a line needs two points or more" };
  points.forEach(checkPoint);
  const { x: x0, y: y0 } = points[0]!;
  // Moved to the first point: offsets that all points share then cost no digits.
  const moved = points.map((one) => ({ ...one, x: one.x - x0, y: one.y - y0 }));
  let slope = startingSlope(moved);
  if (slope === null) return { ok: false, reason: "all points have the same x: no slope" };
  for (let step = 0; step < MOST_STEPS; step++) {
    const { next, middle, adjustments, weights } = substitute(moved, slope);
    if (!Number.isFinite(next)) return { ok: false, reason: "the points do not fix a slope" };
    const change = Math.abs(next - slope);
    slope = next;
    const xs = adjustments.map((beta) => middle.x + beta);
    const total = sum(weights, () => 1);
    const xMean = sum(weights, (i) => xs[i]!) / total;
    const variance = 1 / sum(weights, (i) => (xs[i]! - xMean) ** 2);
    if (
      change > SETTLED.ofSlope * Math.abs(slope) &&
      change > SETTLED.ofUncertainty * Math.sqrt(variance)
    ) continue;
    const intercept = middle.y - slope * middle.x;
    // Back from the first point to the origin.
    const shift = xMean + x0;
    return {
      ok: true,
      slope,
      intercept: intercept + y0 - slope * x0,
      slopeUncertainty: Math.sqrt(variance),
      interceptUncertainty: Math.sqrt(1 / total + shift ** 2 * variance),
      covariance: -shift * variance,
      weightedSquares: sum(
        weights,
        (i) => (moved[i]!.y - intercept - slope! * moved[i]!.x) ** 2,
      ),
      degreesOfFreedom: points.length - 2,
      adjusted: xs.map((x) => ({ x: x + x0, y: intercept + slope! * x + y0 })),
    };
  }
  return { ok: false, reason: `the slope did not settle in ${MOST_STEPS} steps` };
}

function checkPoint(point: UncertainPoint, index: number): void {
  const { x, y, xUncertainty, yUncertainty, correlation = 0 } = point;
  const finite = [x, y, xUncertainty, yUncertainty].every(Number.isFinite);
  const known = xUncertainty >= 0 && yUncertainty >= 0 && xUncertainty + yUncertainty > 0;
  if (!finite || !known || !(Math.abs(correlation) < 1)) {
    throw new RangeError(
      `Cannot fit a line as point ${
        index + 1
      } needs finite numbers, uncertainties of which one is above zero and a ` +
        `correlation between -1 and 1: ${JSON.stringify(point)}`,
    );
  }
}

const sum = (weights: readonly number[], value: (i: number) => number) =>
  weights.reduce((total, weight, i) => total + weight * value(i), 0);

/** Ordinary least squares of y on x. */
function startingSlope(points: readonly UncertainPoint[]): number | null {
  const ones = points.map(() => 1);
  const x = sum(ones, (i) => points[i]!.x) / points.length;
  const y = sum(ones, (i) => points[i]!.y) / points.length;
  const xx = sum(ones, (i) => (points[i]!.x - x) ** 2);
  return xx > 0 ? sum(ones, (i) => (points[i]!.x - x) * (points[i]!.y - y)) / xx : null;
}

/** One substitution: weights from the slope, the slope from the weights. */
function substitute(points: readonly UncertainPoint[], slope: number) {
  const together = (one: UncertainPoint) =>
    (one.correlation ?? 0) * one.xUncertainty * one.yUncertainty;
  const weights = points.map((one) =>
    1 / (one.yUncertainty ** 2 + slope ** 2 * one.xUncertainty ** 2 - 2 * slope * together(one))
  );
  const total = sum(weights, () => 1);
  const middle = {
    x: sum(weights, (i) => points[i]!.x) / total,
    y: sum(weights, (i) => points[i]!.y) / total,
  };
  const adjustments = points.map((one, i) => {
    const [u, v] = [one.x - middle.x, one.y - middle.y];
    return weights[i]! * (u * one.yUncertainty ** 2 + slope * v * one.xUncertainty ** 2 -
      (slope * u + v) * together(one));
  });
  const next = sum(weights, (i) => adjustments[i]! * (points[i]!.y - middle.y)) /
    sum(weights, (i) => adjustments[i]! * (points[i]!.x - middle.x));
  return { next, middle, adjustments, weights };
}
