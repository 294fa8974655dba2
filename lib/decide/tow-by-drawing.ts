/**
 * Both ways of carrying uncertainty through a tow side by side, and a word where they part.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import type { Quantity } from "../base/quantity.ts";
import { formatInterval } from "../base/rounding.ts";
import { type DrawnInterval, drawTow } from "../fit/tow-drawing.ts";
import {
  bestLiftToDragEstimate,
  bestSpeedEstimate,
  type TowEstimate,
  type TowSeries,
} from "../fit/tow-series.ts";
import { singleVariance } from "../fit/tow-variance.ts";
import { seededRandom } from "../numeric/random.ts";
import type { PreparedDesignTow } from "./tow-errors.ts";
import { towQuantity } from "./tow-quantity.ts";

/** One quantity by both ways. Neither holds what single sweeps had of their own, which nobody can draw. */
export interface BothWays {
  readonly firstOrder: Quantity;
  readonly drawn: Quantity;
  /** Width of the drawn interval over the first-order one, on the logarithm. */
  readonly widthRatio: number;
}

/** A design's best point by both ways. */
export interface TowByDrawing {
  readonly bestLiftToDrag: BothWays;
  readonly speedOfBestLiftToDrag: BothWays;
  readonly draws: number;
  readonly findings: readonly Finding[];
}

/**
 * Widths may differ by this much before a word is due. With 8 readings the drawn interval is a fifth wider on average, since a
 * drawn scatter can be many times the one found; with 27 both agree within a few per cent, and 499 draws by as much again.
 */
const TOLERANCE = {
  few: { readings: 8, share: 0.21 },
  many: { readings: 27, share: 0.1 },
} as const;

/** Tolerance for a number of readings, on a straight line between the two that were measured. */
function toleranceFor(readings: number): number {
  const { few, many } = TOLERANCE;
  const way = (readings - few.readings) / (many.readings - few.readings);
  return few.share + Math.min(1, Math.max(0, way)) * (many.share - few.share);
}

function bothWays(estimate: TowEstimate, drawn: DrawnInterval, unit: string): BothWays {
  const plain = singleVariance({ ...estimate, sweepVariance: 0 });
  const firstOrder = towQuantity(plain, unit);
  const [low, high] = [Math.exp(drawn.low), Math.exp(drawn.high)];
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
    widthRatio: (drawn.high - drawn.low) / Math.log(firstOrder.high! / firstOrder.low!),
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
  const found = {
    bestLiftToDrag: bothWays(best, drawn.bestLiftToDrag, "1"),
    speedOfBestLiftToDrag: bothWays(speed, drawn.bestSpeed, "m/s"),
  };
  const tolerance = toleranceFor(ready.data.readings.length);
  const words = {
    bestLiftToDrag: "best lift-to-drag",
    speedOfBestLiftToDrag: "speed of it",
  } as const;
  const findings = (Object.keys(words) as (keyof typeof words)[]).flatMap((name) => {
    const { firstOrder, drawn, widthRatio } = found[name];
    if (Math.abs(widthRatio - 1) <= tolerance) return [];
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
  return { ...found, draws, findings };
}
