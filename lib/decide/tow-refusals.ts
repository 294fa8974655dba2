/**
 * Why a towed design has no law, and readings that no foil can give.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import type { PreparedPoint } from "./tow-readings.ts";

const FILE = "tow.csv";

/** What a law needs at least: speeds, readings, and fastest over slowest. */
const LEAST = { speeds: 3, readings: 5, span: 1.1 } as const;

/**
 * Why readings are too few or too close for a law.
 *
 * @param points those that can be used
 * @returns in words, or `null` where they are enough
 */
export function tooFew(points: readonly PreparedPoint[]): string | null {
  const speeds = new Set(points.map((one) => one.group)).size;
  const values = points.map((one) => one.speed);
  const span = Math.max(...values) / Math.min(...values);
  if (speeds === 1) return "it was towed at one speed: this gives the drag there, not a curve";
  if (speeds < LEAST.speeds) {
    return `it was towed at ${speeds} speeds; a curve needs ${LEAST.speeds}`;
  }
  if (points.length < LEAST.readings) {
    return `there are ${points.length} readings; a curve needs ${LEAST.readings}`;
  }
  if (span < LEAST.span) {
    return `its fastest reading is only ${
      ((span - 1) * 100).toFixed(0)
    } % above its slowest; a curve needs ${((LEAST.span - 1) * 100).toFixed(0)} %`;
  }
  return null;
}

/**
 * The finding that a design has no law.
 *
 * @param design its name
 * @param why in words
 * @returns the finding
 */
export function noLaw(design: string, why: string): Finding {
  return finding({
    severity: "error",
    code: "no-law",
    file: FILE,
    what: `No drag law for ${design}: ${why}.`,
    wanted: "Readings at five or more speeds from just above the slowest flight up, each twice.",
  });
}

/**
 * The finding about a reading that cannot be.
 *
 * @param reading which
 * @param why in words
 * @returns the finding
 */
export function notFlight({ point }: PreparedPoint, why: string): Finding {
  return finding({
    severity: "error",
    code: "not-steady-flight",
    file: FILE,
    row: point.row,
    what: `Reading ${point.point} cannot be a foil in steady flight: ${why}.`,
    wanted: "The row put right, or a reason in leave_out.",
  });
}

/**
 * What stands in the way of readings, each reason once.
 *
 * @param points refused ones
 * @returns in words
 */
export function reasonsOf(points: readonly PreparedPoint[]): string {
  return [...new Set(points.flatMap((one) => one.reason === null ? [] : [one.reason]))].join("; ");
}
