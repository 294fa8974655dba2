/**
 * Readings whose speed is far from the one that was set: a slip of the pen that a fit would take for physics.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import { median } from "../check/rule.ts";
import type { PreparedPoint } from "./tow-readings.ts";

/**
 * Share of the set speed by which a reading may differ, once what all readings share is taken out. A current of 0.5 m/s
 * makes an eighth at 4 m/s (common practice, no source).
 */
const STRAYED = 0.2;

/** Fewer readings with a set speed tell nothing of what they share. */
const ENOUGH = 3;

/**
 * A warning for each reading whose speed lies far from its set speed.
 *
 * @param used readings that count
 * @returns warnings, by row
 */
export function strayedSpeeds(used: readonly PreparedPoint[]): Finding[] {
  const set = used.flatMap(({ point }) =>
    point.setSpeed === null || point.speed === null || !(point.setSpeed > 0)
      ? []
      : [{ point, ratio: point.speed / point.setSpeed }]
  );
  const middle = median(set.map((one) => one.ratio));
  if (middle === null || set.length < ENOUGH) return [];
  return set.filter(({ ratio }) => Math.abs(ratio / middle - 1) > STRAYED).map(({ point }) =>
    finding({
      severity: "warning",
      code: "speed-strays",
      file: "tow.csv",
      row: point.row,
      column: "speed",
      what: `Reading ${point.point} has a speed of ${point.speed!.toFixed(2)} m/s where ${
        point.setSpeed!.toFixed(2)
      } m/s was set. It stays in.`,
      wanted: "Look which of the two is a slip of the pen.",
    })
  );
}
