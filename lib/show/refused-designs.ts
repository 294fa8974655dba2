/**
 * Designs that can't be compared: nothing may be shown of them that invites the eye to compare all the same.
 *
 * @module
 */
import type { GlideAnswer } from "../base/answers.ts";

/**
 * Candidates whose comparison was refused.
 *
 * @param answer any
 * @returns names of designs; of these runs are shown as flown, and no curve and no result
 */
export function refusedDesigns(answer: GlideAnswer): ReadonlySet<string> {
  const refused = answer.comparisons.filter((one) => one.verdict === "refused");
  return new Set(refused.map((one) => one.candidate));
}
