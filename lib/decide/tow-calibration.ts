/**
 * The load cell's own calibration in calibrations.csv: what a reading in tow.csv means in newtons.
 *
 * @module
 */
import type { Finding } from "../base/finding.ts";
import type { Calibration, Session, TowPoint } from "../base/session.ts";
import { type CalibrationChange, calibrationChange } from "../fit/calibration-change.ts";
import {
  type CalibrationLine,
  calibrationLine,
  type CalibrationPair,
} from "../fit/calibration-line.ts";
import { type ZeroTrack, zeroTrack } from "../fit/zero-track.ts";
import { STANDARD_GRAVITY } from "../model/gravity.ts";
import { calibrationFindings, zeroFindings } from "./tow-calibration-findings.ts";

/** A known load on the cell. */
export interface KnownLoad extends CalibrationPair {
  readonly row: number;
  readonly when: "before" | "after";
}

/** A load cell as calibrated, as far as it was. */
export interface TowCalibration {
  /** `null` where too few known loads were hung on it: readings then count as newtons. Readings are off the zero of their time. */
  readonly line: CalibrationLine | null;
  /** What the line rests on; readings off the zero of their time. */
  readonly loads: readonly KnownLoad[];
  /** Known loads after the session against those before; `null` where there are none to compare. */
  readonly compared: CalibrationChange | null;
  /** The same where the two do not agree, so that the change stands in the answer. */
  readonly change: CalibrationChange | null;
  /** By place among the rows of tow.csv; `null` where the zero was never read. */
  readonly zero: ZeroTrack | null;
  /** Pulls that were looked at, N off the zero; beyond them the line is a guess. `null` without a line. */
  readonly range: readonly [from: number, to: number] | null;
  readonly findings: readonly Finding[];
}

/** Standard uncertainty of weights or of the scale that weighed them, as a share. Common practice, no source. */
const KNOWN_LOADS = 0.001;

/** Two lines instead of one where chance would part them as far in one session of twenty. */
const APART = 0.05;

/** A zero is read so much before the first row that it is about, or after the last, in rows. */
const ASIDE = 0.4;

/** A spring balance that shows kilograms shows the force of so many newtons each. */
const KILOGRAM = STANDARD_GRAVITY;

/** Rows about the load cell: those whose reading is a force, or kilograms on a balance; readings in N. */
function cellRows(
  session: Session,
): { readonly rows: readonly Calibration[]; readonly strangers: readonly Calibration[] } {
  const rows = session.calibrations.flatMap((one) =>
    one.readingUnit === "N"
      ? [one]
      : one.readingUnit === "kg"
      ? [{ ...one, reading: one.reading * KILOGRAM }]
      : []
  );
  const names = new Set(rows.map((one) => one.instrument));
  const named = session.instruments.filter((one) => one.quantity === "line_tension")
    .flatMap((one) => one.instrument === null ? [] : [one.instrument]);
  const chosen = [...names].find((name) => named.includes(name)) ??
    (names.size === 1 ? [...names][0] : undefined);
  const own = rows.filter((one) => one.instrument === chosen);
  return { rows: own, strangers: chosen === undefined ? rows : [] };
}

/** N each unit of a known load; `null` where it is neither a force nor a mass. */
function loadFactor({ applied, appliedUnit }: Calibration, gravity: number): number | null {
  if (applied === 0 || appliedUnit === "N") return 1;
  return appliedUnit === "kg" ? gravity : null;
}

/** When a row was read, as a place among the rows of tow.csv; `null` for a sweep that is not there. */
function timeOf(one: Calibration, tow: readonly TowPoint[]): number | null {
  const places = tow.flatMap((point, i) =>
    one.sweep == null || point.sweep === one.sweep ? [i] : []
  );
  if (places.length === 0) {
    return one.sweep == null ? (one.when === "after" ? ASIDE : -ASIDE) : null;
  }
  return one.when === "after" ? places.at(-1)! + ASIDE : places[0]! - ASIDE;
}

/**
 * Calibration line and zero of the load cell.
 *
 * Rows of calibrations.csv whose reading is a force, or kilograms on a balance, of the instrument that instruments.csv names for line_tension, or of the
 * only one there. Known loads may be forces, or masses that gravity turns into forces. Zeros before and after the session, or
 * before and after a sweep, are followed evenly between them. Known loads of both ends of a session make one line where they
 * agree; where they don't, they make one still, and half their difference to either side is a doubt common to all readings.
 *
 * @param session as read, its tows reduced to one row a point
 * @param gravity m/s2
 * @returns line, zero, and findings about both
 */
export function towCalibration(session: Session, gravity: number): TowCalibration {
  const { rows, strangers } = cellRows(session);
  const timed = rows.map((one) => ({ one, time: timeOf(one, session.tow) }));
  const zeros = timed.flatMap(({ one, time }) =>
    one.applied !== null || time === null ? [] : [{ time, value: one.reading }]
  );
  const zero = zeros.length === 0 ? null : zeroTrack(zeros);
  const loads = timed.flatMap(({ one, time }): KnownLoad[] => {
    const factor = loadFactor(one, gravity);
    if (one.applied === null || factor === null || time === null) return [];
    return [{
      row: one.row,
      when: one.when ?? "before",
      reading: one.reading - (zero?.zeroAt(time) ?? 0),
      applied: one.applied * factor,
    }];
  });
  const fitted = loads.length === 0 ? null : calibrationLine(loads, { appliedShare: KNOWN_LOADS });
  const line = fitted?.ok && fitted.slope > 0 ? fitted : null;
  const side = (when: "before" | "after") => loads.filter((one) => one.when === when);
  const tried = calibrationChange(side("before"), side("after"));
  const compared = line !== null && tried.ok ? tried : null;
  const range = line === null
    ? null
    : [zero === null ? line.from : Math.min(0, line.from), line.to] as const;
  const found = {
    line,
    loads,
    compared,
    change: compared !== null && compared.pValue < APART ? compared : null,
    zero,
    range,
  };
  return {
    ...found,
    findings: [
      ...calibrationFindings(session, {
        ...found,
        strangers,
        odd: rows.filter((one) => one.applied !== null && loadFactor(one, gravity) === null),
        refused: fitted === null || line !== null
          ? null
          : fitted.ok
          ? "its readings fall as the load grows"
          : fitted.reason,
      }),
      ...zeroFindings(
        zero,
        timed.filter((each) => each.time === null).map((each) => each.one),
      ),
    ],
  };
}
