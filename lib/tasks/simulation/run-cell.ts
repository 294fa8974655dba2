/**
 * One cell of the simulation study: many sessions of one kind, and how often the verdict was right.
 *
 * @module
 */
import { fitGlideSeries, logDistance } from "../../fit/glide-series.ts";
import { contrastSeries, halfWidth } from "../../fit/series-contrast.ts";
import { compareRawDistances } from "../../decide/naive-comparison.ts";
import { seededRandom } from "../../numeric/random.ts";
import { drawSession, type InventedSide } from "./invented-session.ts";
import type { SessionKind } from "./session-kind.ts";
import { SHARED_ERRORS, withShared } from "./shared-errors.ts";

/** What a cell came to. */
export interface CellResult extends SessionKind {
  readonly name: string;
  readonly sessions: number;
  /** Sessions in which the recipe gave a tagged failure instead of an interval. */
  readonly failures: number;
  /** Sessions whose interval covers the true ratio. */
  readonly covered: number;
  /** Sessions that claim a difference. */
  readonly claims: number;
  /** Claims on the wrong side; for one foil under two names every claim is wrong. */
  readonly wrongClaims: number;
  /** Median half width of the interval of ln ratio. */
  readonly halfWidth: number;
  /** Mean error of ln ratio. */
  readonly bias: number;
  /** Sessions whose naive interval of raw distances covers the true ratio. */
  readonly naiveCovered: number;
  /** Naive claims on the wrong side; for one foil every claim is wrong. */
  readonly naiveWrongClaims: number;
}

/** The name of a cell, which is also the name of its random stream. */
function cellName(kind: SessionKind): string {
  const { world, runs, foils, depthKnown, blocks, ends, candidateRuns, pumped, shared } = kind;
  return `${world} ${foils} ${runs}${candidateRuns === undefined ? "" : ` v ${candidateRuns}`}${
    depthKnown ? "" : " depth unknown"
  }${blocks === undefined ? "" : `, blocks ${blocks}`}${ends === undefined ? "" : `, ${ends}`}${
    pumped ? ", pumped" : ""
  }${shared ? ", shared errors" : ""}`;
}

/** Ways to run a cell that show what a part of the recipe is for. */
export interface CellOptions {
  /** Leaves the doubt about the prior shape out of the interval. */
  readonly ignoreShape?: boolean;
}

/**
 * Runs one cell.
 *
 * @param kind world, runs a side, two foils or one
 * @param sessions how many
 * @param options a recipe with a part left out
 * @returns counts
 */
export function runCell(
  kind: SessionKind,
  sessions: number,
  options: CellOptions = {},
): CellResult {
  const name = cellName(kind);
  const random = seededRandom(`coverage of glide verdict: ${name}`);
  let failures = 0, covered = 0, claims = 0, wrongClaims = 0, error = 0;
  let naiveCovered = 0, naiveWrongClaims = 0;
  const widths: number[] = [];
  for (let i = 0; i < sessions; i++) {
    const { baseline, candidate, logRatio } = drawSession(kind, random);
    const naive = compareRawDistances("candidate", {
      baseline: baseline.distances,
      candidate: candidate.distances,
    });
    if (naive !== null) {
      const [low, high] = [Math.log(naive.low), Math.log(naive.high)];
      if (low <= logRatio && logRatio <= high) naiveCovered++;
      if (wrongSide(low, high, logRatio)) naiveWrongClaims++;
    }
    const first = fitGlideSeries(baseline.runs, baseline.reference, baseline.target);
    const second = fitGlideSeries(candidate.runs, candidate.reference, candidate.target);
    const contrast = first.ok && second.ok
      ? contrastSeries({
        baseline: options.ignoreShape ? { ...first, shapeSensitivity: 0 } : first,
        candidate: options.ignoreShape ? { ...second, shapeSensitivity: 0 } : second,
        commonVariance: kind.shared ? sharedVariance(baseline, candidate) : 0,
        ...(kind.blocks === undefined || kind.blocks === "apart"
          ? {}
          : { blocks: { baseline: baseline.blocks, candidate: candidate.blocks } }),
      })
      : null;
    if (contrast === null) {
      failures++;
      continue;
    }
    const half = halfWidth(contrast);
    const [low, high] = [contrast.logRatio - half, contrast.logRatio + half];
    widths.push(half);
    error += contrast.logRatio - logRatio;
    if (low <= logRatio && logRatio <= high) covered++;
    if (low > 0 || high < 0) claims++;
    if (wrongSide(low, high, logRatio)) wrongClaims++;
  }
  widths.sort((a, b) => a - b);
  return {
    ...kind,
    name,
    sessions,
    failures,
    covered,
    claims,
    wrongClaims,
    halfWidth: widths[Math.floor(widths.length / 2)] ?? 0,
    bias: error / Math.max(1, sessions - failures),
    naiveCovered,
    naiveWrongClaims,
  };
}

/** Variance of ln ratio from the shared errors as the verdict takes it: each alone, one standard uncertainty up and down. */
function sharedVariance(baseline: InventedSide, candidate: InventedSide): number {
  let variance = 0;
  for (const [name, size] of Object.entries(SHARED_ERRORS)) {
    const [up, down] = [1, -1].map((sign) => {
      const errors = { launch: 0, scale: 0, tape: 0, drop: 0, [name]: sign * size };
      const [first, second] = [baseline, candidate].map((side) => {
        const moved = logDistance(
          side.runs.map((run) => withShared(run, errors)),
          side.reference,
          side.target,
        );
        return moved.ok ? moved.logDistance : NaN;
      }) as [number, number];
      return second - first;
    }) as [number, number];
    variance += ((up - down) / 2) ** 2;
  }
  return variance;
}

/** Whether an interval claims a difference that is not there or the other way round. */
function wrongSide(low: number, high: number, truth: number): boolean {
  return (low > 0 && truth <= 0) || (high < 0 && truth >= 0);
}
