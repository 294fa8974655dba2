/**
 * The numbers of a takeoff as quantities with their intervals, in one medium.
 *
 * @module
 */
import type { Quantity } from "../base/quantity.ts";
import type { TakeoffShares } from "../base/takeoff-answer.ts";
import type { Doubt } from "../fit/takeoff-doubts.ts";
import type { MediumNumbers, MediumResult } from "../fit/takeoff-numbers.ts";
import {
  drawTakeoffs,
  type FirstOrder,
  firstOrder,
  type NumbersOf,
  spreadOf,
  type TakeoffDraws,
} from "../fit/takeoff-uncertainty.ts";
import type { SteadyCraft } from "../model/steady-craft.ts";
import { quantityFromLog } from "./log-quantity.ts";

const UNITS: Readonly<Record<MediumResult, string>> = {
  stallSpeed: "m/s",
  takeoffSpeed: "m/s",
  towForceAtTakeoff: "N",
  reynoldsNumber: "1",
  leastDragSpeed: "m/s",
  leastDrag: "N",
  leastPowerSpeed: "m/s",
  leastPower: "W",
  bestLiftToDrag: "1",
  bestWingLiftToDrag: "1",
};

/** Results whose logarithm is close to a straight line in all inputs: first order serves, and needs no draws. */
const STRAIGHT: readonly MediumResult[] = ["stallSpeed", "takeoffSpeed"];

/**
 * Share of the first-order half-width by which both ends may differ. A thousand draws leave an end uncertain by about a
 * twentieth of it; a fifth is the tolerance that towed readings have where they are few.
 */
export const TWO_WAYS_TOLERANCE = 0.2;

/** One result with its interval by first order and by drawing. */
export interface BothWays {
  readonly result: MediumResult;
  readonly firstOrder: Quantity;
  readonly drawn: Quantity;
  /** Whether both ends lie within the tolerance of each other; false where an end could not be drawn. */
  readonly agree: boolean;
}

/** Quantities of one medium, and what they rest on. */
export interface MediumQuantities {
  readonly of: (result: MediumResult) => Quantity;
  /** Every result both ways; none where no first order can be had. */
  readonly bothWays: readonly BothWays[];
  readonly firstOrder: FirstOrder | null;
  readonly draws: TakeoffDraws;
}

function straight(value: number, changes: readonly number[], unit: string): Quantity {
  return quantityFromLog({
    log: Math.log(value),
    variance: changes.reduce((sum, one) => sum + one * one, 0),
    degreesOfFreedom: null,
    unit,
  });
}

function drawn(value: number, draws: TakeoffDraws, result: MediumResult): Quantity {
  const { standardUncertainty, low, high } = spreadOf(draws, result);
  return {
    value,
    standardUncertainty,
    degreesOfFreedom: null,
    low,
    high,
    level: 0.95,
    kind: low !== null && high === null ? "atLeast" : "interval",
    unit: UNITS[result],
  };
}

function bothWays(result: MediumResult, firstOrder: Quantity, other: Quantity): BothWays {
  const half = (firstOrder.high! - firstOrder.low!) / 2;
  const near = (one: number | null, two: number | null) =>
    one !== null && two !== null && Math.abs(one - two) <= TWO_WAYS_TOLERANCE * half;
  const agree = near(firstOrder.low, other.low) && near(firstOrder.high, other.high);
  return { result, firstOrder, drawn: other, agree };
}

/**
 * Quantities of a craft in one medium.
 *
 * Stall and takeoff speed by first order on the logarithm; everything else by drawing all inputs, since the least of a flat curve
 * moves in jumps that no slope foresees. The value is always that at the best-known inputs, not the mean of the draws.
 *
 * @param craft at best knowledge
 * @param numbers of it
 * @param task doubts, medium, name of the random stream, number of draws
 * @returns a quantity for each result
 */
export function mediumQuantities(
  craft: SteadyCraft,
  numbers: MediumNumbers,
  { doubts, medium, name, draws: count }: {
    readonly doubts: readonly Doubt[];
    readonly medium: NumbersOf;
    readonly name: string;
    readonly draws?: number | undefined;
  },
): MediumQuantities {
  const changes = firstOrder(craft, doubts, medium);
  const draws = drawTakeoffs(craft, doubts, medium, {
    name,
    ...(count === undefined ? {} : { draws: count }),
  });
  const all = Object.keys(UNITS) as MediumResult[];
  return {
    bothWays: changes === null ? [] : all.map((result) =>
      bothWays(
        result,
        straight(numbers[result], changes[result], UNITS[result]),
        drawn(numbers[result], draws, result),
      )
    ),
    of: (result) =>
      changes !== null && STRAIGHT.includes(result)
        ? straight(numbers[result], changes[result], UNITS[result])
        : drawn(numbers[result], draws, result),
    firstOrder: changes,
    draws,
  };
}

/** Results that are told apart by their inputs. */
const TOLD = [
  "takeoffSpeed",
  "towForceAtTakeoff",
  "leastDrag",
  "leastPower",
] as const satisfies readonly MediumResult[];

/**
 * What each input does to each result, largest first.
 *
 * @param changes relative changes for one standard uncertainty of each input
 * @param doubts the inputs
 * @returns for each of four results the inputs with their shares of its variance
 */
export function sharesOfDoubt(
  changes: FirstOrder | null,
  doubts: readonly Doubt[],
): TakeoffShares[] {
  if (changes === null) return [];
  return TOLD.map((quantity) => {
    const own = changes[quantity];
    const variance = own.reduce((sum, one) => sum + one * one, 0);
    return {
      quantity,
      inputs: doubts.map(({ name }, i) => ({
        input: name,
        change: own[i]!,
        share: variance > 0 ? own[i]! ** 2 / variance : 0,
      })).filter((one) => one.share > 0).sort((a, b) => b.share - a.share),
    };
  });
}
