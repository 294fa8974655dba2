/**
 * The tables of a session folder, column by column: the one place that says what may stand where.
 *
 * Reading, checking, the descriptor, the empty tables of a new session and its glossary all follow from this.
 *
 * @module
 */

/** What kind of thing a column holds. Numbers carry a dimension that fixes which units may stand behind the name. */
export type ColumnKind = "text" | "number" | "date" | "choice";

/** What a number measures; decides which units fit. */
export type Dimension =
  | "speed"
  | "acceleration"
  | "length"
  | "area"
  | "volume"
  | "mass"
  | "force"
  | "power"
  | "time"
  | "angle"
  | "temperature"
  | "salinity"
  | "ratio";

/** One column of a table. */
export interface Column {
  /** Name in the file's header, without unit. */
  readonly name: string;
  readonly kind: ColumnKind;
  readonly required: boolean;
  /** For numbers only. */
  readonly dimension?: Dimension;
  /** Default unit of the file (not always SI), for numbers only; `1` for ratios. */
  readonly unit?: string;
  /** For choices only. */
  readonly choices?: readonly string[];
  /** One sentence for the glossary. */
  readonly means: string;
}

/** One table of a session folder. */
export interface TableContract {
  readonly file: string;
  /** Column whose values must not repeat. */
  readonly key: string | null;
  /** Column that, where it is filled, lets the key repeat: the rows of one key are then one series. */
  readonly series?: string;
  readonly columns: readonly Column[];
  readonly means: string;
}

const text = (name: string, means: string, required = false): Column => ({
  name,
  kind: "text",
  required,
  means,
});

const date = (name: string, means: string): Column => ({
  name,
  kind: "date",
  required: false,
  means,
});

const number = (
  name: string,
  dimension: Dimension,
  unit: string,
  means: string,
  required = false,
): Column => ({ name, kind: "number", dimension, unit, required, means });

const choice = (name: string, choices: readonly string[], means: string): Column => ({
  name,
  kind: "choice",
  choices,
  required: false,
  means,
});

const note = text("note", "Anything worth remembering.");
const leaveOut = text(
  "leave_out",
  "Your reason, if you want this row left out; empty keeps it in.",
);

/** `designs.csv`: what was built. */
export const DESIGNS: TableContract = {
  file: "designs.csv",
  key: "design",
  means: "What was built: one row a design.",
  columns: [
    text("design", "Name of the design.", true),
    number("span", "length", "m", "Tip to tip, projected.", true),
    number("area", "area", "m2", "Projected area of the wing.", true),
    number("wet_volume", "volume", "l", "Water pushed aside by wing and struts at running depth."),
    number("thickness_ratio", "ratio", "1", "Largest thickness over chord of the wing section."),
    choice("section", ["symmetric", "cambered"], "Kind of wing section."),
    number("largest_lift_coefficient", "ratio", "1", "Lift coefficient at which the wing stalls."),
    number("strut_count", "ratio", "1", "How many struts (masts) go through the surface."),
    number("strut_chord", "length", "mm", "Chord of a strut."),
    number("strut_thickness", "length", "mm", "Thickness of a strut."),
    number("strut_length", "length", "m", "From wing to board."),
    number("board_draught", "length", "m", "How deep the board floats."),
    number("extra_drag_area", "area", "m2", "Drag area of anything else under water."),
    note,
  ],
};

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

/** `calibrations.csv`: instruments against known values. */
export const CALIBRATIONS: TableContract = {
  file: "calibrations.csv",
  key: null,
  means: "Instruments against known values; a zero check is a row with nothing applied.",
  columns: [
    text("instrument", "Name of the instrument.", true),
    choice("when", ["before", "after"], "Before or after the session, or that sweep."),
    text("sweep", "Sweep of tow.csv that a zero was read at; empty means the whole session."),
    { name: "applied", kind: "number", required: false, means: "Known value applied." },
    text("applied_unit", "Unit of the applied value."),
    { name: "reading", kind: "number", required: true, means: "What the instrument read." },
    text("reading_unit", "Unit of the reading."),
  ],
};

/** `conditions.csv`: water, day, and the comparison's own settings. */
export const CONDITIONS: TableContract = {
  file: "conditions.csv",
  key: null,
  means: "Water, day, and what the comparison should assume: one row a quantity.",
  columns: [
    text("quantity", "What it is, from the list in the glossary.", true),
    { name: "value", kind: "number", required: true, means: "Its value." },
    text("unit", "Unit of value and uncertainty."),
    { name: "uncertainty", kind: "number", required: false, means: "How well it is known." },
    choice("stated_as", ["standard", "95 %", "limits"], "How the uncertainty is meant."),
    text("block", "Block it holds for; empty means all."),
    note,
  ],
};

/** `instruments.csv`: how well each column is known. */
export const INSTRUMENTS: TableContract = {
  file: "instruments.csv",
  key: null,
  means: "How well each column is known; several rows for one column add up.",
  columns: [
    text("quantity", "A column of glides.csv or tow.csv.", true),
    text("instrument", "What it was measured with."),
    { name: "uncertainty", kind: "number", required: true, means: "Half width or standard." },
    text("unit", "Unit of the uncertainty, or %."),
    choice("stated_as", ["standard", "95 %", "limits"], "How the uncertainty is meant."),
    choice("kind", ["independent", "common"], "Differs from run to run, or shared by all."),
    text("how", "How you know."),
  ],
};

/** Folder of a session's speed traces. */
export const TRACES = "traces";

/**
 * `traces/RUN.csv`: speed against time of one glide.
 *
 * @param file path inside the session folder
 * @returns its contract; one file a run, under the run's name in glides.csv
 */
export function traceContract(file: string): TableContract {
  return {
    file,
    key: null,
    means: "Speed of one glide against time, from the launch to its end: one row a sample.",
    columns: [
      number("time", "time", "s", "Time, rising from row to row.", true),
      number("speed", "speed", "m/s", "Speed through the water.", true),
    ],
  };
}

/** Speeds of a trace, as instruments.csv names them. */
export const TRACE_SPEED: Column = number(
  "trace_speed",
  "speed",
  "m/s",
  "Speeds in traces/RUN.csv.",
);

/** Every table, in the order in which a reader wants them. */
export const TABLES: readonly TableContract[] = [
  DESIGNS,
  GLIDES,
  TOW,
  CALIBRATIONS,
  CONDITIONS,
  INSTRUMENTS,
];

/** Quantities that `conditions.csv` may state, with dimension and default unit. */
export const CONDITION_QUANTITIES: readonly Column[] = [
  number("water_temperature", "temperature", "degC", "Temperature of the water."),
  number("salinity", "salinity", "g/kg", "Salt in the water; 0 for fresh."),
  number("latitude", "angle", "deg", "Latitude, for gravity."),
  number("altitude", "length", "m", "Height above the sea, for gravity and air."),
  number("running_depth", "length", "m", "Usual depth of the wing where no run has its own."),
  number("wind_speed", "speed", "m/s", "Wind."),
  number("air_drag_area", "area", "m2", "Drag area of rider and board in the air, where measured."),
  number(
    "current",
    "speed",
    "m/s",
    "Current along the course, by a drifting float; above zero where it carries passes marked down along.",
  ),
  number("carried_mass", "mass", "kg", "All that flies, where no run has its own."),
  number("drop", "length", "m", "Height lost in a run, where no run has its own."),
  number("reference_launch_speed", "speed", "m/s", "Launch speed to compare at."),
  number("reference_drop", "length", "m", "Height used to compare at."),
  number("reference_mass", "mass", "kg", "Mass to compare at."),
];
