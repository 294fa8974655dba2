/**
 * What a write-up says of takeoff: sentences whose numbers are bound to the answer.
 *
 * @module
 */
import { atSentenceStart } from "../../base/sentence-words.ts";
import type { DesignTakeoff, TakeoffAnswer } from "../../base/takeoff-answer.ts";
import { inProse, memberOf, valueOf } from "./write-up-cell.ts";

function sentence(one: DesignTakeoff, place: number): string {
  const path = `takeoff/${memberOf("designs", one.design, place)}`;
  const name = atSentenceStart(inProse(one.design));
  if (one.takeoffSpeed === null) {
    return `${name} has no takeoff that can be told; the findings say why.`;
  }
  const pull = one.towForceAtTakeoff === null
    ? ""
    : ` with ${valueOf(`${path}/towForceAtTakeoff`)} of pull in the line`;
  const inAir = one.inAir?.takeoffSpeed ?? null;
  return `${name} takes off at ${valueOf(`${path}/takeoffSpeed`)} (${
    valueOf(`${path}/takeoffSpeed/@interval`)
  })${pull}${
    inAir === null
      ? ""
      : `; in air the same wing under the same load would need ${
        valueOf(`${path}/inAir/takeoffSpeed`)
      }`
  }.`;
}

/**
 * Each design's takeoff in water, and the same wing's in air.
 *
 * @param answer shown under the name `takeoff`
 * @returns Markdown
 */
export function takeoffSentences(answer: TakeoffAnswer): string {
  return answer.designs.map(sentence).join(" ");
}
