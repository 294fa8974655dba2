/**
 * Two columns that look as if one stood under the other's name.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import { standing } from "../base/limits.ts";
import type { Session } from "../base/session.ts";
import { keptGlides } from "./rule.ts";

/** Runs from which two columns can be swapped as a whole; fewer are told row by row. */
const WHOLE_COLUMN = 3;

/** Share of runs that must look so. */
const MOST = 0.8;

function swapped(columns: readonly [string, string], why: string): Finding {
  const [first, second] = columns;
  return finding({
    severity: "warning",
    code: "columns-swapped",
    file: "glides.csv",
    column: first,
    what: `${why}: do ${first} and ${second} stand under each other's names?`,
    wanted: "Each column under its own name.",
  });
}

/**
 * Warns where nearly every run ends faster than it began, or has a distance as short as a drop beside a drop that can't be.
 *
 * @param session runs left out do not count
 * @returns a warning for each pair of columns that looks swapped
 */
export function checkSwapped(session: Session): Finding[] {
  const glides = keptGlides(session);
  const most = (count: number, all: number) => all >= WHOLE_COLUMN && count >= MOST * all;
  const timed = glides.flatMap(({ launchSpeed, endSpeed }) =>
    launchSpeed === null || endSpeed === null ? [] : [endSpeed > launchSpeed]
  );
  const long =
    session.findings.filter((one) =>
      one.file === "glides.csv" && one.column === "drop" && one.severity === "error"
    ).length;
  const short =
    glides.filter((one) =>
      one.drop === null && one.distance !== null && standing("distance", one.distance) === "odd" &&
      standing("drop", one.distance) === "fits"
    ).length;
  return [
    ...(most(timed.filter((faster) => faster).length, timed.length)
      ? [swapped(["launch_speed", "end_speed"], "Nearly every run ends faster than it began")]
      : []),
    ...(most(Math.min(long, short), glides.length)
      ? [swapped(["drop", "distance"], "Nearly every run has a drop as long as a glide")]
      : []),
  ];
}
