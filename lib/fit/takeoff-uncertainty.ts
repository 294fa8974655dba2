/**
 * How uncertain the numbers of a takeoff are: first order in logarithms, and by drawing all inputs.
 *
 * @module
 */
import { sampleQuantile, varianceOf } from "../infer/sample.ts";
import type { SteadyCraft } from "../model/steady-craft.ts";
import { seededRandom } from "../numeric/random.ts";
import { type Doubt, movedCraft } from "./takeoff-doubts.ts";
import {
  airNumbers,
  type Fineness,
  MEDIUM_RESULTS,
  type MediumResult,
  type TakeoffNumbers,
  waterNumbers,
} from "./takeoff-numbers.ts";

/** Computes the numbers of a craft, in whichever medium. */
export type NumbersOf = (craft: SteadyCraft, fineness: Fineness) => TakeoffNumbers;

/** In water. */
export const inWater: NumbersOf = waterNumbers;

/**
 * In air at an altitude in m.
 *
 * @param altitude above the sea, m
 * @returns what a craft needs in air there
 */
export const inAir = (altitude: number): NumbersOf => (craft, fineness) =>
  airNumbers(craft, altitude, fineness);

/** Steps of the central difference, in standard uncertainties. */
const STEP = 0.02;

/** How finely speeds are looked at in a central difference, and in a draw. */
const FINE: Fineness = { points: 100, tolerance: 1e-10 };
const COARSE: Fineness = { points: 48, tolerance: 1e-6, tabulated: true };

/** Relative change of each result for one standard uncertainty of each input. */
export type FirstOrder = Readonly<Record<MediumResult, readonly number[]>>;

/**
 * Relative change of each result for one standard uncertainty of each input.
 *
 * Source: JCGM 100:2008 (GUM), equation 10, in logarithms of the results; central differences.
 *
 * @param craft at best knowledge
 * @param doubts the inputs
 * @param of water or air
 * @returns for each result one change an input, in the order of the inputs; `null` where a step leaves no flight
 *
 * @example
 * ```ts
 * import { firstOrder, inWater } from "lakeproof/fit/takeoff-uncertainty.ts";
 * import { USUAL_DOUBTS } from "lakeproof/fit/takeoff-doubts.ts";
 * import { USUAL_CRAFT } from "lakeproof/model/usual-craft.ts";
 * const changes = firstOrder(USUAL_CRAFT, USUAL_DOUBTS, inWater)!;
 * // A largest lift coefficient 14 % higher lets it take off 6.7 % slower.
 * if (Math.abs(changes.takeoffSpeed[0]! + 0.0667) > 1e-4) throw new Error(`${changes.takeoffSpeed[0]}`);
 * ```
 */
export function firstOrder(
  craft: SteadyCraft,
  doubts: readonly Doubt[],
  of: NumbersOf,
): FirstOrder | null {
  const changes = Object.fromEntries(
    MEDIUM_RESULTS.map((result) => [result, [] as number[]]),
  ) as Record<MediumResult, number[]>;
  for (let i = 0; i < doubts.length; i++) {
    const moves = new Float64Array(doubts.length);
    moves[i] = STEP;
    const up = of(movedCraft(craft, doubts, moves), FINE);
    moves[i] = -STEP;
    const down = of(movedCraft(craft, doubts, moves), FINE);
    if (!up.ok || !down.ok) return null;
    for (const result of MEDIUM_RESULTS) {
      changes[result].push(Math.log(up[result] / down[result]) / (2 * STEP));
    }
  }
  return changes;
}

/** The results of many draws. */
export interface TakeoffDraws {
  /** Each result's draws in rising order; a draw without flight stands at the end as `Infinity`. */
  readonly sorted: Readonly<Record<MediumResult, Float64Array>>;
  readonly draws: number;
  /** Draws in which no speed lifts it, or it floats. */
  readonly failed: number;
}

/**
 * Draws all inputs together, many times.
 *
 * Shares are drawn log-normal, offsets normal; what a formula does not know (a takeoff share above 1, water warmer than 40 degrees) is
 * held at the bound.
 *
 * Source: JCGM 101:2008, clause 7.
 *
 * @param craft at best knowledge
 * @param doubts the inputs
 * @param of water or air
 * @param options `name`: names the stream of random numbers; `draws`: how often, 1000 unless said otherwise
 * @returns sorted results
 */
export function drawTakeoffs(
  craft: SteadyCraft,
  doubts: readonly Doubt[],
  of: NumbersOf,
  options: { readonly name: string; readonly draws?: number },
): TakeoffDraws {
  const draws = options.draws ?? 1000;
  const random = seededRandom(options.name);
  const sorted = Object.fromEntries(
    MEDIUM_RESULTS.map((result) => [result, new Float64Array(draws)]),
  ) as Record<MediumResult, Float64Array>;
  const moves = new Float64Array(doubts.length);
  let failed = 0;
  for (let draw = 0; draw < draws; draw++) {
    for (let i = 0; i < moves.length; i++) moves[i] = random.normal();
    const numbers = of(movedCraft(craft, doubts, moves), COARSE);
    if (!numbers.ok) failed += 1;
    for (const result of MEDIUM_RESULTS) {
      sorted[result][draw] = numbers.ok ? numbers[result] : Infinity;
    }
  }
  for (const result of MEDIUM_RESULTS) sorted[result].sort();
  return { sorted, draws, failed };
}

/** Spread of one result over the draws. */
export interface DrawnSpread {
  /** Standard deviation; `null` where too many draws failed. */
  readonly standardUncertainty: number | null;
  /** 2.5 and 97.5 % points; `null` where a failed draw stands there. */
  readonly low: number | null;
  readonly high: number | null;
}

/**
 * Spread of one result.
 *
 * @param draws from {@link drawTakeoffs}
 * @param result which
 * @returns standard deviation of the draws that fly, and the ends of the 95 % interval
 */
export function spreadOf(
  { sorted, failed, draws }: TakeoffDraws,
  result: MediumResult,
): DrawnSpread {
  const values = [...sorted[result]];
  const flying = values.slice(0, draws - failed);
  const finite = (value: number) => Number.isFinite(value) ? value : null;
  return {
    standardUncertainty: flying.length < draws * 0.975 ? null : Math.sqrt(varianceOf(flying)),
    low: finite(sampleQuantile(values, 0.025)),
    high: finite(sampleQuantile(values, 0.975)),
  };
}
