/**
 * Both ways of carrying uncertainty through a tow side by side, and a word where they part.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import { formatInterval } from "../base/rounding.ts";
import type { TowBothWays, TowDrawn } from "../base/tow-views.ts";
import { type DrawnInterval, drawTow } from "../fit/tow-drawing.ts";
import type { TowEstimate, TowSeries } from "../fit/tow-series.ts";
import { bestLiftToDragEstimate, bestSpeedEstimate } from "../fit/tow-estimates.ts";
import { singleVariance } from "../fit/tow-variance.ts";
import { seededRandom } from "../numeric/random.ts";
import type { PreparedDesignTow } from "./tow-errors.ts";
import { towQuantity } from "./tow-quantity.ts";

/** A design's best point by both ways. */
export interface TowByDrawing {
  readonly answer: TowDrawn;
  readonly findings: readonly Finding[];
}

/**
 * Widths may differ by this much before a word is due. In simulated tows the drawn interval was a quarter wider on average with 8
 * readings, a fifteenth with 21 and a fortieth with 27, since a drawn scatter can be many times the one found.
 */
const TOLERANCE = {
  few: { readings: 8, share: 0.27 },
  many: { readings: 27, share: 0.06 },
} as const;

/** Standard deviation of a drawn interval's width as a share, times the root of the number of draws: normal, ends at 2.5 %. */
const DRAWING_NOISE = 0.96;

/** The middle may move by so much of the width: 1 in 20 simulated tows of 15 readings moved more. */
const SHIFT = 0.25;

/**
 * Share by which widths may differ: on a straight line over the number of readings between the two that were measured, the same
 * beyond both, with twice the noise of the draws in quadrature.
 *
 * @param readings of the design
 * @param draws how many
 * @returns 1
 */
export function drawingTolerance(readings: number, draws: number): number {
  const { few, many } = TOLERANCE;
  const way = (readings - few.readings) / (many.readings - few.readings);
  const share = few.share + Math.min(1, Math.max(0, way)) * (many.share - few.share);
  return Math.hypot(share, 2 * DRAWING_NOISE / Math.sqrt(draws));
}

function bothWays(
  estimate: TowEstimate,
  drawn: DrawnInterval,
  { unit, tolerance }: { readonly unit: string; readonly tolerance: number },
): TowBothWays {
  const plain = singleVariance({ ...estimate, sweepVariance: 0 });
  const firstOrder = towQuantity(plain, unit);
  const [low, high] = [Math.exp(drawn.low), Math.exp(drawn.high)];
  const width = Math.log(firstOrder.high! / firstOrder.low!);
  const widthRatio = (drawn.high - drawn.low) / width;
  const shift = Math.abs((drawn.low + drawn.high) / 2 - estimate.log) / width;
  return {
    firstOrder,
    drawn: {
      value: firstOrder.value,
      standardUncertainty: null,
      degreesOfFreedom: null,
      low,
      high,
      level: 0.95,
      kind: "interval",
      unit,
    },
    widthRatio,
    agree: Math.abs(widthRatio - 1) <= tolerance && shift <= SHIFT,
  };
}

/**
 * The best point of a design by first order and by drawing.
 *
 * @param design its name; also names the random stream, so that the same data give the same answer
 * @param series its fit
 * @param ready its readings and shared errors
 * @param draws how many
 * @returns both intervals and a finding where they part, or `null` where draws give no law
 */
export function towByDrawing(
  design: string,
  series: TowSeries,
  ready: PreparedDesignTow,
  draws: number,
): TowByDrawing | null {
  const best = bestLiftToDragEstimate(series);
  const speed = bestSpeedEstimate(series);
  const random = seededRandom(`tow of ${design}`);
  const drawn = drawTow(series, ready.errors, { random, draws });
  if (best === null || speed === null || drawn === null) return null;
  const tolerance = drawingTolerance(ready.data.readings.length, draws);
  const found = {
    bestLiftToDrag: bothWays(best, drawn.bestLiftToDrag, { unit: "1", tolerance }),
    speedOfBestLiftToDrag: bothWays(speed, drawn.bestSpeed, { unit: "m/s", tolerance }),
  };
  const words = {
    bestLiftToDrag: "best lift-to-drag",
    speedOfBestLiftToDrag: "speed of it",
  } as const;
  const findings = (Object.keys(words) as (keyof typeof words)[]).flatMap((name) => {
    const { firstOrder, drawn, agree } = found[name];
    if (agree) return [];
    const decimals = { ...drawn, standardUncertainty: firstOrder.standardUncertainty };
    return [finding({
      severity: "note",
      code: "first-order-apart",
      file: "tow.csv",
      what: `Two ways of carrying the uncertainty part for the ${words[name]} of ${design}: ${
        formatInterval(firstOrder)
      } by first order, ${formatInterval(decimals)} by drawing.`,
      wanted: "More readings; until then take the wider one.",
    })];
  });
  return { answer: { draws, tolerance, ...found }, findings };
}
