/**
 * What looks wrong with the angles of a tow line: nothing in a fit can see them, and a wrong sign moves the lift by 2 %.
 *
 * @module
 */
import { median } from "../check/rule.ts";
import { type Finding, finding } from "../base/finding.ts";
import { listInWords } from "../base/sentence-words.ts";
import type { PreparedPoint } from "./tow-readings.ts";

const DEGREE = Math.PI / 180;

/** rad: a line nearer to level than this may lie on either side of it. */
const NEARLY_LEVEL = 1 * DEGREE;

/** rad: no tow line of a foil is steeper. */
const STEEP = 40 * DEGREE;

/** Readings whose line lies on the other side of level than most. */
function otherSide(used: readonly PreparedPoint[], middle: number): PreparedPoint[] {
  if (Math.abs(middle) < NEARLY_LEVEL) return [];
  return used.filter(({ angle }) =>
    Math.abs(angle) > NEARLY_LEVEL && Math.sign(angle) !== Math.sign(middle)
  );
}

/**
 * Findings about the angles of the line.
 *
 * @param used readings that count, at least one
 * @param levelLine true where no angle was measured
 * @returns warnings
 */
export function lineFindings(used: readonly PreparedPoint[], levelLine: boolean): Finding[] {
  const warn = (code: string, what: string, wanted: string, row: number | null = null) =>
    finding({
      severity: "warning",
      code,
      file: "tow.csv",
      row,
      column: "line_angle",
      what,
      wanted,
    });
  if (levelLine) {
    return [warn(
      "no-line-angle",
      "No line angle was measured: the line is taken as level. At 8 degrees that makes the lift 2 % too large.",
      "Angle of the line above the horizontal in line_angle; a spirit level will do.",
    )];
  }
  const found: Finding[] = [];
  const angles = used.map((one) => one.angle);
  const middle = median(angles)!;
  const largest = Math.max(...angles.map(Math.abs));
  if (middle < 0) {
    found.push(warn(
      "line-pulls-down",
      "The line seems to pull down. The fit cannot see it: the lift is off by twice the line's share.",
      "Above the horizontal counts as positive.",
    ));
  }
  const other = otherSide(used, middle);
  if (other.length > 0) {
    const names = listInWords(other.map(({ point }) => point.point));
    found.push(warn(
      "line-on-other-side",
      `In ${
        other.length === 1 ? "reading" : "readings"
      } ${names} the line lies on the other side of level than in most readings. The fit cannot see a wrong sign.`,
      "Look at the sign of line_angle: above the horizontal counts as positive.",
      other[0]!.point.row,
    ));
  }
  if (largest > STEEP) {
    found.push(warn(
      "steep-line",
      "The line is steeper than 40 degrees.",
      "Look at the unit of line_angle.",
    ));
  } else if (largest > 0 && largest < NEARLY_LEVEL) {
    found.push(warn(
      "angle-in-radians",
      "All line angles are under 1 degree: are they in radians?",
      "If so, write line_angle [rad] at the head of the column.",
    ));
  }
  return found;
}
