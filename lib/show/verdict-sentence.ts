/**
 * The verdict in words: what a builder may say on the jetty, and no more than the runs carry.
 *
 * There is no sentence for "no difference": runs can fail to show a difference, they can't show that there is none.
 *
 * @module
 */
import type { CommonLaunch, DesignGlide, GlideComparison, MoreRuns } from "../base/answers.ts";
import {
  formatInterval,
  formatNumber,
  formatPercent,
  formatProbability,
  formatQuantity,
  NO_BREAK_SPACE as S,
} from "../base/rounding.ts";
import { printable } from "../base/printable.ts";
import { atSentenceStart } from "../base/sentence-words.ts";

/** Ratio that the count of further runs aims at, unless another was asked for. */
export const SMALLEST_RATIO = 1.1;

/** Runs of each design that a few good days can hold. */
const MOST_FLOWN = 60;

/**
 * The bottom line of one comparison, one sentence.
 *
 * @param comparison any verdict; with the runs that it rests on, a claim that hangs on them says so
 * @returns for instance "Birch glides further than alder from the same launch."
 * @example
 * ```ts
 * import { headlineOf } from "lakeproof/show/verdict-sentence.ts";
 * const line = headlineOf({ baseline: "alder", candidate: "birch", verdict: "cannot-tell-yet" });
 * if (line !== "Cannot tell yet whether birch differs from alder.") throw new Error(line);
 * ```
 */
export function headlineOf(
  comparison:
    & Pick<GlideComparison, "baseline" | "candidate" | "verdict">
    & Partial<Pick<GlideComparison, "restsOn">>,
): string {
  const base = printable(comparison.baseline);
  const other = printable(comparison.candidate);
  const hangs = hangingOn(comparison.restsOn ?? []);
  switch (comparison.verdict) {
    case "candidate-better":
      return `${atSentenceStart(other)} glides further than ${base} from the same launch${hangs}.`;
    case "baseline-better":
      return `${atSentenceStart(base)} glides further than ${other} from the same launch${hangs}.`;
    case "cannot-tell-yet":
      return `Cannot tell yet whether ${other} differs from ${base}.`;
    case "refused":
      return `These runs can't answer whether ${other} or ${base} glides further.`;
  }
}

/** A claim that a single run can overturn says so in the same breath. */
function hangingOn(runs: readonly string[]): string {
  const [only] = runs;
  if (only === undefined) return "";
  return runs.length === 1
    ? `, if run ${printable(only)} is right`
    : ", but it hangs on single runs";
}

/**
 * "4.1 m/s, 0.18 m of height to lose, 84 kg": without these three a ratio means little.
 *
 * @param launch the common one
 * @returns speed, height and mass with their units
 */
export function launchInWords(launch: CommonLaunch): string {
  const speed = `${settingText(launch.speed)}${S}m/s`;
  const drop = `${formatNumber(launch.drop, 2)}${S}m of height to lose`;
  return `${speed}, ${drop}, ${settingText(launch.mass)}${S}kg`;
}

/**
 * A setting such as 84, 4.1 or 4.15, with as many decimals as it needs, two at most.
 *
 * @param value in whatever unit follows it
 * @returns the number without unit
 */
export function settingText(value: number): string {
  const decimals = [0, 1].find((one) => Number(value.toFixed(one)) === Number(value.toFixed(2)));
  return formatNumber(value, decimals ?? 2);
}

/**
 * The sentences with ratio and interval, and how likely it is.
 *
 * @param comparison with a ratio
 * @param launch the common launch
 * @param odd whether a run of either stands out; it may pull the ratio, so nothing is said of a lean
 * @returns sentences; none where the comparison was refused
 */
export function ratioSentences(
  comparison: GlideComparison,
  launch: CommonLaunch,
  odd = false,
): string[] {
  const { ratio, probabilityCandidateBetter: probability, verdict } = comparison;
  if (ratio === null) return [];
  const base = printable(comparison.baseline);
  const other = printable(comparison.candidate);
  const apart = { apartFrom: 1 };
  const level = formatPercent(ratio.level);
  const known = ratio.low !== null || ratio.high !== null;
  const ends = !known
    ? "so few runs tell nothing of how sure that is"
    : `the ${level} interval runs from ${formatInterval(ratio, apart)}`;
  const joint = comparison.family === "joint" ? " (it holds for all designs at once)" : "";
  const end = comparison.end === "own"
    ? "each down to its own end speed"
    : "both down to one common end speed, since too few runs stalled";
  const sentences = [
    `From the same launch (${launchInWords(launch)}) ${other} covers ` +
    `${formatQuantity(ratio, apart)} times the distance of ${base}, ${end}; ${ends}${joint}.`,
  ];
  if (probability !== null && verdict !== "cannot-tell-yet") {
    const ahead = verdict === "candidate-better" ? probability : 1 - probability;
    const name = verdict === "candidate-better" ? other : base;
    sentences.push(`The probability that ${name} is the better glider is ${inWords(ahead)}.`);
  }
  if (verdict === "cannot-tell-yet" && known) {
    sentences.push(`Equal is inside the interval.${odd ? "" : leaning(comparison)}`);
  }
  return sentences;
}

/**
 * A comparison in one sentence or two, for those that the answer is not mainly about.
 *
 * @param comparison any verdict
 * @param odd whether a run of either stands out; nothing is then said of a lean
 * @returns sentences; none where the comparison was refused
 */
export function shortSentences(comparison: GlideComparison, odd = false): string[] {
  const { ratio, verdict } = comparison;
  if (ratio === null) return [];
  const [base, other] = [printable(comparison.baseline), printable(comparison.candidate)];
  const apart = { apartFrom: 1 };
  const known = ratio.low !== null || ratio.high !== null;
  const ends = known
    ? `${formatPercent(ratio.level)} interval ${formatInterval(ratio, apart)}`
    : "so few runs tell nothing of how sure that is";
  const sentence = `${atSentenceStart(other)} covers ${
    formatQuantity(ratio, apart)
  } times the distance of ${base} (${ends})`;
  if (verdict !== "cannot-tell-yet" || !known) return [`${sentence}.`];
  return [`${sentence}; equal is inside the interval.${odd ? "" : leaning(comparison)}`];
}

function inWords(probability: number): string {
  return formatProbability(Math.min(1, Math.max(0, probability)));
}

function leaning({ baseline, candidate, probabilityCandidateBetter: p }: GlideComparison): string {
  if (p === null) return "";
  const ahead = Math.max(p, 1 - p);
  if (ahead < 0.6) return " The runs lean neither way.";
  const name = printable(p > 0.5 ? candidate : baseline);
  return ` The runs lean towards ${name} (probability ${inWords(ahead)}); a claim needs more ` +
    `than ${formatNumber(97.5, 1)}${S}%.`;
}

/**
 * Where the ratio comes from: drag, and speed left to spend.
 *
 * @param comparison with its raw ratio
 * @param baseline the baseline's own result
 * @param candidate the candidate's own result
 * @returns one sentence, or none where the effects can't be told apart
 */
export function effectSentences(
  comparison: GlideComparison,
  baseline: DesignGlide,
  candidate: DesignGlide,
): string[] {
  const { raw } = comparison;
  if (raw === null || comparison.end === "common") return [];
  const [base, other] = [printable(baseline.design), printable(candidate.design)];
  const drag = amount(raw.dragEffect, "less", "more") === null
    ? `${other} has about as much drag`
    : `${other} has ${amount(raw.dragEffect, "less", "more")} drag (worth a factor of ` +
      `${formatNumber(raw.dragEffect, 2)})`;
  const speeds = candidate.endSpeed === null || baseline.endSpeed === null
    ? ""
    : `: it flies on down to ${formatNumber(candidate.endSpeed.value, 2)}${S}m/s, ${base} to ` +
      `${formatNumber(baseline.endSpeed.value, 2)}${S}m/s`;
  const energy = amount(raw.energyEffect, "more", "less") === null
    ? "about as much speed to spend"
    : `${amount(raw.energyEffect, "more", "less")} speed to spend (a factor of ` +
      `${formatNumber(raw.energyEffect, 2)}${speeds})`;
  return [`In that ratio ${drag} and ${energy}.`];
}

/** The word for a factor above or below 1; `null` for one that would be printed as 1.00. */
function amount(factor: number, above: string, below: string): string | null {
  if (Math.abs(factor - 1) < 0.005) return null;
  return factor > 1 ? above : below;
}

/**
 * What it would take to tell, for a comparison that can't be told yet.
 *
 * @param more as counted from the scatter of these runs
 * @param smallest the ratio that should be found four times in five
 * @returns one sentence or more, none where nothing was counted
 */
export function moreRunsSentences(more: MoreRuns | null, smallest = SMALLEST_RATIO): string[] {
  if (more === null) return [];
  const goal = `a difference of ${formatPercent(smallest - 1)}`;
  const { now, matchedLaunches: matched } = more;
  if (more.never || now === null) {
    const then = matched === null
      ? ""
      : matched === 0
      ? " The runs that you have would then do."
      : ` About ${runs(matched)} of each would then do.`;
    return [
      `No number of runs at these launches would settle ${goal}: launch both at the same ` +
      `speed.${then}`,
    ];
  }
  if (now === 0) {
    return [
      `So many runs find ${goal} four times in five. A smaller one needs more runs.`,
    ];
  }
  const alike = matched !== null && matched < now
    ? ` With both launched alike it would be ${matched === 0 ? "none" : `about ${matched}`}.`
    : "";
  return now > MOST_FLOWN
    ? [
      `It would take about ${runs(now)} of each, far more than anyone flies, to settle ${goal} ` +
      `four times in five.${alike}`,
    ]
    : [
      `About ${runs(now)} of each would settle ${goal} four times in five.${alike} Settle the ` +
      "number before you begin: who stops at the first clear answer finds differences that are not there.",
    ];
}

function runs(count: number): string {
  return `${count} more run${count === 1 ? "" : "s"}`;
}
