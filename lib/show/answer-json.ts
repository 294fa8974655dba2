/**
 * The answer as other programs read it: keys in a fixed order, numbers to 12 significant digits, never NaN or infinity.
 *
 * Twelve digits are more than any measurement holds and fewer than engines agree on, so that the same data gives the same
 * bytes.
 *
 * @module
 */
import type {
  AnswerBase,
  GlideAnswer,
  GlideComparison,
  MoreRuns,
  RawRatio,
  RunUse,
  VarianceShares,
} from "../base/answers.ts";
import { headObject, type Plain, quantityObject, rounded } from "./plain-answer.ts";

function raw(one: RawRatio | null): Plain {
  if (one === null) return null;
  const { ratio, launchEffect, designEffect, dragEffect, energyEffect } = one;
  return { ratio, launchEffect, designEffect, dragEffect, energyEffect };
}

function shares(one: VarianceShares | null): Plain {
  if (one === null) return null;
  const { baselineScatter, candidateScatter, launchDifference, commonErrors } = one;
  return { baselineScatter, candidateScatter, launchDifference, commonErrors };
}

function moreRuns(one: MoreRuns | null): Plain {
  if (one === null) return null;
  const { now, matchedLaunches, never } = one;
  return { now, matchedLaunches, never };
}

function comparison(one: GlideComparison): Plain {
  return {
    baseline: one.baseline,
    candidate: one.candidate,
    verdict: one.verdict,
    ratio: quantityObject(one.ratio),
    probabilityCandidateBetter: one.probabilityCandidateBetter,
    raw: raw(one.raw),
    end: one.end,
    varianceShares: shares(one.varianceShares),
    fragile: one.fragile,
    restsOn: [...one.restsOn],
    moreRuns: moreRuns(one.moreRuns),
    family: one.family,
  };
}

function runUse(one: RunUse): Plain {
  const { run, design, used, reason } = one;
  return { run, design, used, reason, glideRatio: quantityObject(one.glideRatio) };
}

/**
 * A glide answer as a plain object with keys in the contract's order and numbers rounded.
 *
 * @param answer as decided
 * @param versions software that made it, by name; what the answer already holds is kept
 * @returns a new object that `JSON.stringify` turns into the same bytes each time
 * @throws RangeError when a number is not finite, with its path
 * @example
 * ```ts
 * import { glideAnswerObject } from "lakeproof/show/answer-json.ts";
 * const answer = glideAnswerObject({
 *   contract: 1,
 *   question: "glide",
 *   sessions: ["invented"],
 *   findings: [],
 *   versions: {},
 *   dataChecksums: [],
 *   launch: { speed: 0.1 + 0.2, drop: 0.18, mass: 84 },
 *   designs: [],
 *   comparisons: [],
 *   runs: [],
 * });
 * if (answer.launch?.speed !== 0.3) throw new Error("twelve digits");
 * ```
 */
export function glideAnswerObject(
  answer: GlideAnswer,
  versions: Readonly<Record<string, string>> = {},
): GlideAnswer {
  const { launch } = answer;
  const ordered: Plain = {
    ...headObject(answer, versions),
    launch: launch === null ? null : { speed: launch.speed, drop: launch.drop, mass: launch.mass },
    designs: answer.designs.map((one) => ({
      design: one.design,
      glideRatio: quantityObject(one.glideRatio),
      distance: quantityObject(one.distance),
      endSpeed: quantityObject(one.endSpeed),
      runsUsed: one.runsUsed,
    })),
    comparisons: answer.comparisons.map(comparison),
    runs: answer.runs.map(runUse),
  };
  return rounded(ordered, "") as unknown as GlideAnswer;
}

/**
 * The JSON text of an answer: two spaces of indent, a line feed at the end.
 *
 * @param answer whole
 * @returns JSON
 */
export function answerText(answer: AnswerBase): string {
  return JSON.stringify(answer, null, 2) + "\n";
}
