import { choice, date, leaveOut, note, number, type TableContract, text } from "./column.ts";

/**
 * `tow.csv`: one row a towed reading, or one row a sample of a logger where `time` is filled.
 *
 * Signs: a pass marked `down` runs with the current, one marked `up` against it. `current` in conditions.csv is above zero
 * where it carries the passes marked `down` along, so that their speed over ground is speed through the water plus current.
 * Two other words serve as well as `up` and `down`; the first one in the table then takes the place of `down`.
 */
export const TOW: TableContract = {
  file: "tow.csv",
  key: "point",
  series: "time",
  means:
    "Towed readings in the order taken: one row a steady window, or several rows of one point, each with its time: the " +
    "samples of a logger.",
  columns: [
    text("point", "Name or number of the reading.", true),
    date("date", "Day of the reading, as 2031-06-14."),
    text("block", "What is alike within: usually rider and day."),
    text("sweep", "One pass through all set speeds."),
    text("design", "Name of the design, or tare for struts alone.", true),
    number("set_speed", "speed", "m/s", "Speed that was aimed at."),
    choice(
      "set_speed_over",
      ["water", "ground"],
      "What the set speed was held by: water (throttle, log) or ground (satellites).",
    ),
    text(
      "direction",
      "Way of the pass: down (with the current), up (against it), or two words of your own.",
    ),
    number("speed", "speed", "m/s", "Mean speed over the window.", true),
    choice("speed_over", ["water", "ground"], "What the speed is measured against."),
    number("speed_change", "acceleration", "m/s2", "How fast the speed drifted over the window."),
    number("line_tension", "force", "N", "Mean pull in the line.", true),
    number("line_angle", "angle", "deg", "Angle of the line above the horizontal."),
    number("depth", "length", "m", "Depth of the wing below the surface."),
    number("pitch", "angle", "deg", "Pitch of the board, bow up."),
    number("carried_mass", "mass", "kg", "All that flies."),
    number("window", "time", "s", "Time averaged over."),
    number("time", "time", "s", "Clock of one sample, where a point has many rows."),
    leaveOut,
    note,
  ],
};
