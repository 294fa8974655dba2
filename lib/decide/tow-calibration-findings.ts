/**
 * What is worth knowing about a load cell's zero and its known loads.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import { excerpt } from "../base/printable.ts";
import { listInWords } from "../base/sentence-words.ts";
import type { Calibration, Session } from "../base/session.ts";
import type { CalibrationChange } from "../fit/calibration-change.ts";
import type { CalibrationLine } from "../fit/calibration-line.ts";
import type { ZeroTrack } from "../fit/zero-track.ts";
import type { PreparedPoint, PreparedTow } from "./tow-readings.ts";

const FILE = "calibrations.csv";

/** N: a zero that moved by more is worth a word. */
const MOVED = 0.8;

/** What was made of the known loads. */
export interface KnownLoadFacts {
  readonly line: CalibrationLine | null;
  readonly change: CalibrationChange | null;
  /** Rows of several instruments of which none is named for line_tension. */
  readonly strangers: readonly Calibration[];
  /** Known loads that are neither a force nor a mass. */
  readonly odd: readonly Calibration[];
  /** Why the known loads make no line; `null` where they do, or there are none. */
  readonly refused: string | null;
}

/**
 * Findings about known loads.
 *
 * @param session as read
 * @param facts line, and the loads after against those before
 * @returns findings
 */
export function calibrationFindings(session: Session, facts: KnownLoadFacts): Finding[] {
  const { line, change, refused, strangers, odd } = facts;
  const found: Finding[] = [];
  if (strangers.length > 0) {
    found.push(finding({
      severity: "warning",
      code: "which-load-cell",
      file: FILE,
      row: strangers[0]!.row,
      column: "instrument",
      count: strangers.length,
      what: `Nobody says which of ${
        listInWords([...new Set(strangers.map((one) => excerpt(one.instrument)))])
      } read line_tension, so none of their rows was used.`,
      wanted: "Its name beside line_tension in instruments.csv.",
    }));
  }
  if (odd.length > 0) {
    found.push(finding({
      severity: "warning",
      code: "load-unit",
      file: FILE,
      row: odd[0]!.row,
      column: "applied_unit",
      count: odd.length,
      what: "A known load is neither a force nor a mass, so it was not used.",
      wanted: "kg or N in applied_unit.",
    }));
  }
  if (refused !== null) {
    found.push(finding({
      severity: "warning",
      code: "no-calibration",
      file: FILE,
      what: `The load cell's known loads give no calibration: ${refused}. Readings count as they ` +
        "stand.",
      wanted: "Three or more known loads over the pulls that you measure.",
    }));
  }
  if (line === null) return found;
  const stated = session.instruments.filter((one) =>
    one.quantity === "line_tension" && one.kind === "common"
  );
  if (stated.length > 0) {
    found.push(finding({
      severity: "note",
      code: "calibration-counts",
      file: "instruments.csv",
      row: stated[0]!.row,
      what:
        "A shared error is stated for line_tension, and known loads were hung on the load cell. The known loads count, " +
        "since they were read on this very cell; the stated error is set aside.",
      wanted:
        "What known loads can't show (a pulley in the line) as a row of its own, independent.",
    }));
  }
  if (change !== null) {
    found.push(finding({
      severity: "warning",
      code: "calibration-changed",
      file: FILE,
      what:
        `Known loads after the session do not go with those before: ${
          change.atCentre.toFixed(2)
        } N apart at ${line.valueAtCentre.toFixed(0)} N, ${
          (100 * change.slope / line.slope).toFixed(2)
        } % in slope, with the zero taken off. One line through both is used, and the difference is a doubt that all readings ` +
        "share.",
      wanted:
        "The load cell and its hooks looked at; known loads before and after the next session.",
    }));
  }
  return found;
}

/**
 * Findings about the zero.
 *
 * @param zero followed through the session, or `null`
 * @param strangers rows about a sweep that tow.csv does not have
 * @returns findings
 */
export function zeroFindings(zero: ZeroTrack | null, strangers: readonly Calibration[]): Finding[] {
  const found: Finding[] = strangers.map((one) =>
    finding({
      severity: "warning",
      code: "unknown-sweep",
      file: FILE,
      row: one.row,
      column: "sweep",
      what: `tow.csv has no sweep ${excerpt(one.sweep ?? "")}, so this row was not used.`,
      wanted: "A sweep as it is called in tow.csv, or nothing for the whole session.",
    })
  );
  // A cell set to zero anew between two sweeps jumps there, with no reading in between.
  const far =
    zero?.stretches.filter((one) => one.to - one.from >= 1 && Math.abs(one.drift) > MOVED) ?? [];
  if (far.length > 0) {
    const most = far.reduce((a, b) => Math.abs(b.drift) > Math.abs(a.drift) ? b : a);
    found.push(finding({
      severity: "warning",
      code: "zero-moved",
      file: FILE,
      count: far.length,
      what: `The load cell's zero moved by ${most.drift.toFixed(2)} N ${
        zero!.stretches.length === 1 ? "over the session" : "between two looks at it"
      }. It is taken as moving evenly; where between the two it moved stays open.`,
      wanted: "A zero before and after each sweep, with the sweep's name in the column sweep.",
    }));
  }
  return found;
}

/**
 * Readings beyond the loads that were hung on the cell.
 *
 * @param prepared a session
 * @param used its readings that count
 * @returns one finding, or none
 */
export function beyondCalibration(
  { calibration: { range } }: PreparedTow,
  used: readonly PreparedPoint[],
): Finding[] {
  if (range === null) return [];
  const beyond = used.filter(({ cellReading: reading }) =>
    reading < range[0] || reading > range[1]
  );
  if (beyond.length === 0) return [];
  return [finding({
    severity: "warning",
    code: "outside-calibration",
    file: "tow.csv",
    row: beyond.length === 1 ? beyond[0]!.point.row : null,
    column: "line_tension",
    count: beyond.length,
    what: `${beyond.length === 1 ? "Reading" : "Readings"} ${
      beyond.map((one) => one.point.point).join(", ")
    } ${beyond.length === 1 ? "lies" : "lie"} outside the ${range[0].toFixed(0)} to ${
      range[1].toFixed(0)
    } N that the load cell was tried at; the line is drawn out beyond them.`,
    wanted: "Known loads over all pulls that you measure.",
  })];
}
