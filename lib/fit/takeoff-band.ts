/**
 * Tow force and power over speed, with the band of everything that is poorly known.
 *
 * @module
 */
import { flightInWater, type SteadyCraft, type SteadyFlight } from "../model/steady-craft.ts";
import { type SteadyCurve, steadyCurve } from "../model/steady-curve.ts";
import { type PhiOf, sharedPhi } from "./shared-phi.ts";
import { type Doubt, movedCraft } from "./takeoff-doubts.ts";

/** A curve with its 95 % band, speed by speed. */
export interface TakeoffBand {
  readonly curve: SteadyCurve;
  /** Standard uncertainty of the logarithm of tow force and of power, at each speed: the speed itself is given, so they share it. */
  readonly logUncertainty: Float64Array;
}

/** Inputs that a force at a given speed does not depend on. */
const IDLE: readonly (keyof SteadyCraft)[] = [
  "largestLiftCoefficient",
  "usableShare",
  "liftExponent",
  "takeoffDepth",
];

/** Half width of 95 % of a normal distribution, in standard deviations. */
export const NORMAL_95 = 1.959964;

/** Step of the difference, in standard uncertainties. */
const STEP = 0.05;

/** A craft at running depth. */
function runningFlight(craft: SteadyCraft, phiOf: PhiOf): SteadyFlight {
  const { runningDepth } = craft;
  return flightInWater(craft, runningDepth, phiOf(craft, runningDepth));
}

/**
 * Forces over speed at running depth with their first-order band.
 *
 * Source: JCGM 100:2008 (GUM), equation 10, in logarithms; central differences.
 *
 * @param craft at best knowledge
 * @param doubts the inputs
 * @param speeds m/s
 * @param phiOf free-surface factors that are there already
 * @returns the curve, and the standard uncertainty of ln force at each of its speeds
 *
 * @example
 * ```ts
 * import { takeoffBand } from "lakeproof/fit/takeoff-band.ts";
 * import { USUAL_DOUBTS } from "lakeproof/fit/takeoff-doubts.ts";
 * import { USUAL_CRAFT } from "lakeproof/model/usual-craft.ts";
 * const { logUncertainty } = takeoffBand(USUAL_CRAFT, USUAL_DOUBTS, [3.5, 5]);
 * if (!(logUncertainty[0]! > 0.04 && logUncertainty[0]! < 0.12)) throw new Error(`${logUncertainty[0]}`);
 * ```
 */
export function takeoffBand(
  craft: SteadyCraft,
  doubts: readonly Doubt[],
  speeds: ArrayLike<number>,
  phiOf: PhiOf = sharedPhi(),
): TakeoffBand {
  const curve = steadyCurve(runningFlight(craft, phiOf), speeds);
  const count = curve.speed.length;
  const squares = new Float64Array(count);
  const own = new Float64Array(count);
  for (const [i, { key }] of doubts.entries()) {
    if (IDLE.includes(key)) continue;
    const moves = new Float64Array(doubts.length);
    moves[i] = STEP;
    const up = runningFlight(movedCraft(craft, doubts, moves), phiOf);
    moves[i] = -STEP;
    const down = runningFlight(movedCraft(craft, doubts, moves), phiOf);
    for (let j = 0; j < count; j++) {
      const [more, less] = [up.at(curve.speed[j]!), down.at(curve.speed[j]!)];
      own[j] = more === null || less === null
        ? NaN
        : (Math.log(more.total / less.total) / (2 * STEP)) ** 2;
    }
    // On a steep line a moved craft may fly at fewer speeds; those then count as not moved.
    if (own.some(Number.isNaN)) continue;
    for (let j = 0; j < count; j++) squares[j]! += own[j]!;
  }
  return { curve, logUncertainty: squares.map(Math.sqrt) };
}
