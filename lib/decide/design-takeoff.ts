/**
 * One design's answer: its speeds, forces and powers in water and in air, and what they rest on.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import { printable } from "../base/printable.ts";
import type {
  DesignTakeoff,
  TakeoffInAir,
  TakeoffOutcome,
  TakeoffParts,
} from "../base/takeoff-answer.ts";
import { type TakeoffBand, takeoffBand } from "../fit/takeoff-band.ts";
import { airNumbers, type TakeoffNumbers, waterNumbers } from "../fit/takeoff-numbers.ts";
import { type FirstOrder, inAir, inWater } from "../fit/takeoff-uncertainty.ts";
import { air } from "../model/air.ts";
import { cavitationNumber } from "../model/cavitation.ts";
import {
  flightInAir,
  flightInWater,
  type SteadyCraft,
  type SteadyFlight,
} from "../model/steady-craft.ts";
import { evenSpeeds, type SteadyCurve, steadyCurve } from "../model/steady-curve.ts";
import { incidenceFromZeroLift } from "../model/surface-lift.ts";
import { speedsHeld } from "../model/steady-speeds.ts";
import { vapourPressure } from "../model/water.ts";
import { takeoffChanges } from "./takeoff-changes.ts";
import type { PreparedTakeoff } from "./takeoff-craft.ts";
import { FASTEST, flightFindings, outcomeFindings, takeoffPower } from "./takeoff-findings.ts";
import type { MeasuredSession } from "./takeoff-measured.ts";
import {
  type BothWays,
  type MediumQuantities,
  mediumQuantities,
  sharesOfDoubt,
} from "./takeoff-quantities.ts";
import type { TakeoffOptions } from "./takeoff-setting.ts";
import { untoldTakeoff, wingLoadingOf } from "./untold-takeoff.ts";

/** One design with everything behind its answer. */
export interface TakeoffDesign {
  readonly answer: DesignTakeoff;
  readonly prepared: PreparedTakeoff;
  /** Tow force and power over speed in water, from stall on; `null` where nothing flies. */
  readonly band: TakeoffBand | null;
  /** Relative change of each result for one standard uncertainty of each doubt; `null` where nothing flies. */
  readonly changes: FirstOrder | null;
  /** Results in water with their intervals by first order and by drawing; none where nothing flies. */
  readonly bothWays: readonly BothWays[];
  /** The same wing in air; `null` where nothing flies. */
  readonly airCurve: SteadyCurve | null;
  readonly findings: readonly Finding[];
}

/** Speeds of a drawn curve. */
const CURVE = 81;

function partsAt(flight: SteadyFlight, speed: number): TakeoffParts[] {
  const state = flight.at(speed);
  if (state === null) return [];
  return [{
    speed,
    depth: flight.depth,
    wingFriction: state.wingFriction,
    viscousLift: state.viscousLift,
    inducedAndWave: state.inducedAndWave,
    struts: state.struts,
    spray: state.spray,
    junction: state.junction,
    extra: state.extra,
    air: state.air,
    total: state.total,
    tension: state.tension,
    power: state.power,
    liftCoefficient: state.liftCoefficient,
    incidence: incidenceFromZeroLift({
      ...flight.craft,
      liftCoefficient: state.liftCoefficient,
      phi: state.phi,
      depth: flight.depth,
    }),
  }];
}

function outcomeOf(
  numbers: TakeoffNumbers,
  craft: SteadyCraft,
  { pull, power }: TakeoffOptions,
): TakeoffOutcome {
  if (!numbers.ok) return numbers.reason === "floats" ? "floats" : "no-speed";
  if (numbers.takeoffSpeed > FASTEST) return "beyond-range";
  const beyond = pull !== undefined
    ? numbers.towForceAtTakeoff > pull
    : power !== undefined && takeoffPower(numbers, craft) > power;
  return beyond ? "beyond-tow" : "takes-off";
}

function untold(
  prepared: PreparedTakeoff,
  outcome: TakeoffOutcome,
  findings: readonly Finding[],
): TakeoffDesign {
  return {
    answer: untoldTakeoff(prepared, outcome),
    prepared,
    band: null,
    changes: null,
    bothWays: [],
    airCurve: null,
    findings: [...prepared.findings, ...findings],
  };
}

/** A quantity over the mass: the mass's own doubt is in the draws of the quantity already, so only the scale changes. */
function perKilogram(of: MediumQuantities, mass: number) {
  const { value, standardUncertainty, low, high, ...rest } = of.of("leastPower");
  const scaled = (one: number | null) => one === null ? null : one / mass;
  return {
    ...rest,
    value: value / mass,
    standardUncertainty: scaled(standardUncertainty),
    low: scaled(low),
    high: scaled(high),
    unit: "W/kg",
  };
}

function inAirOf(
  prepared: PreparedTakeoff,
  altitude: number,
  draws: number | undefined,
): TakeoffInAir | null {
  const { craft, doubts, spec } = prepared;
  const numbers = airNumbers(craft, altitude);
  if (!numbers.ok) return null;
  const name = `takeoff of ${spec.design} in air`;
  const own = mediumQuantities(craft, numbers, { doubts, medium: inAir(altitude), name, draws });
  return {
    altitude,
    stallSpeed: own.of("stallSpeed"),
    takeoffSpeed: own.of("takeoffSpeed"),
    leastDragSpeed: own.of("leastDragSpeed"),
    leastPowerSpeed: own.of("leastPowerSpeed"),
    density: air(altitude).density,
    reynoldsNumber: own.of("reynoldsNumber"),
    bestLiftToDrag: own.of("bestLiftToDrag"),
    leastPower: own.of("leastPower"),
    powerPerKilogram: perKilogram(own, craft.mass),
  };
}

/** Speeds from stall to well past the best one. */
function speedsOf({ stallSpeed, leastDragSpeed }: { stallSpeed: number; leastDragSpeed: number }) {
  return evenSpeeds(stallSpeed, Math.max(1.7 * leastDragSpeed, 2 * stallSpeed), CURVE);
}

/**
 * One design's answer.
 *
 * @param prepared the design made ready
 * @param options what the asker set
 * @param measured drags and stalls of a design that were measured, with the predicted beside them
 * @returns answer, curves, findings
 */
export function designTakeoff(
  prepared: PreparedTakeoff,
  options: TakeoffOptions,
  measured: MeasuredSession = { drags: () => [], stalls: () => [] },
): TakeoffDesign {
  const { craft, doubts, spec } = prepared;
  let numbers: TakeoffNumbers;
  try {
    numbers = waterNumbers(craft);
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return untold(prepared, "not-told", [finding({
      severity: "error",
      code: "not-told",
      file: "designs.csv",
      row: spec.row,
      what: `Nothing can be told of ${printable(spec.design)}. ${error.message}.`,
    })]);
  }
  const outcome = outcomeOf(numbers, craft, options);
  const told = outcomeFindings(prepared, outcome, numbers, options);
  if (!numbers.ok) return untold(prepared, outcome, told);
  const name = `takeoff of ${spec.design} in water`;
  const { draws, pull, power } = options;
  const own = mediumQuantities(craft, numbers, { doubts, medium: inWater, name, draws });
  const running = flightInWater(craft);
  const rising = flightInWater(craft, craft.takeoffDepth);
  const altitude = options.altitude ?? craft.altitude;
  const aloft = inAirOf(prepared, altitude, draws);
  const cavitation = cavitationNumber({
    speed: numbers.leastDragSpeed,
    depth: craft.runningDepth,
    density: running.density,
    gravity: craft.gravity,
    vapourPressure: vapourPressure(craft),
    airPressure: air(craft.altitude).pressure,
  });
  const answer: DesignTakeoff = {
    design: spec.design,
    outcome,
    wingLoading: wingLoadingOf(prepared),
    stallSpeed: own.of("stallSpeed"),
    takeoffSpeed: own.of("takeoffSpeed"),
    leastDragSpeed: own.of("leastDragSpeed"),
    leastPowerSpeed: own.of("leastPowerSpeed"),
    towForceAtTakeoff: own.of("towForceAtTakeoff"),
    reynoldsNumber: own.of("reynoldsNumber"),
    inAir: aloft,
    runningDepth: craft.runningDepth,
    takeoffDepth: craft.takeoffDepth,
    leastDrag: own.of("leastDrag"),
    leastPower: own.of("leastPower"),
    leastPowerAtStall: numbers.leastPowerAtStall,
    powerPerKilogram: perKilogram(own, craft.mass),
    bestLiftToDrag: own.of("bestLiftToDrag"),
    bestWingLiftToDrag: own.of("bestWingLiftToDrag"),
    buoyancy: running.buoyancy,
    liftEqualMass: running.load / craft.gravity * air(altitude).density / running.density,
    cavitationNumber: cavitation,
    speedsHeld: pull !== undefined
      ? speedsHeld(running, numbers.stallSpeed, { tension: pull })
      : power !== undefined
      ? speedsHeld(running, numbers.stallSpeed, { power })
      : null,
    partsAt: [
      ...partsAt(rising, numbers.takeoffSpeed),
      ...partsAt(running, numbers.leastDragSpeed),
      ...partsAt(running, 1.5 * numbers.leastDragSpeed),
    ],
    whatMattersMost: sharesOfDoubt(own.firstOrder, doubts),
    changes: takeoffChanges(craft, numbers),
    measured: measured.drags(prepared),
    measuredStalls: measured.stalls(prepared),
  };
  const airSpeeds = aloft === null || aloft.stallSpeed === null || aloft.leastDragSpeed === null
    ? null
    : speedsOf({
      stallSpeed: aloft.stallSpeed.value,
      leastDragSpeed: aloft.leastDragSpeed.value,
    });
  return {
    answer,
    prepared,
    changes: own.firstOrder,
    bothWays: own.bothWays,
    band: takeoffBand(craft, doubts, speedsOf(numbers)),
    airCurve: airSpeeds === null ? null : steadyCurve(flightInAir(craft, altitude), airSpeeds),
    findings: [...prepared.findings, ...told, ...flightFindings(prepared, numbers, answer)],
  };
}
