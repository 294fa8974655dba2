/**
 * Our values beside published ones: how a stranger can tell that the library computes what it says.
 *
 * To add checks: put rows into `shared/published-values.csv` and a function under the row's `check` name into the topic's
 * file in `published-checks/`, in its exported record; list that record here.
 *
 * @module
 */
import {
  checkInputs,
  type CheckResult,
  type PublishedCheck,
  type PublishedValue,
} from "./published-check.ts";
import { AIR_CHECKS } from "./published-checks/air.ts";
import { DRAG_CHECKS } from "./published-checks/drag.ts";
import { GLIDE_CHECKS } from "./published-checks/glide.ts";
import { LINE_CHECKS } from "./published-checks/line.ts";
import { PROBABILITY_CHECKS } from "./published-checks/probability.ts";
import { UNCERTAINTY_CHECKS } from "./published-checks/uncertainty.ts";
import { WATER_CHECKS } from "./published-checks/water.ts";

/** Every check by name. */
export const PUBLISHED_CHECKS: Readonly<Record<string, PublishedCheck>> = {
  ...PROBABILITY_CHECKS,
  ...UNCERTAINTY_CHECKS,
  ...WATER_CHECKS,
  ...AIR_CHECKS,
  ...DRAG_CHECKS,
  ...GLIDE_CHECKS,
  ...LINE_CHECKS,
};

function resultOf(row: PublishedValue): CheckResult {
  const check = PUBLISHED_CHECKS[row.check];
  const refused = (reason: string): CheckResult => ({
    ...row,
    ours: null,
    difference: null,
    agrees: false,
    reason,
  });
  if (check === undefined) return refused(`no check is called ${row.check}`);
  try {
    const ours = check(checkInputs(row.inputs), row.quantity);
    if (!Number.isFinite(ours)) return refused(`the check gave ${ours}`);
    const difference = ours - row.published;
    const agrees = Math.abs(difference) <= row.tolerance;
    return { ...row, ours, difference, agrees, reason: null };
  } catch (error) {
    return refused(error instanceof Error ? error.message : String(error));
  }
}

/**
 * Runs published checks.
 *
 * @param rows the published values, from `readPublishedValues`
 * @param options `topic`: only rows of this topic
 * @returns one result a row, in the same order; a check that fails to compute disagrees and says why
 * @example
 * ```ts
 * import { runPublishedChecks } from "lakeproof/decide/published-checks.ts";
 * const [result] = runPublishedChecks([{
 *   check: "student-t",
 *   topic: "probability",
 *   quantity: "97.5 % point",
 *   inputs: "degrees_of_freedom=5",
 *   published: 2.571,
 *   unit: "1",
 *   tolerance: 0.0005,
 *   toleranceReason: "last printed digit",
 *   source: "any table of Student's t",
 *   certainty: "confirmed",
 * }]);
 * if (!result!.agrees) throw new Error("Student's t is wrong");
 * ```
 */
export function runPublishedChecks(
  rows: readonly PublishedValue[],
  options: { readonly topic?: string } = {},
): CheckResult[] {
  return rows
    .filter((row) => options.topic === undefined || row.topic === options.topic)
    .map(resultOf);
}
