/**
 * From a contrast of two designs to the words and numbers of the verdict.
 *
 * @module
 */
import type { GlideComparison, MoreRuns, RawRatio, Verdict } from "../base/answers.ts";
import { dataFaults } from "./data-faults.ts";
import { formatNumber } from "../base/rounding.ts";
import type { Result } from "../base/quantity.ts";
import { runsNeeded } from "../fit/runs-needed.ts";
import { halfWidth, probabilityFarther, type SeriesContrast } from "../fit/series-contrast.ts";
import {
  comparePair,
  type DesignRuns,
  flownApart,
  LEAST_MARGIN,
  meanEnd,
  type PairResult,
  type PairSetting,
} from "./glide-pair.ts";
import type { PreparedRun } from "./glide-runs.ts";
import { quantityFromLog } from "./log-quantity.ts";

/** A comparison, what it was made from, and why there is none. */
export interface PairVerdict {
  readonly comparison: GlideComparison;
  readonly result: PairResult | null;
  /** Why it was refused: a stable word and a sentence. */
  readonly refusal:
    | { readonly code: string; readonly what: string; readonly wanted: string }
    | null;
}

/**
 * The verdict of an interval: on one side of no difference, or not.
 *
 * @param contrast `null` where no interval can be told
 * @param level of the interval
 * @returns the verdict
 */
export function verdictOf(contrast: SeriesContrast | null, level = 0.95): Verdict {
  if (contrast === null) return "cannot-tell-yet";
  const half = halfWidth(contrast, level);
  if (contrast.logRatio - half > 0) return "candidate-better";
  if (contrast.logRatio + half < 0) return "baseline-better";
  return "cannot-tell-yet";
}

/** Whether the two may be compared at all; the reason if not. */
function refusalOf(
  baseline: DesignRuns,
  candidate: DesignRuns,
  pair: Result<PairResult>,
  { launch, faults }: PairSetting,
): PairVerdict["refusal"] {
  if (faults.length > 0) return dataFaults(faults);
  if (flownApart(baseline, candidate)) {
    return {
      code: "own-days",
      what:
        `${baseline.design} and ${candidate.design} were never flown in one block: the day may be the difference.`,
      wanted: "Both designs on the same day with the same rider, turn about.",
    };
  }
  if (!pair.ok) {
    return {
      code: "no-result",
      what: `${baseline.design} and ${candidate.design} can't be compared: ${pair.reason}.`,
      wanted: pair.reason.includes("launch speed to compare at")
        ? "A faster launch to compare at, or a mass nearer to those flown."
        : "launch_speed, end_speed, drop and distance of each run; look whether two columns are swapped.",
    };
  }
  for (
    const [design, series] of [[baseline, pair.baseline], [candidate, pair.candidate]] as const
  ) {
    // A common end lies 0.2 m/s below the launch at most: below the ends that were read nothing was ever flown.
    const end = pair.end === "own" ? series.endSpeed : meanEnd(design);
    if (launch.speed < end + (pair.end === "own" ? LEAST_MARGIN : 0)) {
      return {
        code: "launch-too-slow",
        what: `${design.design} ends its glides at ${end.toFixed(2)} m/s: a launch at ${
          formatNumber(launch.speed, 2)
        } m/s leaves hardly any glide to compare.`,
        wanted: `A launch speed of at least ${
          (Math.ceil((end + LEAST_MARGIN) * 10) / 10).toFixed(1)
        } m/s.`,
      };
    }
  }
  return null;
}

function rawRatio(baseline: DesignRuns, candidate: DesignRuns, pair: PairResult): RawRatio {
  const meanDistance = (design: DesignRuns) => {
    const used = design.runs.filter((one) => one.run!.inLevel);
    return used.reduce((total, one) => total + one.run!.distance, 0) / used.length;
  };
  const ratio = meanDistance(candidate) / meanDistance(baseline);
  const designEffect = Math.exp(pair.logRatio);
  const energyEffect = pair.candidate.energyHeight / pair.baseline.energyHeight;
  return {
    ratio,
    launchEffect: ratio / designEffect,
    designEffect,
    dragEffect: designEffect / energyEffect,
    energyEffect,
  };
}

function moreRuns(pair: PairResult, contrast: SeriesContrast, smallestRatio: number): MoreRuns {
  const [first, second] = [pair.baseline.count, pair.candidate.count];
  const runVariances = [
    contrast.baselineVariance * first,
    contrast.candidateVariance * second,
  ] as const;
  const flown = Math.min(first, second);
  const more = (fixedVariance: number) => {
    const needed = runsNeeded({ runVariances, fixedVariance, smallestRatio });
    return needed === null ? null : Math.max(0, needed - flown);
  };
  const now = more(contrast.shapeVariance + contrast.commonVariance);
  return { now, matchedLaunches: more(0), never: now === null };
}

/**
 * The verdict on one candidate against the baseline.
 *
 * @param baseline with at least one usable run
 * @param candidate with at least one usable run
 * @param setting launch and shared errors
 * @param smallestRatio smallest ratio of distances worth finding, above 1
 * @returns comparison of the contract, and what stands behind it
 */
export function judgePair(
  baseline: DesignRuns,
  candidate: DesignRuns,
  setting: PairSetting,
  smallestRatio: number,
): PairVerdict {
  const pair = comparePair(baseline, candidate, setting);
  const refusal = refusalOf(baseline, candidate, pair, setting);
  const names = { baseline: baseline.design, candidate: candidate.design };
  if (refusal !== null || !pair.ok) {
    return {
      comparison: {
        ...names,
        verdict: "refused",
        ratio: null,
        probabilityCandidateBetter: null,
        raw: null,
        end: pair.ok ? pair.end : "own",
        varianceShares: null,
        fragile: false,
        restsOn: [],
        moreRuns: null,
        family: "pointwise",
      },
      result: null,
      refusal,
    };
  }
  const { contrast } = pair;
  const verdict = verdictOf(contrast);
  const restsOn = runsItRestsOn(baseline, candidate, setting, verdict);
  return {
    comparison: {
      ...names,
      verdict,
      ratio: quantityFromLog({
        log: pair.logRatio,
        variance: contrast?.variance ?? null,
        degreesOfFreedom: contrast?.degreesOfFreedom ?? null,
        unit: "1",
      }),
      probabilityCandidateBetter: contrast === null ? null : probabilityFarther(contrast),
      raw: rawRatio(baseline, candidate, pair),
      end: pair.end,
      varianceShares: contrast === null ? null : {
        baselineScatter: contrast.baselineVariance / contrast.variance,
        candidateScatter: contrast.candidateVariance / contrast.variance,
        launchDifference: contrast.shapeVariance / contrast.variance,
        commonErrors: contrast.commonVariance / contrast.variance,
      },
      fragile: restsOn.length > 0,
      restsOn,
      moreRuns: contrast === null
        ? null
        : verdict === "cannot-tell-yet"
        ? moreRuns(pair, contrast, smallestRatio)
        : { now: 0, matchedLaunches: 0, never: false },
      family: "pointwise",
    },
    result: pair,
    refusal: null,
  };
}

/**
 * A design without some of its runs.
 *
 * @param design with its usable runs
 * @param runs to take out
 * @returns the design with the others
 */
export function without(design: DesignRuns, runs: ReadonlySet<object>): DesignRuns {
  return { ...design, runs: design.runs.filter((one) => !runs.has(one)) };
}

/**
 * How findings name a run: with its session where there are several.
 *
 * @param run of any session
 * @param setting that knows whether there are several
 * @returns "7", or "evening 7"
 */
export function runName(run: PreparedRun, setting: PairSetting): string {
  return setting.severalSessions ? `${run.prepared.session.name} ${run.glide.run}` : run.glide.run;
}

/** Names of the runs whose absence alone would change the verdict. */
function runsItRestsOn(
  baseline: DesignRuns,
  candidate: DesignRuns,
  setting: PairSetting,
  verdict: Verdict,
): string[] {
  return [...baseline.runs, ...candidate.runs].flatMap((run) => {
    const gone = new Set([run]);
    const [first, second] = [without(baseline, gone), without(candidate, gone)];
    if (first.runs.length === 0 || second.runs.length === 0) {
      return verdict === "cannot-tell-yet" ? [] : [runName(run, setting)];
    }
    const pair = comparePair(first, second, setting);
    const then = pair.ok && !flownApart(first, second)
      ? verdictOf(pair.contrast)
      : "cannot-tell-yet";
    return then === verdict ? [] : [runName(run, setting)];
  });
}
