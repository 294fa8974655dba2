/**
 * The answer as other programs read it: keys in a fixed order, numbers to 12 significant digits, never NaN or infinity.
 *
 * Twelve digits are more than any measurement holds and fewer than engines agree on, so that the same data gives the same
 * bytes.
 *
 * @module
 */
import type {
  GlideAnswer,
  GlideComparison,
  MoreRuns,
  RawRatio,
  RunUse,
  VarianceShares,
} from "../base/answers.ts";
import type { Finding } from "../base/finding.ts";
import type { Quantity } from "../base/quantity.ts";

const SIGNIFICANT_DIGITS = 12;

type Plain = null | boolean | number | string | readonly Plain[] | {
  readonly [key: string]: Plain;
};

function rounded(value: Plain, path: string): Plain {
  if (typeof value === "number") {
    if (!Number.isFinite(value)) {
      throw new RangeError(
        `Cannot write an answer as JSON as every number must be finite: ${value} at ${path}`,
      );
    }
    return Number(value.toPrecision(SIGNIFICANT_DIGITS)) + 0;
  }
  if (value === null || typeof value !== "object") return value;
  if (Array.isArray(value)) return value.map((one, index) => rounded(one, `${path}/${index}`));
  return Object.fromEntries(
    Object.entries(value).map(([key, one]) => [key, rounded(one, `${path}/${key}`)]),
  );
}

function quantity(q: Quantity | null): Plain {
  if (q === null) return null;
  const { value, standardUncertainty, degreesOfFreedom, low, high, level, kind, unit } = q;
  return { value, standardUncertainty, degreesOfFreedom, low, high, level, kind, unit };
}

function finding(one: Finding): Plain {
  const { severity, code, file, row, column, count, what, wanted } = one;
  return { severity, code, file, row, column, count, what, wanted };
}

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
    ratio: quantity(one.ratio),
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
  return { run, design, used, reason, glideRatio: quantity(one.glideRatio) };
}

function sorted(record: Readonly<Record<string, string>>): Plain {
  return Object.fromEntries(
    Object.keys(record).sort().map((key) => [key, record[key]!] as const),
  );
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
    contract: answer.contract,
    question: answer.question,
    sessions: [...answer.sessions],
    findings: answer.findings.map(finding),
    versions: sorted({ ...answer.versions, ...versions }),
    dataChecksums: answer.dataChecksums.map(({ file, sha256 }) => ({ file, sha256 })),
    launch: launch === null ? null : { speed: launch.speed, drop: launch.drop, mass: launch.mass },
    designs: answer.designs.map((one) => ({
      design: one.design,
      glideRatio: quantity(one.glideRatio),
      distance: quantity(one.distance),
      endSpeed: quantity(one.endSpeed),
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
export function answerText(answer: GlideAnswer): string {
  return JSON.stringify(answer, null, 2) + "\n";
}
