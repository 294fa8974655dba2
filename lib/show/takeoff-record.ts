/**
 * The short answer to "from which speed does each design carry me, and what does it take?", ready to be shown.
 *
 * @module
 */
import type { AnswerRecord } from "../base/records.ts";
import type { TakeoffDesign } from "../decide/design-takeoff.ts";
import type { TakeoffEvidence } from "../decide/estimate-takeoff.ts";
import { findingWords } from "./findings-text.ts";
import { takeoffAnswerObject } from "./takeoff-json.ts";
import { excessSentence } from "./takeoff-measured-table.ts";
import {
  bestSpeedsSentence,
  inAirSentence,
  settingSentence,
  stallSentence,
  TAKEOFF_CAUTION,
  TAKEOFF_INTERVAL,
  TAKEOFF_WORDS,
  takeoffHeadline,
  takeoffRatioSentence,
  takeoffSentence,
} from "./takeoff-sentence.ts";

/** Options of the record. */
export interface TakeoffRecordOptions {
  /** Names the files and the paths that prose refers to; "takeoff" unless said otherwise. */
  readonly name?: string;
  /** Software that made the answer, by name. */
  readonly versions?: Readonly<Record<string, string>>;
}

/** Errors in words, where nothing can be told. */
function refusals({ answer }: TakeoffEvidence): string[] {
  return answer.findings.filter((one) => one.severity === "error").slice(0, 3).map((one) => {
    const { where, what, wanted } = findingWords(one);
    return `${where === "" ? "" : `${where}: `}${what}${wanted === "" ? "" : ` Wanted: ${wanted}`}`;
  });
}

/** All that can be said of a design on its own; of one among several only what stands beside the others, as the box is the short answer. */
function detailsOf({ answer: one, prepared }: TakeoffDesign, alone: boolean): string[] {
  const short = [takeoffSentence(one), bestSpeedsSentence(one)];
  const whole = !alone ? short : [
    ...short,
    inAirSentence(one),
    stallSentence(one, prepared.craft.largestLiftCoefficient),
    excessSentence(one),
  ];
  return whole.filter((sentence) => sentence !== "");
}

/**
 * The record of a takeoff answer.
 *
 * @param evidence whole
 * @param options name, versions
 * @returns plain data; show it with `show`
 *
 * @example
 * ```ts
 * import { estimateTakeoff } from "lakeproof/decide/estimate-takeoff.ts";
 * import { readSession } from "lakeproof/read/read-session.ts";
 * import { takeoffRecord } from "lakeproof/show/takeoff-record.ts";
 * const record = takeoffRecord(estimateTakeoff(readSession("lake", new Map())));
 * if (record.verdict !== "refused") throw new Error(record.headline);
 * ```
 */
export function takeoffRecord(
  evidence: TakeoffEvidence,
  options: TakeoffRecordOptions = {},
): AnswerRecord {
  const { answer, designs } = evidence;
  const flying = answer.designs.filter((one) => one.takeoffSpeed !== null);
  const [alone, ...others] = designs;
  const lone = alone === undefined || others.length > 0
    ? null
    : { design: alone.answer.design, place: alone.prepared.place };
  return {
    name: options.name ?? "takeoff",
    verdict: flying.length > 0 ? "told" : "refused",
    question: "From which speed does each design carry me, and what does it take to get there?",
    headline: takeoffHeadline(answer.designs),
    ahead: lone,
    details: [
      ...designs.flatMap((one) => detailsOf(one, others.length === 0)),
      ...answer.comparisons.map(takeoffRatioSentence),
      ...(flying.length > 0 ? [] : refusals(evidence)),
    ],
    rests: [settingSentence(answer.setting), TAKEOFF_INTERVAL, TAKEOFF_WORDS, TAKEOFF_CAUTION]
      .filter((one) => one !== "").join(" "),
    strip: null,
    sides: ["", ""],
    tag: `${answer.designs.length} ${
      answer.designs.length === 1 ? "design" : "designs"
    }, predicted`,
    answer: takeoffAnswerObject(answer, options.versions),
  };
}
