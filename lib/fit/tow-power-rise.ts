/**
 * Whether towing power still rises at a speed, or falls.
 *
 * @module
 */
import { dot, type Three } from "./symmetric-three.ts";
import { towTerms, towTermSlopes } from "./tow-curve.ts";
import { towEstimate } from "./tow-estimates.ts";
import type { TowEstimate, TowSeries } from "./tow-series.ts";

/**
 * Change of ln(drag times speed) with ln(speed), `1 + v D'/D` for a drag D at a speed v: above zero the speed of least power lies lower, below zero higher.
 *
 * Unlike that speed itself it needs no law beyond the speeds towed, so it tells the side of an edge where power is so flat
 * that its dip could lie anywhere.
 *
 * @param series a design's fit
 * @param speed m/s
 * @returns 1, in the place of the logarithm; `null` where the law gives no drag
 */
export function powerRiseEstimate(series: TowSeries, speed: number): TowEstimate | null {
  return towEstimate(series, (fit) => {
    const terms = towTerms(fit, speed), slopes = towTermSlopes(fit, speed);
    const drag = dot(terms, fit.parameters);
    if (!(drag > 0)) return null;
    const steepness = speed * dot(slopes, fit.parameters) / drag;
    const gradient = [0, 1, 2].map((j) =>
      (speed * slopes[j]! - steepness * terms[j]!) / drag
    ) as unknown as Three;
    return { log: 1 + steepness, gradient };
  }, false);
}
