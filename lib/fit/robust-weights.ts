/**
 * Weights that let a wild point count for little: those of Student's t with four degrees of freedom.
 *
 * @module
 */

/** How much each point counts, and what the fit's own uncertainty needs. */
export interface RobustWeights {
  /** 1.25 for a point on the law, 1 at one scale off it, under 0.5 from 2.45 scales on. */
  readonly weights: readonly number[];
  /** Standard deviation of the scaled residuals by their median size, not under 1: a few wild points don't move it. */
  readonly scale: number;
  /** Mean slope of what the points pull with by how far they are off: 1 for least squares, 0.79 for normal scatter. */
  readonly steepness: number;
}

/** Degrees of freedom of the t. */
const FREEDOM = 4;

/** Standard deviation of a normal distribution over the median of its absolute values. */
const MEDIAN_TO_DEVIATION = 1.4826;

/**
 * Weights of Student's t by how far each point is off, in units of the points' own scale.
 *
 * Nothing is deleted: a point ten scales off still counts a twentieth. With normal scatter an eighth of the
 * readings' worth is paid for that. One of many rules (Huber's, Tukey's); this one is the likelihood of readings that are
 * now and then much worse than stated.
 *
 * Source: Lange, Little and Taylor, Journal of the American Statistical Association 84 (1989) 881, for the t; median
 * deviation as scale, Huber 1981; both from memory.
 *
 * @param scaled residuals over their stated standard uncertainties
 * @param fixedScale a scale from elsewhere
 * @returns one weight a point, scale, steepness
 *
 * @example
 * ```ts
 * import { robustWeights } from "lakeproof/fit/robust-weights.ts";
 * const { weights, scale } = robustWeights([0.5, -0.6, 0.2, -0.3, 8]);
 * if (scale !== 1 || weights[4]! > 0.1 || weights[2]! < 1.2) throw new Error(`${weights}`);
 * ```
 */
export function robustWeights(scaled: readonly number[], fixedScale?: number): RobustWeights {
  const sizes = scaled.map(Math.abs).sort((one, other) => one - other);
  const half = sizes.length / 2;
  const median = (sizes[Math.ceil(half) - 1]! + sizes[Math.floor(half)]!) / 2;
  const scale = fixedScale ?? Math.max(1, MEDIAN_TO_DEVIATION * median);
  const squares = scaled.map((z) => (z / scale) ** 2);
  const weights = squares.map((one) => (FREEDOM + 1) / (FREEDOM + one));
  const steepness = squares.reduce(
    (sum, one) => sum + (FREEDOM + 1) * (FREEDOM - one) / (FREEDOM + one) ** 2,
    0,
  ) / scaled.length;
  return { weights, scale, steepness };
}

/** Way from step to step: readings that trade places in the median would swing to and fro. */
const WAY = 0.5;

/**
 * Half way from the weights of the last step to those of this one.
 *
 * @param last `null` for the first step
 * @param now by the residuals of this step
 * @returns in between
 */
export function halfWay(last: RobustWeights | null, now: RobustWeights): RobustWeights {
  if (last === null) return now;
  const mix = (from: number, to: number) => from + WAY * (to - from);
  return {
    weights: now.weights.map((one, i) => mix(last.weights[i]!, one)),
    scale: mix(last.scale, now.scale),
    steepness: mix(last.steepness, now.steepness),
  };
}

/**
 * Residuals drawn in to what they pull with: their squares over the degrees of freedom are the variance of a robust fit.
 *
 * Source: Huber, Robust Statistics (1981), 7.6, first of the three covariances; from memory.
 *
 * @param scaled residuals over their stated standard uncertainties
 * @param robust weights and steepness
 * @returns the same, drawn in
 */
export function drawnIn(
  scaled: readonly number[],
  { weights, steepness }: RobustWeights,
): number[] {
  return scaled.map((z, i) => z * weights[i]! / steepness);
}
