/**
 * What a write-up says of glides: sentences whose numbers are bound to the answer.
 *
 * @module
 */
import type { GlideAnswer, GlideComparison } from "../../base/answers.ts";
import { claim, inProse, memberOf, valueOf } from "./write-up-cell.ts";

function verdictSentence(one: GlideComparison, place: number): string {
  const path = `glide/${memberOf("comparisons", one.candidate, place)}`;
  const [candidate, baseline] = [inProse(one.candidate), inProse(one.baseline)];
  const holds = (words: string) => claim(words, `${path}/verdict=${one.verdict}`);
  const interval = `with a ${valueOf(`${path}/ratio/level/@percent`)} interval from ` +
    valueOf(`${path}/ratio/@interval`);
  switch (one.verdict) {
    case "candidate-better":
    case "baseline-better": {
      const words = one.verdict === "candidate-better"
        ? `${candidate} goes further than ${baseline}`
        : `${candidate} falls short of ${baseline}`;
      return `From the same launch ${holds(words)}: ` +
        `${valueOf(`${path}/ratio`)} times as far, ${interval}.`;
    }
    case "cannot-tell-yet": {
      const words = `whether ${candidate} goes further than ${baseline} can't be told yet`;
      if (one.ratio === null) return `As for ${candidate}, ${holds(words)}.`;
      const { now = null, never = true } = one.moreRuns ?? {};
      return `As for ${candidate}, ${holds(words)}: the ratio of distances is ` +
        `${valueOf(`${path}/ratio`)}, ${interval}, and equal lies inside.${
          never || now === null || now < 1
            ? ""
            : ` To settle a difference of a tenth would take about ${
              valueOf(`${path}/moreRuns/now`)
            } more runs of each.`
        }`;
    }
    case "refused":
      return `${candidate} ${holds(`can't be compared with ${baseline}`)} by these runs; ` +
        "the findings say why.";
  }
}

/**
 * The short answer, a sentence a pair.
 *
 * @param answer shown under the name `glide`
 * @returns Markdown
 */
export function glideVerdicts(answer: GlideAnswer): string {
  return answer.comparisons.map(verdictSentence).join(" ");
}

/**
 * What a spreadsheet would have made of the distances, and how much of that the launch did.
 *
 * @param answer shown under the name `glide`
 * @returns Markdown; empty where nothing was compared
 */
export function launchTrap(answer: GlideAnswer): string {
  const sentences = answer.comparisons.flatMap((one, place) => {
    if (one.raw === null || one.ratio === null) return [];
    const path = `glide/${memberOf("comparisons", one.candidate, place)}/raw`;
    const [candidate, baseline] = [inProse(one.candidate), inProse(one.baseline)];
    const more = one.raw.ratio > 1;
    return [
      `As flown, ${
        claim(
          `${candidate} covered ${more ? "more" : "less"} water than ${baseline}`,
          `${path}/ratio${more ? ">" : "<="}1`,
        )
      }: ${
        valueOf(`${path}/ratio`)
      } times the distance. Of that the launches, the height used and the ways in which ` +
      `runs ended make a factor of ${
        valueOf(`${path}/launchEffect`)
      }; what is left for the wing is ` +
      `${valueOf(`${path}/designEffect`)}.`,
    ];
  });
  return sentences.join(" ");
}
