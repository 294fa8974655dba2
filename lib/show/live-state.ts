/**
 * What the library computes for each design at a setting that the reader of a page chose.
 *
 * @module
 */
import { printable } from "../base/printable.ts";
import { formatNumber, NO_BREAK_SPACE } from "../base/rounding.ts";
import { FASTEST, flightFindings } from "../decide/takeoff-findings.ts";
import { type TakeoffCurve, takeoffCurve } from "../fit/takeoff-curve.ts";
import { air } from "../model/air.ts";
import { cavitationNumber } from "../model/cavitation.ts";
import { flightInWater, type SteadyCraft } from "../model/steady-craft.ts";
import { vapourPressure } from "../model/water.ts";
import { liveCrafts, type LiveDesign, type LiveTask } from "./live-task.ts";

/** A design that flies. */
export type LiveFlight = Extract<TakeoffCurve, { readonly ok: true }>;

/** A design at a setting. */
export interface LiveState {
  readonly design: string;
  readonly place: number;
  readonly result: LiveFlight | { readonly ok: false; readonly reason: string };
  /** Where the model stops for it: too near the surface, too slow a flow, waves too steep. */
  readonly warnings: readonly string[];
}

/** Why nothing lifts a craft, in words that end a sentence. */
const REASONS = {
  floats: "the water alone carries the whole load, so it floats",
  "no-speed": "the line pulls down more than the wing can lift, at any speed",
  hangs: "the line carries the load at any speed",
  edge: "it is at the edge of what flies, and a hair more is too much",
} as const;

/** A fault of the numbers in words that end a sentence: what stands behind "as" in the library's messages. */
const wordsOf = (fault: RangeError) => fault.message.replace(/^Cannot .*? as /, "");

/** What the published answer would warn of, had it been asked at this setting. */
function warningsOf(design: string, craft: SteadyCraft, flight: LiveFlight): string[] {
  const { density, kinematicViscosity } = flightInWater(craft);
  const numbers = {
    stallSpeed: flight.stallSpeed.value,
    reynoldsNumber: flight.takeoffSpeed.value * craft.area / craft.span / kinematicViscosity,
  };
  const boiling = cavitationNumber({
    speed: flight.leastDrag.speed.value,
    depth: craft.runningDepth,
    density,
    gravity: craft.gravity,
    vapourPressure: vapourPressure(craft),
    airPressure: air(craft.altitude).pressure,
  });
  return flightFindings({ craft, spec: { design, row: 0 } }, numbers, {
    cavitationNumber: boiling,
  }).map((one) => one.what);
}

function stateOf({ design, place, doubts }: LiveDesign, craft: SteadyCraft): LiveState {
  const named = { design: printable(design), place };
  const refused = (reason: string): LiveState => ({
    ...named,
    result: { ok: false, reason },
    warnings: [],
  });
  try {
    const result = takeoffCurve(craft, doubts);
    if (!result.ok) return refused(REASONS[result.reason]);
    const { value } = result.takeoffSpeed;
    return value > FASTEST
      ? refused(
        `it would take off only at ${
          formatNumber(value, 1)
        }${NO_BREAK_SPACE}m/s, faster than anything tows`,
      )
      : { ...named, result, warnings: warningsOf(design, craft, result) };
  } catch (fault) {
    if (!(fault instanceof RangeError)) throw fault;
    return refused(wordsOf(fault));
  }
}

/**
 * Every design at a setting.
 *
 * @param task designs as published
 * @param values what was moved, by the controls' names, in their units; none for the published setting
 * @returns one state a design, in their order
 */
export function liveStates(
  task: LiveTask,
  values: Readonly<Record<string, number>> = {},
): LiveState[] {
  const crafts = liveCrafts(task, values);
  return task.designs.map((design, at) => stateOf(design, crafts[at]!));
}
