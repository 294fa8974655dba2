/**
 * Glide ratios that no craft of this kind has.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import type { Session } from "../base/session.ts";
import { STANDARD_GRAVITY } from "../model/gravity.ts";
import { conditionOf } from "./condition-of.ts";
import { keptGlides, median, short } from "./rule.ts";

/** Common practice, no source: a hull planes at about 3, the best sailplanes reach 60. */
const USUAL = [3, 60] as const;

/** Runs from which a whole table can be wrong. */
const WHOLE_TABLE = 3;

const usual = (ratio: number) => ratio >= USUAL[0] && ratio <= USUAL[1];

interface RunRatio {
  readonly row: number;
  readonly distance: number;
  readonly height: number;
  readonly ratio: number;
}

/** Glide ratios of the runs that have all readings and spent some height. */
function glideRatios(session: Session): RunRatio[] {
  return keptGlides(session).flatMap((glide) => {
    const { launchSpeed: v0, endSpeed: v1, distance, row } = glide;
    const drop = glide.drop ?? conditionOf(session, "drop", glide.block)?.value ?? null;
    if (v0 === null || v1 === null || distance === null || drop === null || v1 > v0) return [];
    const height = drop + (v0 * v0 - v1 * v1) / (2 * STANDARD_GRAVITY);
    return height > 0 ? [{ row, distance, height, ratio: distance / height }] : [];
  });
}

function oddRatios(ratios: readonly RunRatio[]): Finding[] {
  return ratios.filter(({ ratio }) => !usual(ratio)).map(({ row, distance, height, ratio }) =>
    finding({
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
    })
  );
}

/**
 * Warns of runs whose distance over the height spent (drop plus the height that the lost speed was worth) is out of all
 * proportion: most often a slipped decimal mark or a unit. Where the middle run is so, the table as a whole is wrong, and
 * that is an error: its runs would still compare, and give a verdict on speeds that nobody flew.
 *
 * Runs that gained speed are told by another rule.
 *
 * @param session runs left out do not count
 * @returns warnings by run, or one error for the table
 */
export function checkGlideRatio(session: Session): Finding[] {
  const ratios = glideRatios(session);
  const odd = oddRatios(ratios);
  const middle = median(ratios.map((one) => one.ratio));
  if (middle === null || ratios.length < WHOLE_TABLE || usual(middle)) return odd;
  return [
    finding({
      severity: "error",
      code: "odd-glide-ratios",
      file: "glides.csv",
      what: `Most runs have a glide ratio that no such craft has (the middle one ${
        short(middle)
      }; usual are 3 to 60). Most likely a column is in another unit than its name says.`,
      wanted: "The unit after the column's name, as launch_speed [km/h].",
    }),
    ...odd,
  ];
}
