/**
 * The answer on takeoff as other programs read it: keys in a fixed order, numbers to 12 significant digits.
 *
 * @module
 */
import type {
  DesignTakeoff,
  TakeoffAnswer,
  TakeoffInAir,
  TakeoffSetting,
  TakeoffSpeeds,
} from "../base/takeoff-answer.ts";
import { headObject, type Plain, quantityObject, rounded } from "./plain-answer.ts";

/** A flat record as it stands: its keys were written in the contract's order where it was made. */
const flat = (one: object): Plain => ({ ...one }) as Plain;

function speeds(one: TakeoffSpeeds): Readonly<Record<string, Plain>> {
  return {
    stallSpeed: quantityObject(one.stallSpeed),
    takeoffSpeed: quantityObject(one.takeoffSpeed),
    leastDragSpeed: quantityObject(one.leastDragSpeed),
    leastPowerSpeed: quantityObject(one.leastPowerSpeed),
  };
}

function inAir(one: TakeoffInAir | null): Plain {
  if (one === null) return null;
  return {
    altitude: one.altitude,
    ...speeds(one),
    density: one.density,
    reynoldsNumber: quantityObject(one.reynoldsNumber),
    bestLiftToDrag: quantityObject(one.bestLiftToDrag),
    leastPower: quantityObject(one.leastPower),
    powerPerKilogram: quantityObject(one.powerPerKilogram),
  };
}

function setting(one: TakeoffSetting | null): Plain {
  if (one === null) return null;
  return {
    mass: one.mass,
    waterTemperature: one.waterTemperature,
    salinity: one.salinity,
    density: one.density,
    kinematicViscosity: one.kinematicViscosity,
    gravity: one.gravity,
    altitude: one.altitude,
    lineAngle: one.lineAngle,
    headwind: one.headwind,
  };
}

function design(one: DesignTakeoff): Plain {
  return {
    design: one.design,
    outcome: one.outcome,
    wingLoading: quantityObject(one.wingLoading),
    ...speeds(one),
    towForceAtTakeoff: quantityObject(one.towForceAtTakeoff),
    reynoldsNumber: quantityObject(one.reynoldsNumber),
    inAir: inAir(one.inAir),
    runningDepth: one.runningDepth,
    takeoffDepth: one.takeoffDepth,
    leastDrag: quantityObject(one.leastDrag),
    leastPower: quantityObject(one.leastPower),
    leastPowerAtStall: one.leastPowerAtStall,
    powerPerKilogram: quantityObject(one.powerPerKilogram),
    bestLiftToDrag: quantityObject(one.bestLiftToDrag),
    bestWingLiftToDrag: quantityObject(one.bestWingLiftToDrag),
    buoyancy: one.buoyancy,
    liftEqualMass: one.liftEqualMass,
    cavitationNumber: one.cavitationNumber,
    speedsHeld: one.speedsHeld === null ? null : one.speedsHeld.map((held) => [...held]),
    partsAt: one.partsAt.map(flat),
    whatMattersMost: one.whatMattersMost.map(({ quantity, inputs }) => ({
      quantity,
      inputs: inputs.map(({ input, change, share }) => ({ input, change, share })),
    })),
    changes: one.changes.map(flat),
    measured: one.measured.map((each) => ({
      session: each.session,
      from: each.from,
      speed: each.speed,
      lift: each.lift,
      measured: quantityObject(each.measured),
      predicted: quantityObject(each.predicted),
      excess: quantityObject(each.excess),
    })),
    measuredStalls: one.measuredStalls.map((each) => ({
      session: each.session,
      endSpeed: quantityObject(each.endSpeed),
      predicted: each.predicted,
      largestLiftCoefficient: quantityObject(each.largestLiftCoefficient),
    })),
  };
}

/**
 * A takeoff answer as a plain object with keys in the contract's order and numbers rounded.
 *
 * @param answer as decided
 * @param versions software that made it, by name; what the answer already holds is kept
 * @returns a new object that `JSON.stringify` turns into the same bytes each time
 * @throws RangeError when a number is not finite, with its path
 * @example
 * ```ts
 * import { estimateTakeoff } from "lakeproof/decide/estimate-takeoff.ts";
 * import { readSession } from "lakeproof/read/read-session.ts";
 * import { takeoffAnswerObject } from "lakeproof/show/takeoff-json.ts";
 * const answer = takeoffAnswerObject(estimateTakeoff(readSession("lake", new Map())).answer);
 * if (Object.keys(answer)[1] !== "question") throw new Error("order of keys");
 * ```
 */
export function takeoffAnswerObject(
  answer: TakeoffAnswer,
  versions: Readonly<Record<string, string>> = {},
): TakeoffAnswer {
  const ordered: Plain = {
    ...headObject(answer, versions),
    setting: setting(answer.setting),
    designs: answer.designs.map(design),
    comparisons: answer.comparisons.map((one) => ({
      baseline: one.baseline,
      candidate: one.candidate,
      takeoffSpeedRatio: quantityObject(one.takeoffSpeedRatio),
      towForceRatio: quantityObject(one.towForceRatio),
      leastDragRatio: quantityObject(one.leastDragRatio),
      leastPowerRatio: quantityObject(one.leastPowerRatio),
    })),
    inputs: answer.inputs.map(flat),
  };
  return rounded(ordered, "") as unknown as TakeoffAnswer;
}
