/**
 * What a verdict rests on: runs used, runs left out and why, runs that stand out, and what it does not say.
 *
 * @module
 */
import type { Finding } from "../base/finding.ts";
import type { GlideAnswer, GlideComparison } from "../base/answers.ts";
import { formatNumber, NO_BREAK_SPACE } from "../base/rounding.ts";
import { printable } from "../base/printable.ts";
import { listInWords } from "../base/sentence-words.ts";
import type { GlideEvidence, RunEvidence } from "../decide/glide-evidence.ts";

/** Runs named one by one; more than that stand in the table of runs. */
const MOST_NAMED = 4;

/** What the answer says of runs of designs that nobody asked about. */
const NOT_COMPARED = "not compared";

function count(number: number, noun: string): string {
  return `${number} ${noun}${number === 1 ? "" : "s"}`;
}

function allRuns(evidence: GlideEvidence): RunEvidence[] {
  return evidence.designs.flatMap((one) => one.runs);
}

function reasonText(reason: string): string {
  return printable(reason).replace(/^left out /, "").replace(/\.$/, "");
}

function leftOut(answer: GlideAnswer): string {
  const out = answer.runs.filter((run) => !run.used && run.reason !== NOT_COMPARED);
  const faulty = rowsWithFaults(answer.findings, "glides.csv");
  if (out.length === 0) return faulty === "" ? "No run was left out." : faulty;
  const named = out.slice(0, MOST_NAMED).map((run) => {
    const reason = run.reason === null ? "" : ` (${reasonText(run.reason)})`;
    return `run ${printable(run.run)} of ${printable(run.design)}${reason}`;
  });
  const more = out.length - named.length;
  if (more > 0) named.push(`${more} more that the table of runs lists`);
  return `Left out: ${listInWords(named)}.${faulty === "" ? "" : ` ${faulty}`}`;
}

/**
 * Says that rows with faults do not count, so that nobody reads "nothing was left out" above them.
 *
 * @param findings of the answer, those of reading included
 * @param file whose rows it is about
 * @returns one sentence, or nothing where there is no fault
 */
export function rowsWithFaults(findings: readonly Finding[], file: string): string {
  const faulty = findings.some((one) =>
    one.severity === "error" &&
    (one.code === "data-faults" || (one.file === file && one.row !== null))
  );
  return faulty ? `Rows of ${file} with errors do not count: the findings name them.` : "";
}

function launches(evidence: GlideEvidence): string {
  const speeds = allRuns(evidence).filter((run) => run.used).map((run) => run.launchSpeed)
    .filter((speed) => speed !== null);
  if (speeds.length === 0) return "";
  const [low, high] = [Math.min(...speeds), Math.max(...speeds)];
  const [from, to] = [formatNumber(low, 1), formatNumber(high, 1)];
  return `, launched at ${from === to ? from : `${from} to ${to}`}${NO_BREAK_SPACE}m/s`;
}

/**
 * How many blocks (rider and day) the used runs fill; 0 where none is named.
 *
 * @param evidence of a comparison
 * @returns how many, blocks of one name in two sessions apart
 */
export function blocksOf(evidence: GlideEvidence): number {
  const named = allRuns(evidence).filter((run) => run.used && run.block !== null);
  return new Set(named.map((run) => `${run.session}\n${run.block}`)).size;
}

/**
 * Whether one run decides, in a sentence.
 *
 * @param comparison any verdict
 */
function fragileSentence(comparison: GlideComparison): string {
  const { verdict } = comparison;
  const { ratio } = comparison;
  if (verdict === "refused" || ratio === null || (ratio.low === null && ratio.high === null)) {
    return "";
  }
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

/** Once where all comparisons say the same, else each with its candidate's name. */
function fragileSentences(comparisons: readonly GlideComparison[]): string[] {
  const sentences = comparisons.map(fragileSentence);
  if (new Set(sentences).size <= 1) return sentences.slice(0, 1);
  return sentences.map((sentence, at) =>
    sentence === "" ? "" : `On ${printable(comparisons[at]!.candidate)}: ` +
      sentence.charAt(0).toLowerCase() + sentence.slice(1)
  );
}

/**
 * What the verdict rests on.
 *
 * @param evidence whole
 * @returns one paragraph
 */
export function restsSentences(evidence: GlideEvidence): string {
  if (evidence.answer.runs.length === 0) return "There is no run to rest on.";
  const used = evidence.answer.designs.map((one) =>
    `${count(one.runsUsed, "run")} of ${printable(one.design)}`
  );
  const blocks = blocksOf(evidence);
  const where = blocks === 0
    ? ""
    : blocks === 1
    ? ", all in one block (rider and day)"
    : ` in ${blocks} blocks (rider and day)`;
  const fragile = fragileSentences(evidence.answer.comparisons);
  return [
    used.length === 0
      ? "There is no run to rest on."
      : `Rests on ${listInWords(used)}${where}${launches(evidence)}.`,
    leftOut(evidence.answer),
    ...fragile,
    "It speaks of glide at launches and loads like these, and of nothing else: not of strength, " +
    "not of balance, not of how a foil lets go.",
  ].filter((one) => one !== "").join(" ");
}

/** Codes of the findings that hold a flagged run together with the answer without it. */
const ODD_RUNS = ["odd-run", "odd-runs-together"];

/**
 * Sentences on runs that stand out but count, each with the answer that leaving it out would give.
 *
 * @param evidence whole
 * @returns what the findings say; none where no run stands out
 */
export function flagSentences(evidence: GlideEvidence): string[] {
  return evidence.answer.findings.filter((one) => ODD_RUNS.includes(one.code))
    .map((one) => printable(one.what));
}
