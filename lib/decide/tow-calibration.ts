/**
 * The load cell's own calibration in calibrations.csv: what a reading in tow.csv means in newtons.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import type { Calibration, Session } from "../base/session.ts";
import { type CalibrationLine, calibrationLine } from "../fit/calibration-line.ts";
import { type ZeroDrift, zeroDrift } from "../fit/zero-drift.ts";
import { meanOf } from "../infer/sample.ts";

/** A load cell as calibrated, as far as it was. */
export interface TowCalibration {
  /** `null` where too few known loads were hung on it: readings then count as newtons. */
  readonly line: CalibrationLine | null;
  /** `null` where its zero was not read both before and after. */
  readonly zero: ZeroDrift | null;
  readonly findings: readonly Finding[];
}

/** Standard uncertainty of weights or of the scale that weighed them, as a share. Common practice, no source. */
const KNOWN_LOADS = 0.001;

/** N: a zero that moved by more is worth a word. */
const MOVED = 0.8;

const FILE = "calibrations.csv";

/** Rows about the load cell: those whose reading is a force. */
function cellRows(session: Session): readonly Calibration[] {
  const rows = session.calibrations.filter((one) => one.readingUnit === "N");
  const names = new Set(rows.map((one) => one.instrument));
  const named = session.instruments.filter((one) => one.quantity === "line_tension")
    .flatMap((one) => one.instrument === null ? [] : [one.instrument]);
  const chosen = [...names].find((name) => named.includes(name)) ??
    (names.size === 1 ? [...names][0] : undefined);
  return rows.filter((one) => one.instrument === chosen);
}

/**
 * Calibration line and zero of the load cell.
 *
 * Rows of calibrations.csv whose reading is a force, of the instrument that instruments.csv names for line_tension, or of the
 * only one there. Known loads may be forces, or masses that gravity turns into forces.
 *
 * @param session as read
 * @param gravity m/s2
 * @returns line, zero, and findings about both
 */
export function towCalibration(session: Session, gravity: number): TowCalibration {
  const rows = cellRows(session);
  const loads = rows.flatMap((one) => {
    if (one.applied === null || one.when === "after") return [];
    const factor = one.appliedUnit === "kg" ? gravity : one.appliedUnit === "N" ? 1 : null;
    return factor === null ? [] : [{ reading: one.reading, applied: one.applied * factor }];
  });
  const findings: Finding[] = [];
  let line: CalibrationLine | null = null;
  if (loads.length > 0) {
    const fitted = calibrationLine(loads, { appliedShare: KNOWN_LOADS });
    if (fitted.ok && fitted.slope > 0) line = fitted;
    else {
      findings.push(finding({
        severity: "warning",
        code: "no-calibration",
        file: FILE,
        what: `The load cell's known loads give no calibration: ${
          fitted.ok ? "its readings fall as the load grows" : fitted.reason
        }. Readings count as they stand.`,
        wanted: "Three or more known loads over the pulls that you measure.",
      }));
    }
  }
  const zeros = (when: "before" | "after") =>
    rows.filter((one) => one.applied === null && one.when === when).map((one) => one.reading);
  const [before, after] = [zeros("before"), zeros("after")];
  const zero = before.length > 0 && after.length > 0
    ? zeroDrift({ before: meanOf(before), after: meanOf(after) })
    : null;
  if (zero !== null && Math.abs(zero.drift) > MOVED) {
    findings.push(finding({
      severity: "warning",
      code: "zero-moved",
      file: FILE,
      what:
        `The load cell's zero moved by ${zero.drift.toFixed(2)} N over the session. It is taken ` +
        "as moving evenly; where in the session it moved stays open.",
      wanted: "A zero before and after each sweep.",
    }));
  }
  return { line, zero, findings };
}
