/**
 * The answer to "from which speed does each design carry me, and what does it take to get there?", as other programs read it.
 *
 * Part of the contract of `answers.ts`: SI units throughout, what can't be told is `null`.
 *
 * @module
 */
import type { AnswerBase } from "./answers.ts";
import type { Quantity } from "./quantity.ts";

/** What all designs are told at. */
export interface TakeoffSetting {
  /** kg, all that flies. */
  readonly mass: number;
  /** K */
  readonly waterTemperature: number;
  /** kg/kg */
  readonly salinity: number;
  /** kg/m3 */
  readonly density: number;
  /** m2/s */
  readonly kinematicViscosity: number;
  /** m/s2 */
  readonly gravity: number;
  /** m above the sea, of the water. */
  readonly altitude: number;
  /** rad of the line above the horizontal. */
  readonly lineAngle: number;
  /** m/s of wind from ahead. */
  readonly headwind: number;
}

/** The speeds that water and air are told in alike; each m/s. */
export interface TakeoffSpeeds {
  /** Slowest steady flight at running depth, board clear of the water, at the largest lift coefficient. */
  readonly stallSpeed: Quantity | null;
  /** Board just clear, at the usable share of the largest lift coefficient, at takeoff depth. */
  readonly takeoffSpeed: Quantity | null;
  /** Best lift-to-drag: the farthest glide. */
  readonly leastDragSpeed: Quantity | null;
  /** Least power: the longest flight, the least effort. */
  readonly leastPowerSpeed: Quantity | null;
}

/** The same wing with the same load in air. */
export interface TakeoffInAir extends TakeoffSpeeds {
  /** m above the sea. */
  readonly altitude: number;
  /** kg/m3 */
  readonly density: number;
  /** At takeoff speed, 1. */
  readonly reynoldsNumber: Quantity | null;
  /** Of the bare wing, 1. */
  readonly bestLiftToDrag: Quantity | null;
  /** W, of the bare wing under this load: to compare with, not to build to. */
  readonly leastPower: Quantity | null;
  /** W/kg: least power over mass. */
  readonly powerPerKilogram: Quantity | null;
}

/** Drag by its parts at one speed, N. */
export interface TakeoffParts {
  /** m/s */
  readonly speed: number;
  /** m of the wing under the surface. */
  readonly depth: number;
  readonly wingFriction: number;
  readonly viscousLift: number;
  /** Induced drag and waves. */
  readonly inducedAndWave: number;
  readonly struts: number;
  readonly spray: number;
  readonly junction: number;
  readonly extra: number;
  readonly air: number;
  readonly total: number;
  /** N along the line. */
  readonly tension: number;
  /** W */
  readonly power: number;
  readonly liftCoefficient: number;
  /** rad of the wing from zero lift. */
  readonly incidence: number;
}

/** What one poorly known input does to a result. */
export interface TakeoffInputShare {
  readonly input: string;
  /** Relative change of the result for one standard uncertainty of the input, with its sign. */
  readonly change: number;
  /** Share of the result's variance, first order; the shares of a result add to 1. */
  readonly share: number;
}

/** What matters most to one result. */
export interface TakeoffShares {
  readonly quantity: string;
  readonly inputs: readonly TakeoffInputShare[];
}

/**
 * Whether a design takes off, in a word. `beyond-tow`: it needs more than the tow gives; `beyond-range`: only faster than
 * anything tows; `not-told`: a number is outside what the formulas know.
 */
export type TakeoffOutcome =
  | "takes-off"
  | "beyond-tow"
  | "beyond-range"
  | "no-speed"
  | "floats"
  | "not-told";

/** Why one design's speeds are what they are: a changed craft, and what that does. */
export interface TakeoffChange {
  /** In words, such as "rougher finish (60 micrometres)". */
  readonly change: string;
  /** Relative changes: 0.02 is two per cent more; `null` where the changed craft has none. */
  readonly takeoffSpeed: number | null;
  readonly towForceAtTakeoff: number | null;
  readonly leastDrag: number | null;
  readonly leastPower: number | null;
}

/** Predicted drag beside the measured, at one speed. */
export interface MeasuredDrag {
  readonly session: string;
  readonly from: "tow" | "glides";
  /** m/s */
  readonly speed: number;
  /** N of lift that both are told at. */
  readonly lift: number;
  /** N */
  readonly measured: Quantity;
  /** N */
  readonly predicted: Quantity;
  /** N: measured less predicted; what sanding or a better junction could buy, and what the model does not know. */
  readonly excess: Quantity;
}

/** What glides that ended in a stall say of the largest lift coefficient. */
export interface MeasuredStall {
  readonly session: string;
  /** m/s, mean end speed of the design's stalled glides. */
  readonly endSpeed: Quantity;
  /** m/s, predicted at the load and depth of those glides. */
  readonly predicted: number;
  /** Of the wing, that would make the two equal, 1. */
  readonly largestLiftCoefficient: Quantity;
}

/** One design's answer. */
export interface DesignTakeoff extends TakeoffSpeeds {
  readonly design: string;
  readonly outcome: TakeoffOutcome;
  /** N/m2: weight over area. */
  readonly wingLoading: Quantity | null;
  /** N along the line at takeoff, without what the board adds before. */
  readonly towForceAtTakeoff: Quantity | null;
  /** On the mean chord, at takeoff speed, 1. */
  readonly reynoldsNumber: Quantity | null;
  readonly inAir: TakeoffInAir | null;
  /** m of the wing under the surface. */
  readonly runningDepth: number;
  /** m, with the board just clear. */
  readonly takeoffDepth: number;
  /** N, at running depth. */
  readonly leastDrag: Quantity | null;
  /** W, at running depth. */
  readonly leastPower: Quantity | null;
  /** True where slower would need still less power, and does not fly. */
  readonly leastPowerAtStall: boolean;
  /** W/kg: least power over mass. */
  readonly powerPerKilogram: Quantity | null;
  /** Of the whole craft, 1. */
  readonly bestLiftToDrag: Quantity | null;
  /** Of the wing alone, without struts, spray, junction and rider, at its own best speed, 1. */
  readonly bestWingLiftToDrag: Quantity | null;
  /** N, at running depth. */
  readonly buoyancy: number | null;
  /** kg that this wing carries in air at the same speed and lift coefficient. */
  readonly liftEqualMass: number | null;
  /** Cavitation number at the least-drag speed, 1. */
  readonly cavitationNumber: number | null;
  /** m/s: stretches that the available pull or power holds; `null` where none was asked about. */
  readonly speedsHeld: readonly (readonly [from: number, to: number])[] | null;
  readonly partsAt: readonly TakeoffParts[];
  readonly whatMattersMost: readonly TakeoffShares[];
  readonly changes: readonly TakeoffChange[];
  readonly measured: readonly MeasuredDrag[];
  readonly measuredStalls: readonly MeasuredStall[];
}

/** One design against the first that flies; candidate over baseline. */
export interface TakeoffComparison {
  readonly baseline: string;
  readonly candidate: string;
  readonly takeoffSpeedRatio: Quantity | null;
  /** Of the tow force at takeoff. */
  readonly towForceRatio: Quantity | null;
  readonly leastDragRatio: Quantity | null;
  readonly leastPowerRatio: Quantity | null;
}

/** A number that stood in because nobody gave it, or a stated doubt. */
export interface TakeoffDefault {
  readonly design: string | null;
  readonly input: string;
  /** SI. */
  readonly value: number;
  readonly unit: string;
  /** Standard uncertainty, in the way that `kind` says. */
  readonly standardUncertainty: number;
  /** `share`: of the value; `offset`: in its unit. */
  readonly kind: "share" | "offset";
  /** True where the session gave the value. */
  readonly stated: boolean;
}

/** The whole answer. */
export interface TakeoffAnswer extends AnswerBase {
  readonly question: "takeoff";
  /** `null` where the load is not known. */
  readonly setting: TakeoffSetting | null;
  readonly designs: readonly DesignTakeoff[];
  readonly comparisons: readonly TakeoffComparison[];
  readonly inputs: readonly TakeoffDefault[];
}
