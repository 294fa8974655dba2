/**
 * Runs that stand in the table twice under two names.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import { excerpt } from "../base/printable.ts";
import type { Session } from "../base/session.ts";
import { keptGlides } from "./rule.ts";

/**
 * Warns of a run whose design, day, speeds, drop and distance are those of an earlier run, all to the last digit.
 *
 * A run that counts twice makes the answer look surer than it is. Runs with a reading missing are not compared.
 *
 * @param session runs left out do not count
 * @returns warnings, one a doubled run
 */
export function checkDoubled(session: Session): Finding[] {
  const seen = new Map<string, { readonly run: string; readonly row: number }>();
  return keptGlides(session).flatMap((glide) => {
    const { launchSpeed, endSpeed, drop, distance } = glide;
    const readings = [launchSpeed, endSpeed, drop, distance];
    if (readings.includes(null)) return [];
    const key = JSON.stringify([glide.design, glide.block, glide.date, glide.duration, readings]);
    const first = seen.get(key);
    if (first === undefined) {
      seen.set(key, glide);
      return [];
    }
    return [finding({
      severity: "warning",
      code: "doubled-run",
      file: "glides.csv",
      row: glide.row,
      column: "run",
      what: `Run ${excerpt(glide.run)} has the same design, speeds, drop and distance as run ${
        excerpt(first.run)
      } in row ${first.row}: entered twice? It stays in, and counts twice.`,
      wanted: "If it is one run, take one of the two rows out.",
    })];
  });
}
