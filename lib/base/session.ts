/**
 * A session as the library sees it: typed rows in SI units, read from one folder.
 *
 * `null` means "not measured". Every row keeps the number that a spreadsheet gives it, so that findings can point back.
 *
 * @module
 */
import type { Finding } from "./finding.ts";

/** What every row carries besides its own columns. */
export interface Row {
  /** Row as the spreadsheet numbers it; the header is 1. */
  readonly row: number;
  /** Standard uncertainties given in the row itself (columns `u_NAME`), SI, by column name. */
  readonly own: Readonly<Record<string, number>>;
}

/** One wing design with its struts, a row of `designs.csv`. */
export interface Design extends Row {
  readonly design: string;
  /** m, tip to tip, projected. */
  readonly span: number;
  /** m2, projected. */
  readonly area: number;
  /** m3 of water that wing and struts push aside at running depth. */
  readonly wetVolume: number | null;
  /** Largest thickness over chord, 1. */
  readonly thicknessRatio: number | null;
  readonly section: "symmetric" | "cambered" | null;
  readonly largestLiftCoefficient: number | null;
  readonly strutCount: number | null;
  /** m */
  readonly strutChord: number | null;
  /** m */
  readonly strutThickness: number | null;
  /** m */
  readonly strutLength: number | null;
  /** m, how deep the board floats. */
  readonly boardDraught: number | null;
  /** m2, drag area of what the planform does not hold (fuselage, stabiliser, tow bracket). */
  readonly extraDragArea: number | null;
  readonly note: string | null;
}

/** How a run ended: only a stalled run tells the design's own end speed. */
export type RunEnd = "stalled" | "touched" | "stopped early";

/** One free glide, a row of `glides.csv`. */
export interface Glide extends Row {
  readonly run: string;
  readonly date: string | null;
  /** What is alike within: usually rider and day. */
  readonly block: string | null;
  readonly design: string;
  /** m/s, when flying has begun, after the splash of the landing. */
  readonly launchSpeed: number | null;
  /** m/s */
  readonly endSpeed: number | null;
  /** m, height lost between the two speeds. */
  readonly drop: number | null;
  /** m */
  readonly distance: number | null;
  /** s */
  readonly duration: number | null;
  /** kg, all that flies. */
  readonly carriedMass: number | null;
  /** m, of the wing below the surface. */
  readonly depth: number | null;
  readonly ended: RunEnd | null;
  /** The user's reason for leaving the run out; `null` keeps it in. */
  readonly leaveOut: string | null;
  readonly note: string | null;
}

/** Speed of one glide against time, the file `traces/RUN.csv`. */
export interface Trace {
  /** The run's name in glides.csv. */
  readonly run: string;
  /** Path inside the session folder. */
  readonly file: string;
  /** s, rising. */
  readonly times: readonly number[];
  /** m/s, one a time. */
  readonly speeds: readonly number[];
}

/** One towed reading, a row of `tow.csv`. */
export interface TowPoint extends Row {
  readonly point: string;
  readonly date: string | null;
  readonly block: string | null;
  readonly sweep: string | null;
  /** A design's name, or `tare` for struts alone. */
  readonly design: string;
  /** m/s */
  readonly setSpeed: number | null;
  /** What the set speed was held by. */
  readonly setSpeedOver?: "water" | "ground" | null;
  /** `down` runs with the current, `up` against it; see `TOW` in tables.ts for other words. */
  readonly direction: string | null;
  /** m/s */
  readonly speed: number | null;
  readonly speedOver: "water" | "ground" | null;
  /** m/s2 over the window. */
  readonly speedChange: number | null;
  /** N */
  readonly lineTension: number | null;
  /** rad above the horizontal. */
  readonly lineAngle: number | null;
  /** m */
  readonly depth: number | null;
  /** rad */
  readonly pitch: number | null;
  /** kg */
  readonly carriedMass: number | null;
  /** s averaged over. */
  readonly window: number | null;
  /** s by any clock; where given, the row is one sample of its point. */
  readonly time?: number | null;
  readonly leaveOut: string | null;
  readonly note: string | null;
}

/** One reading of an instrument against a known value, a row of `calibrations.csv`. */
export interface Calibration extends Row {
  readonly instrument: string;
  readonly when: "before" | "after" | null;
  /** Sweep that `when` is about; `null` or nothing is the whole session. */
  readonly sweep?: string | null;
  /** SI; `null` is a zero check. */
  readonly applied: number | null;
  readonly appliedUnit: string | null;
  /** As read, in `readingUnit`, turned to SI where the unit is known. */
  readonly reading: number;
  readonly readingUnit: string | null;
}

/** How a stated uncertainty is meant. `limits`: half width of an interval that nobody leaves. */
export type StatedAs = "standard" | "95 %" | "limits";

/** One condition of the water, the day or the comparison, a row of `conditions.csv`; value and uncertainty in SI. */
export interface Condition extends Row {
  readonly quantity: string;
  readonly value: number;
  /** SI unit after conversion. */
  readonly unit: string;
  /** Standard uncertainty in SI, after `stated_as` was taken into account. */
  readonly uncertainty: number | null;
  readonly statedAs: StatedAs | null;
  /** `null` holds for all blocks. */
  readonly block: string | null;
  readonly note: string | null;
}

/** `common` errors are shared by every reading and stand in no scatter; `independent` ones differ from run to run. */
export type ErrorKind = "independent" | "common";

/** One stated source of uncertainty, a row of `instruments.csv`. Several rows for one quantity add up in quadrature. */
export interface Instrument extends Row {
  /** The column it is about, for instance `launch_speed`. */
  readonly quantity: string;
  readonly instrument: string | null;
  /** Standard uncertainty: a share (1) when `relative`, else SI. */
  readonly uncertainty: number;
  readonly relative: boolean;
  readonly statedAs: StatedAs;
  readonly kind: ErrorKind;
  readonly how: string | null;
}

/** A file that an answer rests on. */
export interface FileChecksum {
  /** Path inside the session folder. */
  readonly file: string;
  /** Hexadecimal. */
  readonly sha256: string;
}

/** A whole session folder, read. Rows with a fault in a needed cell are not in the tables; the findings say so. */
export interface Session {
  readonly name: string;
  readonly title: string | null;
  /** True where the descriptor marks the data as invented. */
  readonly invented: boolean;
  readonly designs: readonly Design[];
  readonly glides: readonly Glide[];
  readonly tow: readonly TowPoint[];
  readonly traces: readonly Trace[];
  readonly calibrations: readonly Calibration[];
  readonly conditions: readonly Condition[];
  readonly instruments: readonly Instrument[];
  readonly findings: readonly Finding[];
  readonly checksums: readonly FileChecksum[];
}
