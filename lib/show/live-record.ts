/**
 * A figure of takeoff, tow force and power that the reader of a page may move.
 *
 * @module
 */
import type { LiveRecord, TableRecord } from "../base/records.ts";
import type { TakeoffEvidence } from "../decide/estimate-takeoff.ts";
import type { FirstOrderValue } from "../fit/takeoff-curve.ts";
import { NARROW, WIDE } from "./drawing-size.ts";
import { liveDrawing } from "./live-drawing.ts";
import { type LiveState, liveStates } from "./live-state.ts";
import { liveControls, type LiveTask } from "./live-task.ts";
import { controlText, firstOrderQuantity, liveSentence } from "./live-words.ts";
import { designCell, intervalCells, textCell } from "./table-cells.ts";
import { left, withEnds } from "./table-columns.ts";
import { bestSpeedsSentence, takeoffSentence } from "./takeoff-sentence.ts";

/** The numbers behind the drawing, one row a design and quantity. */
function numbersTable(states: readonly LiveState[], name: string): TableRecord {
  const row = (state: LiveState, quantity: string, one: FirstOrderValue, unit: string) => [
    designCell(state.design, state.place),
    textCell(quantity),
    ...intervalCells(firstOrderQuantity(one, unit)),
    textCell(unit),
  ];
  return {
    name: `${name}-first-order`,
    caption: "What is drawn, at the published setting, with first-order 95\u00a0% intervals.",
    columns: [left("design"), left("what"), ...withEnds("value"), left("unit")],
    rows: states.flatMap((state) => {
      const { result } = state;
      if (!result.ok) return [];
      return [
        row(state, "stall speed", result.stallSpeed, "m/s"),
        row(state, "takeoff speed", result.takeoffSpeed, "m/s"),
        row(state, "tow force at takeoff", result.towForceAtTakeoff, "N"),
        row(state, "least-drag speed", result.leastDrag.speed, "m/s"),
        row(state, "least drag", result.leastDrag.value, "N"),
        row(state, "least-power speed", result.leastPower.speed, "m/s"),
        row(state, "least power", result.leastPower.value, "W"),
      ];
    }),
  };
}

/**
 * What the browser computes from, out of a takeoff's answer.
 *
 * @param evidence whole
 * @returns crafts, doubts and published words of its designs
 */
export function liveTaskOf({ designs }: TakeoffEvidence): LiveTask {
  return {
    designs: designs.map(({ answer, prepared: { place, craft, doubts } }) => ({
      design: answer.design,
      place,
      craft,
      doubts,
      published: [takeoffSentence(answer), bestSpeedsSentence(answer)]
        .filter((one) => one !== "").join(" "),
    })),
  };
}

/**
 * The record of a live figure, drawn at the published setting.
 *
 * @param evidence of a takeoff, or a task of one's own
 * @param name names the files; "takeoff-live" unless said otherwise
 * @returns plain data; show it with `show`
 * @throws RangeError where there is no design
 *
 * @example
 * ```ts
 * import { USUAL_DOUBTS } from "lakeproof/fit/takeoff-doubts.ts";
 * import { USUAL_CRAFT } from "lakeproof/model/usual-craft.ts";
 * import { liveTakeoff } from "lakeproof/show/live-record.ts";
 * const alder = { design: "alder", place: 1, craft: USUAL_CRAFT, doubts: USUAL_DOUBTS, published: "It flies." };
 * const { controls } = liveTakeoff({ designs: [alder] });
 * if (controls.length !== 5) throw new Error("load, temperature, salinity, depth, area");
 * ```
 */
export function liveTakeoff(
  evidence: TakeoffEvidence | LiveTask,
  name = "takeoff-live",
): LiveRecord {
  const task = "answer" in evidence ? liveTaskOf(evidence) : evidence;
  if (task.designs.length === 0) {
    throw new RangeError("Cannot draw takeoff as there must be a design: none was given");
  }
  const states = liveStates(task);
  const controls = liveControls(task);
  const common = controls.filter((one) => !one.name.startsWith("area-"));
  const setting = common.map((one) => `${one.label.toLowerCase()} ${controlText(one, one.start)}`);
  const drawing = (id: string) => ({ id: `${name}-${id}`, states, before: null });
  return {
    figure: {
      name,
      title: "Tow force and power over speed",
      description: states.map(liveSentence).join(" "),
      caption:
        `As published: ${
          setting.join(", ")
        }. Predicted, not measured. Each curve runs from the stall speed on, at running depth; its band is the first-order 95\u00a0% interval at ` +
        "each speed. A ring is the takeoff, at the greater depth where the board just comes clear; a filled mark is the least " +
        "drag or power. What the board drags before takeoff is not in it." +
        (states.length === 1
          ? ""
          : " Bands may overlap where designs do differ, since most of what is not known is shared."),
      wide: liveDrawing(drawing("wide"), WIDE),
      narrow: liveDrawing(drawing("narrow"), NARROW),
      breakout: false,
      table: numbersTable(states, name),
    },
    legend: "Try another load, water, depth or area",
    controls,
    task,
  };
}
