/**
 * Glide ratios that no craft of this kind has.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import type { Session } from "../base/session.ts";
import { STANDARD_GRAVITY } from "../model/gravity.ts";
import { conditionOf } from "./condition-of.ts";
import { keptGlides, short } from "./rule.ts";

/** Common practice, no source: a hull planes at about 3, the best sailplanes reach 60. */
const USUAL = [3, 60] as const;

/**
 * Warns of runs whose distance over the height spent (drop plus the height that the lost speed was worth) is out of all
 * proportion: most often a slipped decimal mark or a unit.
 *
 * Runs that gained speed are told by another rule.
 */
export function checkGlideRatio(session: Session): Finding[] {
  return keptGlides(session).flatMap((glide) => {
    const { launchSpeed: v0, endSpeed: v1, distance, row } = glide;
    const drop = glide.drop ?? conditionOf(session, "drop", glide.block)?.value ?? null;
    if (v0 === null || v1 === null || distance === null || drop === null || v1 > v0) return [];
    const height = drop + (v0 * v0 - v1 * v1) / (2 * STANDARD_GRAVITY);
    if (!(height > 0)) return [];
    const ratio = distance / height;
    if (ratio >= USUAL[0] && ratio <= USUAL[1]) return [];
    return [finding({
      severity: "warning",
      code: "odd-glide-ratio",
      file: "glides.csv",
      row,
      column: "distance",
      what: `${short(distance)} m for ${
        short(height)
      } m of height spent (drop and lost speed) is a glide ratio of ${
        short(ratio)
      }; such craft have 3 to 60. The run stays in.`,
      wanted: "Look at the distance, the two speeds and the drop, and at their units.",
    })];
  });
}
