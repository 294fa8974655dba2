/**
 * A figure of takeoff, tow force and power that the reader of a page may move.
 *
 * @module
 */
import type { LiveRecord } from "../base/records.ts";
import { NARROW, WIDE } from "./drawing-size.ts";
import { liveDrawing } from "./live-drawing.ts";
import { liveStates } from "./live-state.ts";
import { liveControls, type LiveTask } from "./live-task.ts";
import { liveSentence } from "./live-words.ts";

/**
 * The record of a live figure, drawn at the published setting.
 *
 * @param task designs and setting
 * @param name names the files; "takeoff" unless said otherwise
 * @returns plain data; show it with `show`
 * @throws RangeError for a task without designs
 */
export function liveTakeoff(task: LiveTask, name = "takeoff"): LiveRecord {
  if (task.designs.length === 0) throw new RangeError("Cannot draw takeoff as there is no design");
  const states = liveStates(task, task.published);
  const sentences = states.map(liveSentence);
  const draw = (id: string) => ({ id: `${name}-${id}`, states, before: null });
  return {
    figure: {
      name,
      title: "Tow force and power over speed",
      description: sentences.join(" "),
      caption:
        `${
          sentences.join(" ")
        } Ring: takeoff, at the depth with the board just clear; filled mark: the least on ` +
        "the curve, which is drawn at running depth from the stall speed on.",
      wide: liveDrawing(draw("wide"), WIDE),
      narrow: liveDrawing(draw("narrow"), NARROW),
      breakout: false,
      table: null,
    },
    legend: "Move it yourself",
    controls: liveControls(task),
    task,
  };
}
