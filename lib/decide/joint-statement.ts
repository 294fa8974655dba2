/**
 * What may be said of several candidates at once.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import type { JudgedPair } from "./judged-pair.ts";
import { verdictOf } from "./glide-verdict.ts";

/**
 * One statement about all candidates together, by Bonferroni.
 *
 * Each interval of a comparison is right 95 times in 100 by itself; of several, one is wrong more often. With each taken
 * at 1 - 0.05/m for m comparisons, all are right together at least 95 times in 100, whatever they share (the baseline's
 * runs, for one).
 *
 * Source: Bonferroni's inequality; any text on multiple comparisons.
 *
 * @param judged pairs against one baseline
 * @returns one finding for two or more comparisons with an interval, else none
 */
export function jointStatement(judged: readonly JudgedPair[]): Finding[] {
  const pairs = judged.filter((one) => one.result?.contrast != null);
  if (pairs.length < 2) return [];
  const level = 1 - 0.05 / pairs.length;
  const words = pairs.map(({ comparison, result }) => {
    const verdict = verdictOf(result!.contrast, level);
    if (verdict === "candidate-better") {
      return `${comparison.candidate} goes further than ${comparison.baseline}`;
    }
    if (verdict === "baseline-better") {
      return `${comparison.candidate} goes less far than ${comparison.baseline}`;
    }
    return `${comparison.candidate} can't be told from ${comparison.baseline} yet`;
  });
  return [finding({
    severity: "note",
    code: "joint-statement",
    count: pairs.length,
    what: `${
      pairs.length === 2 ? "Both" : `All ${pairs.length}`
    } comparisons taken together, each judged more strictly so that all of them are right 95 times in 100: ${
      words.join("; ")
    }.`,
  })];
}
