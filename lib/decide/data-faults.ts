/**
 * When the tables as read can't carry a comparison.
 *
 * @module
 */
import type { Finding } from "../base/finding.ts";
import type { Session } from "../base/session.ts";
import { checkSession } from "../check/check-session.ts";

/** Tables that a comparison of glides rests on. */
const RESTS_ON: readonly (string | null)[] = [
  "designs.csv",
  "glides.csv",
  "conditions.csv",
  "instruments.csv",
  null,
];

/**
 * Errors in the tables that a comparison rests on: cells that can't be read, values that can't be.
 *
 * @param sessions one or more
 * @param tables their files, `null` for what concerns a session as a whole; those of a comparison of glides unless given
 * @returns the errors
 */
export function faultsOf(
  sessions: readonly Session[],
  tables: readonly (string | null)[] = RESTS_ON,
): Finding[] {
  return sessions.flatMap((session) => [...session.findings, ...checkSession(session)])
    .filter((one) => one.severity === "error" && tables.includes(one.file));
}

/**
 * Why nothing is compared while there are faults.
 *
 * Rows that could not be read are missing, and nobody can tell whether by chance: a long run with a slip of the pen in it
 * turns a verdict. So it is refused, and not given with a remark.
 *
 * @param faults one or more errors
 * @returns a stable word and sentences
 */
export function dataFaults(
  faults: readonly Finding[],
): { readonly code: string; readonly what: string; readonly wanted: string } {
  const count = faults.reduce((total, one) => total + one.count, 0);
  const files = [...new Set(faults.map((one) => one.file ?? "the session"))].sort();
  return {
    code: "data-faults",
    what: `${count === 1 ? "A fault" : `${count} faults`} in ${files.join(" and ")}: ` +
      "no comparison can rest on the tables as they stand.",
    wanted: "The cells that the errors name put right, or left empty where nothing was measured.",
  };
}
