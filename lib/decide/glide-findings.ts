/**
 * What a builder should know beside the verdict of one pair, as findings.
 *
 * @module
 */
import type { GlideComparison } from "../base/answers.ts";
import { type Finding, finding } from "../base/finding.ts";
import { formatInterval, formatNumber, formatQuantity } from "../base/rounding.ts";
import { comparePair, type PairResult, type PairSetting } from "./glide-pair.ts";
import type { PreparedRun } from "./glide-runs.ts";
import { runName, verdictOf, without } from "./glide-verdict.ts";
import type { JudgedPair } from "./judged-pair.ts";
import { launchFindings } from "./launch-findings.ts";
import { quantityFromLog } from "./log-quantity.ts";

/** A run that looks odd, and why. */
export interface FlaggedRun {
  readonly run: PreparedRun;
  readonly flag: string;
}

/** Ratio with interval, as prose has it: "1.12 (0.98 to 1.28)". */
function ratioText(pair: PairResult): string {
  const ratio = quantityFromLog({
    log: pair.logRatio,
    variance: pair.contrast?.variance ?? null,
    degreesOfFreedom: pair.contrast?.degreesOfFreedom ?? null,
    unit: "1",
  });
  const interval = ratio.low === null ? "no interval" : formatInterval(ratio, { apartFrom: 1 });
  return `${formatQuantity(ratio, { apartFrom: 1 })} (${interval})`;
}

const VERDICT_WORDS = {
  "candidate-better": (pair: GlideComparison) => `${pair.candidate} goes further`,
  "baseline-better": (pair: GlideComparison) => `${pair.baseline} goes further`,
  "cannot-tell-yet": () => "cannot tell yet",
  "refused": () => "no comparison",
} as const;

/**
 * Findings of one judged pair.
 *
 * @param judged pair with its verdict
 * @param setting launch and shared errors
 * @param flagged runs of either design that look odd
 * @returns findings, most serious first
 */
export function pairFindings(
  judged: JudgedPair,
  setting: PairSetting,
  flagged: readonly FlaggedRun[],
): Finding[] {
  const { comparison, result, refusal } = judged;
  if (refusal !== null) {
    const file = refusal.code === "data-faults" ? null : "glides.csv";
    return [finding({ severity: "error", file, ...refusal })];
  }
  if (result === null) return [];
  const { baseline, candidate } = comparison;
  return [
    ...fewRuns(judged),
    ...borrowedScatter(judged),
    ...oddRunFindings(judged, setting, flagged),
    ...(comparison.fragile && comparison.verdict !== "cannot-tell-yet"
      ? [finding({
        severity: "warning",
        code: "rests-on-one-run",
        file: "glides.csv",
        what: `The verdict on ${candidate} against ${baseline} rests on ${
          comparison.restsOn.length === 1 ? "run" : "runs"
        } ${comparison.restsOn.join(", ")}: without ${
          comparison.restsOn.length === 1 ? "it" : "any one of them"
        } it would be another.`,
        wanted: "More runs of both.",
      })]
      : []),
    ...commonEndFinding(judged),
    ...launchFindings(judged, setting.launch.speed),
    ...neverFinding(comparison),
  ];
}

function fewRuns({ comparison, baselineRuns, candidateRuns }: JudgedPair): Finding[] {
  const fewest = Math.min(baselineRuns.runs.length, candidateRuns.runs.length);
  const names = `${comparison.candidate} against ${comparison.baseline}`;
  if (fewest === 1) {
    return [finding({
      severity: "warning",
      code: "one-run",
      file: "glides.csv",
      what: `${names}: one run of a design gives a number but no idea how sure it is.`,
      wanted: "At least four runs of each design.",
    })];
  }
  if (comparison.ratio?.low === null) {
    return [finding({
      severity: "warning",
      code: "no-interval",
      file: "glides.csv",
      what: `${names}: too few runs inside the blocks to tell how sure the ratio is.`,
      wanted: "At least four runs of each design in a block.",
    })];
  }
  if (fewest <= 3) {
    return [finding({
      severity: "warning",
      code: "few-runs",
      file: "glides.csv",
      what:
        `${names}: so few runs (${fewest} of a design) that only a great difference would show.`,
      wanted: "At least four runs of each design.",
    })];
  }
  return [];
}

/** A design with one run in each block has no scatter of its own there. */
function borrowedScatter({ comparison, result, baselineRuns, candidateRuns }: JudgedPair) {
  if (result!.contrast?.method !== "within blocks") return [];
  return [baselineRuns, candidateRuns].flatMap(({ design, runs }) => {
    if (new Set(runs.map((one) => one.block)).size < runs.length) return [];
    return [finding({
      severity: "warning",
      code: "one-run-a-block",
      file: "glides.csv",
      column: "block",
      what:
        `${comparison.candidate} against ${comparison.baseline}: ${design} has only one run in each block, so how far its runs scatter can't be told; they are taken to scatter like the other design's. If they scatter more, the interval is too narrow.`,
      wanted: `At least two runs of ${design} in a block.`,
    })];
  });
}

function oddRunFindings(
  judged: JudgedPair,
  setting: PairSetting,
  flagged: readonly FlaggedRun[],
): Finding[] {
  const { comparison, baselineRuns, candidateRuns, result } = judged;
  const answerWithout = (runs: readonly FlaggedRun[]) => {
    const gone = new Set<object>(runs.map((one) => one.run));
    const [first, second] = [without(baselineRuns, gone), without(candidateRuns, gone)];
    if (first.runs.length === 0 || second.runs.length === 0) return "nothing to compare";
    const pair = comparePair(first, second, setting);
    if (!pair.ok) return `no comparison: ${pair.reason}`;
    return `${ratioText(pair)}, ${VERDICT_WORDS[verdictOf(pair.contrast)](comparison)}`;
  };
  const all = `with all runs ${ratioText(result!)}, ${
    VERDICT_WORDS[comparison.verdict](comparison)
  }`;
  const names = `Distance of ${comparison.candidate} over that of ${comparison.baseline}`;
  const each = flagged.map((one) =>
    finding({
      severity: "warning",
      code: "odd-run",
      file: "glides.csv",
      row: one.run.glide.row,
      what:
        `Run ${runName(one.run, setting)} of ${one.run.glide.design}: ${one.flag} It is kept. ` +
        `${names}: ${all}; without run ${runName(one.run, setting)} ${answerWithout([one])}.`,
      wanted: "Look at the recording; a reason in leave_out takes the run out.",
    })
  );
  if (flagged.length < 2) return each;
  return [
    ...each,
    finding({
      severity: "warning",
      code: "odd-runs-together",
      file: "glides.csv",
      count: flagged.length,
      what: `${names}: ${all}; without runs ${
        flagged.map((one) => runName(one.run, setting)).join(", ")
      } ${answerWithout(flagged)}.`,
    }),
  ];
}

function commonEndFinding({ comparison, result }: JudgedPair): Finding[] {
  if (comparison.end === "own") return [];
  return [finding({
    severity: "note",
    code: "common-end",
    file: "glides.csv",
    column: "ended",
    what:
      `${comparison.candidate} against ${comparison.baseline}: fewer than two runs of a design stalled, so its own end speed is not known; ` +
      `both are followed down to ${formatNumber(result!.baseline.endSpeed, 2)} m/s.`,
    wanted: "At least two runs of each design that glide until the wing stalls.",
  })];
}

function neverFinding(comparison: GlideComparison): Finding[] {
  const more = comparison.moreRuns;
  if (more === null || !more.never || comparison.verdict !== "cannot-tell-yet") return [];
  return [finding({
    severity: "note",
    code: "more-runs-do-not-help",
    what:
      `${comparison.candidate} against ${comparison.baseline}: no number of runs at these launches will tell` +
      `${
        more.matchedLaunches === null
          ? "."
          : `; with both launched at the same speed about ${more.matchedLaunches} more a side would.`
      }`,
    wanted: "Launch both designs at the same speed.",
  })];
}
