/**
 * How to tow so that a stranger would believe it: steps to print and take along.
 *
 * @module
 */
import type { TableRecord } from "../base/records.ts";
import { listInWords } from "../base/sentence-words.ts";
import { LONG_ENOUGH, STEADY } from "../check/tow-steadiness.ts";
import { textCell } from "./table-cells.ts";
import { left } from "./table-columns.ts";

/** One step: what, how, and where it goes in the tables. */
type Step = readonly [what: string, how: string, goesInto: string];

const STEPS: readonly Step[] = [
  [
    "known weights on the load cell",
    "ashore, on the line and hooks that you tow with: five or more from nothing to the largest pull, up and down again; three of " +
    "them once more after the session",
    "calibrations.csv: applied, applied_unit, reading, reading_unit; when = before or after",
  ],
  [
    "the cell's zero",
    "line slack, before and after each sweep",
    "calibrations.csv: applied empty, reading; sweep",
  ],
  [
    "all that flies",
    "rider, board, struts and wing on the scales, dripping wet, before and after",
    "tow.csv: carried_mass",
  ],
  [
    "speeds",
    "five or more for each design, from just above the slowest flight to well past the speed that feels easiest, in even steps",
    "tow.csv: set_speed, speed",
  ],
  [
    "both ways",
    "each speed up and down at the same throttle, in the order up, down, down, up: the current falls out, and what is left of it " +
    "can be told",
    "tow.csv: direction, speed_over; set_speed_over = water",
  ],
  [
    "in turns",
    "all speeds of one design, then all of the other, then the first again: three such rounds or more on one day with one rider",
    "tow.csv: sweep, block",
  ],
  [
    "beside the wake",
    "foil outside the boat's waves, on a long line: a slope of the water of a tenth of a degree is 3 % of the drag. Try another " +
    "length of line and see whether anything changes",
    "tow.csv: note",
  ],
  [
    "steady windows",
    `${LONG_ENOUGH} s and more at one speed, drifting by less than ${STEADY} m/s each second; pumping, gusts and turns are no reading`,
    "tow.csv: window, speed_change; or many rows of one point, each with its time",
  ],
  [
    "angle of the line",
    "from a photograph or a level, above the horizontal counts as positive",
    "tow.csv: line_angle",
  ],
  [
    "depth of the wing",
    "bands of tape on the strut, seen on the film",
    "tow.csv: depth",
  ],
  [
    "struts alone",
    "once, without the wing, at three speeds and the same depth",
    "tow.csv: design = tare",
  ],
  [
    "what went wrong",
    "written down in its row, on the water: nothing is left out without being told",
    "tow.csv: leave_out",
  ],
];

/**
 * The steps of a day of towing, in order.
 *
 * Common practice, no source; what each step is worth follows from the simulated tows behind the answer.
 *
 * @returns one row a step: what, how, where it is written
 * @example
 * ```ts
 * import { towGuideTable } from "lakeproof/show/tow-guide-table.ts";
 * if (towGuideTable().rows.length < 10) throw new Error("steps are missing");
 * ```
 */
export function towGuideTable(): TableRecord {
  return {
    name: "tow-guide",
    caption:
      "A day of towing, step by step. Weights and zeros come first: once a speed has been towed a few times, the load cell " +
      "limits the answer, not the number of readings.",
    columns: [left("what"), left("how"), left("goes into")],
    rows: STEPS.map((step) => step.map((text) => textCell(text))),
  };
}

/** What to have and to mind before anyone is towed. */
const CAUTIONS: readonly string[] = [
  "Local rules for boats, towing and swimming areas come first; where they ask for a licence, the driver holds one.",
  "A second person in the boat watches the rider and the line the whole time, and says stop.",
  "The line has a quick release at the boat, tried under load before the first pass, within reach of the observer.",
  "Helmet, impact vest and flotation for the rider; a line under load can whip: nobody stands in its way.",
  "Agree on signs for faster, slower, stop. Begin slowly; a foil that lifts too high is let go, not ridden out.",
  "Depth under the struts with a good margin along the whole course and where it turns; nobody else in it.",
  "Cold water takes strength within minutes: dress for it, and stop before anyone tires.",
];

/**
 * Cautions for a day of towing.
 *
 * Common practice, no source. Local rules and people who are qualified come first.
 *
 * @returns one row a caution, the weightiest first
 */
export function towCautionTable(): TableRecord {
  return {
    name: "tow-cautions",
    caption: "Before anyone is towed. Where someone could be hurt, ask people who are qualified.",
    columns: [left("mind")],
    rows: CAUTIONS.map((one) => [textCell(one)]),
  };
}

/**
 * The order of passes for some designs and speeds: each speed up, down, down, up, designs in turns.
 *
 * @param plan designs in order, set speeds in m/s, rounds
 * @returns one row a sweep and design
 * @throws RangeError where there is nothing to tow
 */
export function passOrderTable(
  plan: {
    readonly designs: readonly string[];
    readonly speeds: readonly number[];
    readonly rounds: number;
  },
): TableRecord {
  const { designs, speeds, rounds } = plan;
  if (designs.length === 0 || speeds.length === 0 || !(Number.isInteger(rounds) && rounds > 0)) {
    throw new RangeError("Cannot order passes as a design, a speed and a round are needed");
  }
  const rows = Array.from({ length: rounds }, (_, round) => {
    // The one that went first goes last in the next round.
    const order = round % 2 === 0 ? designs : [...designs].reverse();
    return order.map((design) => [
      textCell(`${round + 1}`),
      textCell(design),
      textCell(listInWords(speeds.map((speed) => speed.toFixed(1)))),
      textCell("up, down, down, up at each"),
    ]);
  }).flat();
  return {
    name: "pass-order",
    caption: "Order of the passes. Read the zero of the load cell before and after each row.",
    columns: [left("sweep"), left("design"), left("set speeds, m/s"), left("passes")],
    rows,
  };
}
