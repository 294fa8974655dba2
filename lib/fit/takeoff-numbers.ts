/**
 * The numbers of a takeoff at one set of inputs: speeds, forces, powers in water and in air.
 *
 * @module
 */
import type { Result } from "../base/quantity.ts";
import {
  flightInAir,
  flightInWater,
  type SteadyCraft,
  type SteadyFlight,
} from "../model/steady-craft.ts";
import { dips, scanSpeeds } from "../model/steady-dips.ts";
import { slowestSpeed } from "../model/steady-speeds.ts";
import { phiTable } from "./phi-table.ts";

/** Results that both media have. */
export interface MediumNumbers {
  /** m/s */
  readonly stallSpeed: number;
  /** m/s */
  readonly takeoffSpeed: number;
  /** N */
  readonly towForceAtTakeoff: number;
  /** At takeoff, 1. */
  readonly reynoldsNumber: number;
  /** m/s */
  readonly leastDragSpeed: number;
  /** N */
  readonly leastDrag: number;
  /** m/s */
  readonly leastPowerSpeed: number;
  /** W */
  readonly leastPower: number;
  /** Load over least drag of the whole craft, 1. */
  readonly bestLiftToDrag: number;
  /** Of the wing alone, at its own best speed, 1. */
  readonly bestWingLiftToDrag: number;
}

/** Names of the results. */
export const MEDIUM_RESULTS = [
  "stallSpeed",
  "takeoffSpeed",
  "towForceAtTakeoff",
  "reynoldsNumber",
  "leastDragSpeed",
  "leastDrag",
  "leastPowerSpeed",
  "leastPower",
  "bestLiftToDrag",
  "bestWingLiftToDrag",
] as const satisfies readonly (keyof MediumNumbers)[];

/** One of them. */
export type MediumResult = typeof MEDIUM_RESULTS[number];

/** How the takeoff came out. */
export type TakeoffNumbers = Result<
  MediumNumbers & { readonly leastPowerAtStall: boolean }
>;

const REASONS = {
  floats: "floats",
  none: "no-speed",
  hangs: "hangs",
} as const;

/** How finely speeds are looked at. */
export interface Fineness {
  /** Speeds of the scan; 200 unless said otherwise. */
  readonly points?: number;
  /** Relative tolerance of a dip's speed; 1e-12 unless said otherwise. */
  readonly tolerance?: number;
  /** Takes phi from a table (2e-6 of it up to 2 m of span, 1.4e-5 at 4 m), for the many speeds of many draws. */
  readonly tabulated?: boolean;
}

function numbersOf(
  running: SteadyFlight,
  rising: SteadyFlight,
  { points, tolerance }: Fineness,
): TakeoffNumbers {
  const slow = slowestSpeed(running);
  if (slow.kind !== "speed") return { ok: false, reason: REASONS[slow.kind] };
  const off = slowestSpeed(rising, rising.craft.usableShare);
  if (off.kind !== "speed") return { ok: false, reason: REASONS[off.kind] };
  const there = rising.at(off.speed)!;
  const scan = scanSpeeds(running, slow.speed, points);
  const [drag] = dips(scan, "total", tolerance);
  const [power] = dips(scan, "power", tolerance);
  const [wing] = dips(scan, "wingDragOverLift", tolerance);
  return {
    ok: true,
    stallSpeed: slow.speed,
    takeoffSpeed: off.speed,
    towForceAtTakeoff: there.tension,
    reynoldsNumber: there.reynolds,
    leastDragSpeed: drag!.speed,
    leastDrag: drag!.value,
    leastPowerSpeed: power!.speed,
    leastPower: power!.value,
    leastPowerAtStall: power!.atStall,
    bestLiftToDrag: running.load / drag!.value,
    bestWingLiftToDrag: 1 / wing!.value,
  };
}

/**
 * Speeds, forces and powers of a craft in water.
 *
 * @param craft all numbers
 * @param options how finely speeds are looked at
 * @returns the numbers, or `floats`, `no-speed` (none lifts it), `hangs` (the line carries it)
 *
 * @example
 * ```ts
 * import { waterNumbers } from "lakeproof/fit/takeoff-numbers.ts";
 * import { USUAL_CRAFT } from "lakeproof/model/usual-craft.ts";
 * const numbers = waterNumbers(USUAL_CRAFT);
 * if (!(numbers.ok && numbers.takeoffSpeed > numbers.stallSpeed)) throw new Error("takeoff is faster than stall");
 * ```
 */
export function waterNumbers(craft: SteadyCraft, options: Fineness = {}): TakeoffNumbers {
  const { span, runningDepth, takeoffDepth, gravity } = craft;
  const phi = options.tabulated ? phiTable({ span, depth: runningDepth }, gravity) : undefined;
  const running = flightInWater(craft, runningDepth, phi);
  return numbersOf(running, flightInWater(craft, takeoffDepth), options);
}

/**
 * The same of the bare wing under the same load in air.
 *
 * @param craft all numbers
 * @param altitude m above the sea
 * @param options how finely speeds are looked at
 * @returns the numbers, or why there are none
 */
export function airNumbers(
  craft: SteadyCraft,
  altitude: number,
  options: Fineness = {},
): TakeoffNumbers {
  const flight = flightInAir(craft, altitude);
  return numbersOf(flight, flight, options);
}
