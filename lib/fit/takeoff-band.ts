/**
 * Tow force and power over speed, with the band of everything that is poorly known.
 *
 * @module
 */
import { flightInWater, type SteadyCraft } from "../model/steady-craft.ts";
import { type SteadyCurve, steadyCurve } from "../model/steady-curve.ts";
import { phiTable } from "./phi-table.ts";
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

/** A curve at running depth, phi from a table where there are many. */
function curveOf(craft: SteadyCraft, speeds: ArrayLike<number>, tabulated: boolean): SteadyCurve {
  const { span, runningDepth, gravity } = craft;
  const phi = tabulated ? phiTable({ span, depth: runningDepth }, gravity) : undefined;
  return steadyCurve(flightInWater(craft, runningDepth, phi), speeds);
}

/**
 * Forces over speed at running depth with their first-order band.
 *
 * Source: JCGM 100:2008 (GUM), equation 10, in logarithms; central differences.
 *
 * @param craft at best knowledge
 * @param doubts the inputs
 * @param speeds m/s
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
): TakeoffBand {
  const curve = curveOf(craft, speeds, false);
  const count = curve.speed.length;
  const squares = new Float64Array(count);
  doubts.forEach(({ key }, i) => {
    if (IDLE.includes(key)) return;
    const moves = new Float64Array(doubts.length);
    moves[i] = STEP;
    const up = curveOf(movedCraft(craft, doubts, moves), curve.speed, true);
    moves[i] = -STEP;
    const down = curveOf(movedCraft(craft, doubts, moves), curve.speed, true);
    // On a steep line a moved craft may fly at fewer speeds; those then count as not moved.
    if (up.speed.length < count || down.speed.length < count) return;
    for (let j = 0; j < count; j++) {
      squares[j]! += (Math.log(up.total[j]! / down.total[j]!) / (2 * STEP)) ** 2;
    }
  });
  return { curve, logUncertainty: squares.map(Math.sqrt) };
}
