/**
 * What a verdict rests on: runs used, runs left out and why, runs that stand out, and what it does not say.
 *
 * @module
 */
import type { GlideAnswer, GlideComparison } from "../base/answers.ts";
import { formatInterval, formatNumber, formatQuantity, NO_BREAK_SPACE } from "../base/rounding.ts";
import type { GlideEvidence, RunEvidence } from "../decide/glide-evidence.ts";
import { listInWords, printable } from "./printable.ts";
import { headlineOf } from "./verdict-sentence.ts";

/** Runs named one by one; more than that stand in the table of runs. */
const MOST_NAMED = 4;

function count(number: number, noun: string): string {
  return `${number} ${noun}${number === 1 ? "" : "s"}`;
}

function allRuns(evidence: GlideEvidence): RunEvidence[] {
  return evidence.designs.flatMap((one) => one.runs);
}

function withFullStop(text: string): string {
  return /[.!?]$/.test(text) ? text : `${text}.`;
}

function leftOut(evidence: GlideEvidence): string {
  const out = allRuns(evidence).filter((run) => !run.used);
  if (out.length === 0) return "No run was left out.";
  const named = out.slice(0, MOST_NAMED).map((run) => {
    const reason = run.reason === null ? "" : ` (${printable(run.reason).replace(/\.$/, "")})`;
    return `run ${printable(run.run)} of ${printable(run.design)}${reason}`;
  });
  const more = out.length - named.length;
  if (more > 0) named.push(`${more} more that the table of runs lists`);
  return `Left out: ${listInWords(named)}.`;
}

function launches(evidence: GlideEvidence): string {
  const speeds = allRuns(evidence).filter((run) => run.used).map((run) => run.launchSpeed)
    .filter((speed) => speed !== null);
  if (speeds.length === 0) return "";
  const [low, high] = [Math.min(...speeds), Math.max(...speeds)];
  return `, launched at ${formatNumber(low, 1)} to ${formatNumber(high, 1)}${NO_BREAK_SPACE}m/s`;
}

/** How many blocks (rider and day) the used runs fill; 0 where none is named. */
export function blocksOf(evidence: GlideEvidence): number {
  const named = allRuns(evidence).filter((run) => run.used && run.block !== null);
  return new Set(named.map((run) => `${run.session}\n${run.block}`)).size;
}

/**
 * Whether one run decides, in a sentence.
 *
 * @param comparison any verdict
 */
export function fragileSentence(comparison: GlideComparison): string {
  const { verdict } = comparison;
  if (verdict === "refused") return "";
  if (!comparison.fragile) return "The verdict stays if any one run is left out.";
  const named = comparison.restsOn.slice(0, MOST_NAMED).map((run) => printable(run));
  const more = comparison.restsOn.length - named.length;
  if (more > 0) named.push(`${more} more`);
  const one = comparison.restsOn.length === 1;
  const which = named.length === 0
    ? "a single run"
    : `${one ? "run" : "any one of the runs"} ${named.join(", ")}`;
  if (verdict === "cannot-tell-yet") {
    return `Without ${which} it would read as a claim; that is no reason to leave it out.`;
  }
  return `It hangs on single runs: without ${which} the verdict would be another. Fly more.`;
}

/**
 * What the verdict rests on.
 *
 * @param evidence whole
 * @returns one paragraph
 */
export function restsSentences(evidence: GlideEvidence): string {
  const used = evidence.designs.map((one) =>
    `${count(one.runsUsed, "run")} of ${printable(one.design)}`
  );
  const blocks = blocksOf(evidence);
  const where = blocks === 0
    ? ""
    : blocks === 1
    ? ", all in one block (rider and day)"
    : ` in ${blocks} blocks (rider and day)`;
  const fragile = evidence.answer.comparisons.map((one) => {
    const sentence = fragileSentence(one);
    const many = evidence.answer.comparisons.length > 1;
    return many && sentence !== "" ? `${printable(one.candidate)}: ${sentence}` : sentence;
  });
  return [
    used.length === 0
      ? "There is no run to rest on."
      : `Rests on ${listInWords(used)}${where}${launches(evidence)}.`,
    leftOut(evidence),
    ...fragile,
    "It speaks of glide at launches and loads like these, and of nothing else: not of strength, " +
    "not of balance, not of how a foil lets go.",
  ].filter((one) => one !== "").join(" ");
}

/**
 * Sentences on runs that stand out but count, with the answer that leaving them out would give.
 *
 * @param evidence whole
 * @param without the answer with these runs left out, where it was worked out
 */
export function flagSentences(evidence: GlideEvidence, without: GlideAnswer | null): string[] {
  const flagged = allRuns(evidence).filter((run) => run.used && run.flag !== null);
  if (flagged.length === 0) return [];
  const sentences = flagged.map((run) =>
    `Run ${printable(run.run)} of ${printable(run.design)} stands out: ` +
    withFullStop(printable(run.flag!))
  );
  const counted = flagged.length === 1 ? "It counts" : "They count";
  sentences.push(`${counted} in the verdict, since nobody may drop a run for its result alone.`);
  for (const one of without?.comparisons ?? []) {
    const numbers = one.ratio === null
      ? ""
      : ` Ratio ${formatQuantity(one.ratio, { apartFrom: 1 })}, interval ` +
        `${formatInterval(one.ratio, { apartFrom: 1 })}.`;
    sentences.push(
      `Without ${flagged.length === 1 ? "it" : "them"} the answer would read: ` +
        `${headlineOf(one)}${numbers}`,
    );
  }
  return sentences;
}
