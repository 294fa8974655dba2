/**
 * What differing launches do to a comparison.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import { formatNumber, formatPercent } from "../base/rounding.ts";
import { covarianceOf, meanOf, varianceOf } from "../infer/sample.ts";
import { studentTUpperTail } from "../numeric/distributions.ts";
import type { JudgedPair } from "./judged-pair.ts";
import type { DesignRuns, PairResult } from "./glide-pair.ts";

/** m/s between mean launches from which on a difference is worth a word. */
const LAUNCH_GAP = 0.5;

/** m/s from the slowest launch to the fastest of both designs within which nothing tells the shape of drag. */
const ALIKE = 0.4;

/** m/s beyond the mean launches; rounding to 0.1 m/s stays below it. */
const BEYOND = 0.1;

/**
 * Findings on launches that differ: how much doubt they cause, and whether the assumed shape of drag fits.
 *
 * @param judged pair with its result
 * @param launchSpeed the launch that both are compared from, m/s
 * @returns findings
 */
export function launchFindings(judged: JudgedPair, launchSpeed: number): Finding[] {
  const { comparison, result, baselineRuns, candidateRuns } = judged;
  const { contrast } = result!;
  const launchOf = (design: DesignRuns) => meanOf(design.runs.map((one) => one.run!.launchSpeed));
  const launches = [launchOf(baselineRuns), launchOf(candidateRuns)];
  const [slowest, fastest] = [Math.min(...launches), Math.max(...launches)];
  const gap = fastest - slowest;
  const found: Finding[] = [];
  if (contrast !== null && gap > LAUNCH_GAP) {
    const sampling = Math.sqrt(contrast.baselineVariance + contrast.candidateVariance);
    if (Math.sqrt(contrast.shapeVariance) > sampling / 2) {
      found.push(finding({
        severity: "warning",
        code: "launches-differ",
        file: "glides.csv",
        column: "launch_speed",
        what: `${comparison.candidate} against ${comparison.baseline}: mean launches differ by ${
          formatNumber(gap, 1)
        } m/s. Launched alike, the interval would be about ${
          formatPercent(1 - Math.sqrt(1 - contrast.shapeVariance / contrast.variance))
        } narrower; more runs do not make up for it.`,
        wanted: "Launch both designs at the same speed.",
      }));
    }
  }
  const speeds = [baselineRuns, candidateRuns].flatMap((design) =>
    design.runs.map((one) => one.run!.launchSpeed)
  );
  if (speeds.length > 2 && Math.max(...speeds) - Math.min(...speeds) <= ALIKE) {
    found.push(finding({
      severity: "note",
      code: "launched-alike",
      file: "glides.csv",
      column: "launch_speed",
      what: `${comparison.candidate} against ${comparison.baseline}: all launches lie between ${
        formatNumber(Math.min(...speeds), 1)
      } and ${
        formatNumber(Math.max(...speeds), 1)
      } m/s. That is the surest way to compare, but the shape of drag over speed was not tested: the ratio holds for launches like these.`,
    }));
  }
  if (launchSpeed > fastest + BEYOND || launchSpeed < slowest - BEYOND) {
    found.push(finding({
      severity: "note",
      code: "launch-beyond-runs",
      what: `${comparison.candidate} against ${comparison.baseline}: compared from ${
        formatNumber(launchSpeed, 2)
      } m/s, though the mean launches were ${formatNumber(slowest, 2)} and ${
        formatNumber(fastest, 2)
      } m/s; the further away, the wider the interval.`,
      wanted: "A launch speed between the two.",
    }));
  }
  return [
    ...found,
    ...depthFinding(judged),
    ...trendFinding(baselineRuns, result!.baseline),
    ...trendFinding(candidateRuns, result!.candidate),
  ];
}

/** m between mean depths from which on the surface alone makes a difference of some per cent. */
const DEPTH_GAP = 0.1;

/** Each design is compared at its own mean depth: where these differ, so does what the surface adds. */
function depthFinding({ comparison, baselineRuns, candidateRuns }: JudgedPair): Finding[] {
  const means = [baselineRuns, candidateRuns].map((design) => {
    const depths = design.runs.flatMap((one) => one.depth === null ? [] : [one.depth]);
    return depths.length < design.runs.length ? null : meanOf(depths);
  });
  const [first, second] = means;
  if (first == null || second == null || Math.abs(first - second) <= DEPTH_GAP) return [];
  return [finding({
    severity: "warning",
    code: "depths-differ",
    file: "glides.csv",
    column: "depth",
    what: `${comparison.candidate} against ${comparison.baseline}: flown at other depths, ${
      formatNumber(second, 2)
    } and ${
      formatNumber(first, 2)
    } m on average. Each is compared at its own depth, so what the surface adds to the drag counts as the design's.`,
    wanted: "Fly both designs at the same depth.",
  })];
}

/** Runs from which on a trend can be told from chance. */
const LEAST_FOR_TREND = 5;

/**
 * Chance of a false alarm that the test by itself would have. Noise in the launch speed tilts the line, so that simulated
 * sessions raise it in 1 to 2 % at 5 and 7 runs, 2 to 3 % at 12, 5 to 6 % at 20.
 */
const ALARM = 0.01;

/** A level of drag that seems to depend on the launch: the prior shape may not fit. */
function trendFinding(design: DesignRuns, series: PairResult["baseline"]): Finding[] {
  const speeds = design.runs.map((one) => one.run!.launchSpeed);
  const p = trendProbability(speeds, series.pseudoValues);
  if (p === null || p >= ALARM) return [];
  return [finding({
    severity: "note",
    code: "trend-with-launch",
    file: "glides.csv",
    column: "launch_speed",
    what:
      `${design.design}: runs launched faster tell another drag than slow ones; the shape of drag assumed from the planform may not fit.`,
    wanted: "Check span, area and depth; launch both designs at the same speed.",
  })];
}

/**
 * Two-sided probability of a straight line's slope being zero.
 *
 * Source: t test of a regression slope, any text.
 *
 * @param x at least five values
 * @param y as many
 * @returns probability; `null` where it can't be told
 */
function trendProbability(x: readonly number[], y: readonly number[]): number | null {
  const n = x.length;
  if (n < LEAST_FOR_TREND) return null;
  const xx = varianceOf(x), yy = varianceOf(y), xy = covarianceOf(x, y);
  const residual = yy - xy ** 2 / xx;
  if (!(xx > 0 && residual > 0)) return null;
  const t = xy / xx / Math.sqrt(residual / xx / (n - 2));
  return 2 * studentTUpperTail(Math.abs(t), n - 2);
}
