/**
 * The short answer to "which glides further?", ready to be shown: headline, sentences, what it rests on, strip, JSON.
 *
 * @module
 */
import type { GlideAnswer, GlideComparison } from "../base/answers.ts";
import type { AnswerRecord, DesignMark } from "../base/records.ts";
import { printable } from "../base/printable.ts";
import type { DesignEvidence, GlideEvidence } from "../decide/glide-evidence.ts";
import { glideAnswerObject } from "./answer-json.ts";
import { findingWords } from "./findings-text.ts";
import { launchSentences, reachSentences } from "./launch-sentence.ts";
import { placeOf } from "./design-place.ts";
import { joinedHeadline } from "./joined-headline.ts";
import { blocksOf, flagSentences, restsSentences } from "./rests-sentence.ts";
import {
  effectSentences,
  moreRunsSentences,
  ratioSentences,
  shortSentences,
  SMALLEST_RATIO,
} from "./verdict-sentence.ts";

/** Options of the record. */
export interface VerdictRecordOptions {
  /** Names the files and the paths that prose refers to; "glide" unless said otherwise. */
  readonly name?: string;
  /** Software that made the answer, by name. */
  readonly versions?: Readonly<Record<string, string>>;
  /** Ratio that the count of further runs aims at. */
  readonly smallestRatio?: number;
}

/**
 * The comparison that the box of the answer is about: the strongest claim, else the first that can't be told yet, else
 * the first refusal.
 *
 * @param comparisons all against one baseline
 * @returns `null` where nothing was compared
 */
export function leadingComparison(
  comparisons: readonly GlideComparison[],
): GlideComparison | null {
  const value = (one: GlideComparison) => one.ratio?.value ?? 1;
  const better = comparisons.filter((one) => one.verdict === "candidate-better");
  if (better.length > 0) return better.reduce((a, b) => value(b) > value(a) ? b : a);
  const worse = comparisons.filter((one) => one.verdict === "baseline-better");
  if (worse.length > 0) return worse.reduce((a, b) => value(b) < value(a) ? b : a);
  return comparisons.find((one) => one.verdict === "cannot-tell-yet") ?? comparisons[0] ?? null;
}

function questionOf(comparisons: readonly GlideComparison[]): string {
  const [first, second] = comparisons;
  if (first === undefined) return "Which design glides further?";
  const base = printable(first.baseline);
  if (second === undefined) {
    return `Which glides further, ${base} or ${printable(first.candidate)}?`;
  }
  const others = comparisons.map((one) => printable(one.candidate));
  return `Which glides further than ${base}: ${others.slice(0, -1).join(", ")} or ` +
    `${others[others.length - 1]}?`;
}

function tagOf(evidence: GlideEvidence): string {
  const runs = evidence.designs.reduce((sum, one) => sum + one.runsUsed, 0);
  const blocks = blocksOf(evidence);
  const count = (n: number, noun: string) => `${n} ${noun}${n === 1 ? "" : "s"}`;
  const parts = [count(evidence.designs.length, "design"), count(runs, "run")];
  if (blocks > 0) parts.push(count(blocks, "block"));
  return parts.join(", ");
}

/** What the findings that forbid an answer say, each with its place and what would be right. */
function refusals(answer: GlideAnswer): string[] {
  return answer.findings.filter((one) => one.severity === "error").slice(0, 3)
    .map((one) => {
      const { where, what, wanted } = findingWords(one);
      return `${where === "" ? "" : `${where}: `}${what}${
        wanted === "" ? "" : ` Wanted: ${wanted}`
      }`;
    });
}

/** What holds of all candidates at once. */
function jointSentences(answer: GlideAnswer): string[] {
  return answer.findings.filter((one) => one.code === "joint-statement")
    .map((one) => printable(one.what));
}

function hasOddRun(design: DesignEvidence | undefined): boolean {
  return design?.runs.some((run) => run.used && run.flag !== null) ?? false;
}

/** The leading comparison first, the others in their own order. */
function inTurn(
  comparisons: readonly GlideComparison[],
  leading: GlideComparison | null,
): GlideComparison[] {
  return [...comparisons].sort((a, b) => Number(b === leading) - Number(a === leading));
}

/** The leading comparison in full, any other in a few sentences that stand together. */
function detailsOf(
  one: GlideComparison,
  leads: boolean,
  evidence: GlideEvidence,
  options: VerdictRecordOptions,
): string[] {
  const { launch } = evidence.answer;
  const design = (name: string): DesignEvidence | undefined =>
    evidence.designs.find((each) => each.design === name);
  const result = (name: string) => evidence.answer.designs.find((each) => each.design === name);
  const [base, other] = [design(one.baseline), design(one.candidate)];
  const [baseResult, otherResult] = [result(one.baseline), result(one.candidate)];
  if (launch === null) return [];
  const odd = [base, other].some(hasOddRun);
  const further = one.verdict === "cannot-tell-yet"
    ? moreRunsSentences(one.moreRuns, options.smallestRatio ?? SMALLEST_RATIO).map((sentence) =>
      odd ? `${sentence} The run that stands out is counted in that.` : sentence
    )
    : [];
  if (!leads) return [[...shortSentences(one, odd), ...further].join(" ")];
  const naive = evidence.naive.find((each) => each.candidate === one.candidate);
  return [
    ...ratioSentences(one, launch, odd),
    ...(one.ratio === null ? [] : reachSentences(launch, [base, other])),
    ...(base && other ? launchSentences(one, base, other, naive) : []),
    ...(baseResult && otherResult ? effectSentences(one, baseResult, otherResult) : []),
    ...further,
  ];
}

/**
 * The record of a glide verdict.
 *
 * @param evidence from the comparison
 * @param options name, versions, smallest ratio of interest
 * @returns plain data; show it with `show`
 */
export function verdictRecord(
  evidence: GlideEvidence,
  options: VerdictRecordOptions = {},
): AnswerRecord {
  const { answer } = evidence;
  const leading = leadingComparison(answer.comparisons);
  const verdict = leading?.verdict ?? "refused";
  const aheadName = verdict === "candidate-better"
    ? leading!.candidate
    : verdict === "baseline-better"
    ? leading!.baseline
    : null;
  const ratio = leading?.ratio ?? null;
  return {
    name: options.name ?? "glide",
    verdict,
    question: questionOf(answer.comparisons),
    headline: answer.comparisons.length === 0
      ? "No answer yet: there are no two designs with runs to compare."
      : joinedHeadline(inTurn(answer.comparisons, leading)),
    ahead: aheadName === null ? null : markOf(evidence, aheadName),
    details: [
      ...inTurn(answer.comparisons, leading).flatMap((one) =>
        detailsOf(one, one === leading, evidence, options)
      ).filter((sentence) => sentence !== ""),
      ...(verdict === "refused" ? refusals(answer) : []),
      ...flagSentences(evidence),
      ...jointSentences(answer),
    ],
    rests: restsSentences(evidence),
    strip: ratio === null || ratio.low === null || ratio.high === null
      ? null
      : { low: ratio.low, value: ratio.value, high: ratio.high },
    sides: leading === null ? ["", ""] : [
      `${printable(leading.baseline)} further`,
      `${printable(leading.candidate)} further`,
    ],
    tag: tagOf(evidence),
    answer: glideAnswerObject(answer, options.versions),
  };
}

function markOf(evidence: GlideEvidence, name: string): DesignMark {
  const place = placeOf(evidence, name);
  return { design: printable(name), place };
}
