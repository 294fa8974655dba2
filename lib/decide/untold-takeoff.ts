/**
 * The answer of a design of which no flight can be told.
 *
 * @module
 */
import type { Quantity } from "../base/quantity.ts";
import type { DesignTakeoff, TakeoffOutcome } from "../base/takeoff-answer.ts";
import { quantityFromLog } from "./log-quantity.ts";
import type { PreparedTakeoff } from "./takeoff-craft.ts";

/**
 * Wing loading: weight over area.
 *
 * @param prepared the design
 * @returns N/m2, with what mass and area are known to
 */
export function wingLoadingOf({ craft, doubts }: PreparedTakeoff): Quantity {
  const share = (key: "mass" | "area") =>
    doubts.find((one) => one.key === key)?.standardUncertainty ?? 0;
  return quantityFromLog({
    log: Math.log(craft.mass * craft.gravity / craft.area),
    variance: share("mass") ** 2 + share("area") ** 2,
    degreesOfFreedom: null,
    unit: "N/m2",
  });
}

/**
 * The answer of a design of which no flight can be told: every number is `null`, and the outcome says why.
 *
 * @param prepared the design
 * @param outcome in a word
 * @returns the answer
 */
export function untoldTakeoff(prepared: PreparedTakeoff, outcome: TakeoffOutcome): DesignTakeoff {
  const { craft, spec } = prepared;
  return {
    design: spec.design,
    outcome,
    wingLoading: wingLoadingOf(prepared),
    stallSpeed: null,
    takeoffSpeed: null,
    leastDragSpeed: null,
    leastPowerSpeed: null,
    towForceAtTakeoff: null,
    reynoldsNumber: null,
    inAir: null,
    runningDepth: craft.runningDepth,
    takeoffDepth: craft.takeoffDepth,
    leastDrag: null,
    leastPower: null,
    leastPowerAtStall: false,
    powerPerKilogram: null,
    bestLiftToDrag: null,
    bestWingLiftToDrag: null,
    buoyancy: null,
    liftEqualMass: null,
    cavitationNumber: null,
    speedsHeld: null,
    partsAt: [],
    whatMattersMost: [],
    changes: [],
    measured: [],
    measuredStalls: [],
  };
}
