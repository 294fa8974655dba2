/**
 * What passes both ways and a drifting float make of a current together.
 *
 * @module
 */
import type { Condition, TowPoint } from "../base/session.ts";
import type { TowCurrent } from "../base/tow-answer.ts";
import { type CurrentByPasses, currentFromPasses, type Pass } from "../fit/current-from-passes.ts";

/** A row whose speed is over ground. */
export interface GroundRow {
  readonly point: TowPoint;
  /** Place among the rows of tow.csv. */
  readonly order: number;
  readonly sign: 1 | -1 | 0;
}

/** m/s, of a current that nobody knows. Common practice, no source. */
export const UNKNOWN_CURRENT = 0.15;

/** m/s, of a drifting float where nobody states it. Common practice, no source. */
const FLOAT = 0.03;

/** m/s: nobody knows a current better. */
const SURE = 1e-3;

/** Passes whose ground speeds differ both ways by chance alone in one session of a hundred were held by throttle. */
const BY_CHANCE = 0.01;

/** Standard uncertainties within which passes and float agree. */
const AGREE = 2;

/** What passes tell. */
export interface PassesTell extends CurrentByPasses {
  /** True where they can be believed. */
  readonly trusted: boolean;
}

/**
 * Current by the passes of a block.
 *
 * @param here rows of one block
 * @returns what they tell; `null` where no speed was towed both ways, or the driver held the speed over ground
 */
export function passesTell(here: readonly GroundRow[]): PassesTell | null {
  const held = here.filter(({ point, sign }) =>
    sign !== 0 && point.setSpeed !== null && point.setSpeedOver !== "ground"
  );
  const passes = held.map(({ point, order, sign }): Pass => ({
    group: JSON.stringify([point.design, point.setSpeed, point.sweep]),
    sign: sign as 1 | -1,
    time: order,
    speed: point.speed!,
  }));
  const found = currentFromPasses(passes);
  if (!found.ok) return null;
  const stated = held.every((one) => one.point.setSpeedOver === "water");
  return { ...found, trusted: stated || found.pValue < BY_CHANCE };
}

/** A current as far as it is known; 0 with its usual doubt where nothing tells it. */
export interface JoinedCurrent {
  /** m/s at the centre. */
  readonly value: number;
  readonly standardUncertainty: number;
  readonly degreesOfFreedom: number;
  /** Place among the rows. */
  readonly centre: number;
  /** m/s a row. */
  readonly slope: number;
  readonly slopeUncertainty: number;
  readonly origin: TowCurrent["origin"];
  /** m/s between two sources that do not agree; `null` where they do, or one is missing. */
  readonly apart: number | null;
}

/**
 * What the two sources make together.
 *
 * @param passes of a block
 * @param float the condition `current`
 * @param centre place of the middle row
 * @returns the weighted mean where both agree; the float, with their difference as a doubt, where they do not
 */
export function joinedCurrent(
  passes: PassesTell | null,
  float: Condition | null,
  centre: number,
): JoinedCurrent {
  const still = { slope: 0, slopeUncertainty: 0, degreesOfFreedom: Infinity, apart: null, centre };
  const tide = passes === null
    ? still
    : { slope: passes.slope, slopeUncertainty: passes.slopeUncertainty, centre: passes.centre };
  const believed = passes?.trusted ? passes : null;
  if (float === null) {
    return believed === null
      ? { ...still, value: 0, standardUncertainty: UNKNOWN_CURRENT, origin: null }
      : { ...still, ...tide, ...pick(believed), origin: "passes" };
  }
  const floated = {
    value: float.value,
    standardUncertainty: Math.max(SURE, float.uncertainty ?? FLOAT),
  };
  if (believed === null) return { ...still, ...floated, origin: "float" };
  const apart = Math.abs(believed.value - floated.value);
  const both = Math.hypot(believed.standardUncertainty, floated.standardUncertainty);
  if (apart > AGREE * both) {
    return {
      ...still,
      value: floated.value,
      standardUncertainty: Math.hypot(floated.standardUncertainty, apart / Math.sqrt(12)),
      origin: "float",
      apart,
    };
  }
  const weight = (floated.standardUncertainty / both) ** 2;
  return {
    ...still,
    ...tide,
    value: weight * believed.value + (1 - weight) * floated.value,
    standardUncertainty: believed.standardUncertainty * floated.standardUncertainty / both,
    origin: "both",
  };
}

const pick = ({ value, standardUncertainty, degreesOfFreedom }: CurrentByPasses) => ({
  value,
  standardUncertainty,
  degreesOfFreedom,
});
