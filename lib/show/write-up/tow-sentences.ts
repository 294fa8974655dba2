/**
 * What a write-up says of towed readings: sentences whose numbers are bound to the answer.
 *
 * @module
 */
import type { DesignTow, TowAnswer, TowComparison } from "../../base/tow-answer.ts";
import { atSentenceStart } from "../../base/sentence-words.ts";
import { claim, inProse, memberOf, valueOf } from "./write-up-cell.ts";

function designSentence(one: DesignTow, place: number): string {
  const path = `tow/${memberOf("designs", one.design, place)}`;
  const name = atSentenceStart(inProse(one.design));
  const best = one.bestLiftToDrag;
  if (best === null) return `${name}'s readings carry no curve; the findings say why.`;
  const ratio = valueOf(`${path}/bestLiftToDrag`);
  const interval = valueOf(`${path}/bestLiftToDrag/@interval`);
  if (best.kind !== "interval" || one.speedOfBestLiftToDrag?.kind !== "interval") {
    return `${name}'s best point was not towed: its lift-to-drag is ${interval}.`;
  }
  return `${name} carries at best ${ratio} times its drag (${interval}), at ` +
    `${valueOf(`${path}/speedOfBestLiftToDrag`)}.`;
}

function ranges(one: TowComparison, place: number): string {
  const path = `tow/${memberOf("comparisons", one.candidate, place)}`;
  const [candidate, baseline] = [inProse(one.candidate), inProse(one.baseline)];
  const say = (key: "candidateLessDrag" | "candidateMoreDrag", word: string) => {
    if (one[key].length === 0) return [];
    const words = claim(
      `${candidate} drags ${word} than ${baseline}`,
      `${path}/${key}/@count>=1`,
    );
    const spans = one[key].map((_, at) =>
      `from ${valueOf(`${path}/${key}/${at}/0`)} to ${valueOf(`${path}/${key}/${at}/1`)} m/s`
    );
    return [`${words} ${spans.join(" and ")}`];
  };
  const parts = [...say("candidateLessDrag", "less"), ...say("candidateMoreDrag", "more")];
  if (parts.length > 0) {
    return `Over the speeds towed, ${parts.join(", and ")}; elsewhere these readings can't tell.`;
  }
  const less = claim(`drags less than ${baseline}`, `${path}/candidateLessDrag/@count=0`);
  const more = claim("drags more", `${path}/candidateMoreDrag/@count=0`);
  return `These readings can't tell whether ${candidate} ${less} or ${more}, at any speed towed.`;
}

/**
 * Best points and differences, a sentence each.
 *
 * @param answer shown under the name `tow`
 * @returns Markdown
 */
export function towVerdicts(answer: TowAnswer): string {
  return [...answer.comparisons.map(ranges), ...answer.designs.map(designSentence)].join(" ");
}
