/**
 * What is worth knowing about a session's towed readings as a whole.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import { beyondCalibration } from "./tow-calibration-findings.ts";
import { drifts, STEADY } from "../check/tow-steadiness.ts";
import type { PreparedPoint, PreparedTow } from "./tow-readings.ts";
import { lineFindings } from "./tow-line-findings.ts";
import { strayedSpeeds } from "./tow-strayed-speeds.ts";
import { tareFindings } from "./tow-tare.ts";

const FILE = "tow.csv";

/**
 * Findings about a session's readings as a whole.
 *
 * @param prepared a session
 * @returns findings
 */
export function towSessionFindings(prepared: PreparedTow): Finding[] {
  const { points, levelLine, currents, calibration, windowFindings, session } = prepared;
  const found: Finding[] = [...calibration.findings, ...windowFindings];
  const used = points.filter((one) => one.reason === null);
  const out = points.filter((one) => one.reason !== null);
  if (out.length > 0) found.push(leftOut(out));
  if (used.length === 0) return found;
  found.push(...tareFindings(prepared));
  found.push(...beyondCalibration(prepared, used));
  found.push(...lineFindings(used, levelLine));
  found.push(...strayedSpeeds(used));
  found.push(...currents.findings);
  const drifting = used.filter((one) =>
    drifts(one.point.speedChange, STEADY, one.point.own.speed_change)
  );
  if (drifting.length > 0) {
    found.push(finding({
      severity: "warning",
      code: "not-steady",
      file: FILE,
      row: drifting[0]!.point.row,
      column: "speed_change",
      count: drifting.length,
      what: `The speed drifted by more than ${STEADY} m/s2 in ${
        drifting.map((one) => one.point.point).join(", ")
      }. The pull that sped the craft up is taken off.`,
      wanted: "Windows at a steady speed.",
    }));
  }
  const estimated = session.designs.filter((one) =>
    one.wetVolume === null && used.some(({ point }) => point.design === one.design)
  );
  for (const one of estimated) {
    found.push(finding({
      severity: "note",
      code: "volume-estimated",
      file: "designs.csv",
      row: one.row,
      column: "wet_volume",
      what: `Wet volume of ${one.design} is estimated from its planform, good to 30 %.`,
      wanted: "The water that wing and strut push aside, by dunking them.",
    }));
  }
  return found;
}

function leftOut(out: readonly PreparedPoint[]): Finding {
  return finding({
    severity: "note",
    code: "readings-left-out",
    file: FILE,
    row: out.length === 1 ? out[0]!.point.row : null,
    count: out.length,
    what: `${out.length === 1 ? "One reading was" : `${out.length} readings were`} left out: ${
      out.map((one) => `${one.point.point} (${one.reason})`).join(", ")
    }.`,
  });
}
