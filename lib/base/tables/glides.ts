import { choice, date, leaveOut, note, number, type TableContract, text } from "./column.ts";

/** `glides.csv`: one row a free glide. */
export const GLIDES: TableContract = {
  file: "glides.csv",
  key: "run",
  means: "Free glides in the order flown: one row a run.",
  columns: [
    text("run", "Name or number of the run.", true),
    date("date", "Day of the run, as 2031-06-14."),
    text("block", "What is alike within: usually rider and day."),
    text("design", "Name of the design, as in designs.csv.", true),
    number("launch_speed", "speed", "m/s", "Speed when flying has begun, after the splash.", true),
    number("end_speed", "speed", "m/s", "Speed when the glide ended."),
    number("drop", "length", "m", "Height lost between the two speeds."),
    number("distance", "length", "m", "Distance covered between the two.", true),
    number("duration", "time", "s", "Time between the two."),
    number("carried_mass", "mass", "kg", "All that flies: rider, board, struts, wing."),
    number("depth", "length", "m", "Depth of the wing below the surface."),
    choice("ended", ["stalled", "touched", "stopped early"], "How the run ended."),
    leaveOut,
    note,
  ],
};
