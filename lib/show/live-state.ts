/**
 * What the library computes for each design at a setting that the reader of a page chose.
 *
 * @module
 */
import { printable } from "../base/printable.ts";
import { type TakeoffCurve, takeoffCurve } from "../fit/takeoff-curve.ts";
import { liveCrafts, type LiveTask } from "./live-task.ts";

/** A design that flies. */
export type LiveFlight = Extract<TakeoffCurve, { readonly ok: true }>;

/** A design at a setting. */
export interface LiveState {
  readonly design: string;
  readonly place: number;
  readonly result: LiveFlight | { readonly ok: false; readonly reason: string };
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
  return task.designs.map(({ design, place, doubts }, at) => {
    const named = { design: printable(design), place };
    try {
      const result = takeoffCurve(crafts[at]!, doubts);
      return {
        ...named,
        result: result.ok ? result : { ok: false, reason: REASONS[result.reason] },
      };
    } catch (fault) {
      if (!(fault instanceof RangeError)) throw fault;
      return { ...named, result: { ok: false, reason: wordsOf(fault) } };
    }
  });
}
