/**
 * Two designs' series set against each other: log ratio of distances, its variance by source, degrees of freedom.
 *
 * @module
 */
import { studentTLowerTail, studentTQuantile } from "../numeric/distributions.ts";
import { meanOf, varianceOf } from "../infer/sample.ts";
import type { GlideSeries } from "./glide-series.ts";

/** What a contrast is made from. */
export interface ContrastInput {
  readonly baseline: GlideSeries;
  readonly candidate: GlideSeries;
  /** Variance of the log ratio from errors that all runs share. */
  readonly commonVariance: number;
  /** Block of each pseudo-value of the baseline and of the candidate; left out where all were flown in one block. */
  readonly blocks?: { readonly baseline: readonly string[]; readonly candidate: readonly string[] };
}

/** How the scatter of the runs was taken. */
export type ContrastMethod = "two samples" | "within blocks" | "paired blocks";

/** The log ratio candidate over baseline, and how well it is known. */
export interface SeriesContrast {
  readonly method: ContrastMethod;
  readonly logRatio: number;
  /** Of the log ratio, from the scatter of the baseline's runs. */
  readonly baselineVariance: number;
  /** Of the log ratio, from the scatter of the candidate's runs. */
  readonly candidateVariance: number;
  /** Of the log ratio, from the doubt about the prior shape: matters as far as launches differ. */
  readonly shapeVariance: number;
  readonly commonVariance: number;
  /** The sum of the four. */
  readonly variance: number;
  readonly degreesOfFreedom: number;
}

/** Blocks in which both designs were flown need no paired form below this number. */
const PAIRED_FROM = 4;

/**
 * Sets two series against each other.
 *
 * Scatter: without blocks each design's own variance (Welch: unequal scatter and unequal numbers are fine); with blocks
 * least squares of the pseudo-values on design and block, with one scatter for both designs or with each design's own,
 * whichever is wider: one scatter for both covers 84 % where twelve runs stand against four that scatter twice as much,
 * the wider of the two 94 %, and up to 99 % where they scatter alike; with four or more shared blocks the mean of the blocks' own
 * differences, which also holds where the designs react differently to the day. The prior shape adds the larger of
 * "each design's shape is wrong by itself" and "one formula is wrong for both", and counts as known without limit, like
 * common errors.
 *
 * Source: Welch 1947; Satterthwaite 1946 (from memory); least squares with block effects: any text on blocked designs.
 *
 * @param input two series, common variance, blocks
 * @returns the contrast, or `null` where a scatter can't be told (one run a side, no block with both designs, or equal
 *   rows whose uncertainties are all stated as zero)
 */
export function contrastSeries(input: ContrastInput): SeriesContrast | null {
  const { baseline, candidate, commonVariance, blocks } = input;
  const shape = [baseline.shapeSensitivity, candidate.shapeSensitivity] as const;
  const shapeVariance = Math.max(shape[0] ** 2 + shape[1] ** 2, (shape[0] - shape[1]) ** 2);
  const scatter = blocks === undefined
    ? twoSamples(baseline, candidate)
    : inBlocks(baseline, candidate, blocks);
  if (scatter === null) return null;
  const variance = scatter.baselineVariance + scatter.candidateVariance + shapeVariance +
    commonVariance;
  if (!(variance > 0)) return null;
  return {
    method: scatter.method,
    logRatio: scatter.logRatio,
    baselineVariance: scatter.baselineVariance,
    candidateVariance: scatter.candidateVariance,
    shapeVariance,
    commonVariance,
    variance,
    degreesOfFreedom: variance ** 2 / scatter.fourth,
  };
}

interface Scatter {
  readonly method: ContrastMethod;
  readonly logRatio: number;
  readonly baselineVariance: number;
  readonly candidateVariance: number;
  /** Sum of (variance squared over its degrees of freedom). */
  readonly fourth: number;
}

function twoSamples(baseline: GlideSeries, candidate: GlideSeries): Scatter | null {
  if (baseline.variance === null || candidate.variance === null) return null;
  return {
    method: "two samples",
    logRatio: candidate.logDistance - baseline.logDistance,
    baselineVariance: baseline.variance,
    candidateVariance: candidate.variance,
    fourth: baseline.variance ** 2 / (baseline.count - 1) +
      candidate.variance ** 2 / (candidate.count - 1),
  };
}

/** Pseudo-values of one block, by design. */
interface BlockValues {
  readonly baseline: number[];
  readonly candidate: number[];
}

/** Pseudo-values gathered by block, in the blocks' alphabetical order. */
function gather(
  baseline: GlideSeries,
  candidate: GlideSeries,
  blocks: NonNullable<ContrastInput["blocks"]>,
): BlockValues[] {
  const names = [...new Set([...blocks.baseline, ...blocks.candidate])].sort();
  return names.map((name) => ({
    baseline: baseline.pseudoValues.filter((_, i) => blocks.baseline[i] === name),
    candidate: candidate.pseudoValues.filter((_, i) => blocks.candidate[i] === name),
  }));
}

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

function inBlocks(
  baseline: GlideSeries,
  candidate: GlideSeries,
  blocks: NonNullable<ContrastInput["blocks"]>,
): Scatter | null {
  const all = gather(baseline, candidate, blocks);
  const shared = all.filter((one) => one.baseline.length > 0 && one.candidate.length > 0);
  if (shared.length === 0) return null;
  if (all.length === 1) return twoSamples(baseline, candidate);
  // Of one run, from the stated uncertainties alone; how many runs' worth of it a contrast has depends on the blocks.
  const runs = baseline.count + candidate.count;
  const oneRun = (baseline.measurementVariance * baseline.count ** 2 +
    candidate.measurementVariance * candidate.count ** 2) / runs;
  const share = candidate.count / runs;
  const spread = (
    method: ContrastMethod,
    logRatio: number,
    raw: number,
    freedom: number,
    perRun: number,
  ) => {
    const variance = Math.max(raw, oneRun * perRun / 4);
    return {
      method,
      logRatio,
      baselineVariance: variance * share,
      candidateVariance: variance * (1 - share),
      fourth: variance ** 2 / freedom,
    };
  };
  if (shared.length >= PAIRED_FROM) {
    const differences = shared.map((one) => meanOf(one.candidate) - meanOf(one.baseline));
    const raw = varianceOf(differences) / differences.length;
    const perRun = sum(shared.map((one) => 1 / one.baseline.length + 1 / one.candidate.length)) /
      shared.length ** 2;
    return spread("paired blocks", meanOf(differences), raw, differences.length - 1, perRun);
  }
  let design = 0, cross = 0, total = 0;
  for (const one of all) {
    const [n, m] = [one.baseline.length, one.candidate.length];
    const values = [...one.baseline, ...one.candidate];
    const centre = meanOf(values);
    design += n * m / (n + m);
    cross += sum(one.candidate) - m * centre;
    total += sum(values.map((value) => (value - centre) ** 2));
  }
  const logRatio = cross / design;
  const freedom = baseline.pseudoValues.length + candidate.pseudoValues.length - all.length - 1;
  if (freedom < 1) return null;
  const residual = Math.max(0, total - logRatio ** 2 * design) / freedom;
  const pooled = spread("within blocks", logRatio, residual / design, freedom, 1 / design);
  const apart = ownScatters(all, logRatio, design);
  return apart !== null && scatterWidth(apart) > scatterWidth(pooled) ? apart : pooled;
}

/** Half width of the log ratio's interval if nothing but this scatter were in doubt. */
function scatterWidth({ baselineVariance, candidateVariance, fourth }: Scatter): number {
  const variance = baselineVariance + candidateVariance;
  return studentTQuantile(0.975, variance ** 2 / fourth) * Math.sqrt(variance);
}

/** The same contrast with each design's own scatter inside the blocks; `null` where a design has no two runs in any. */
function ownScatters(
  all: readonly BlockValues[],
  logRatio: number,
  design: number,
): Scatter | null {
  const variances: number[] = [];
  let fourth = 0;
  for (const [own, other] of [["baseline", "candidate"], ["candidate", "baseline"]] as const) {
    let squares = 0, freedom = 0, weight = 0;
    for (const one of all.filter((block) => block[own].length > 0)) {
      const centre = meanOf(one[own]);
      squares += sum(one[own].map((value) => (value - centre) ** 2));
      freedom += one[own].length - 1;
      const [n, m] = [one[own].length, one[other].length];
      weight += (n * m / (n + m) / design) ** 2 / n;
    }
    if (freedom < 1) return null;
    const variance = squares / freedom * weight;
    variances.push(variance);
    fourth += variance ** 2 / freedom;
  }
  const [baselineVariance, candidateVariance] = variances as [number, number];
  if (!(fourth > 0)) return null;
  return { method: "within blocks", logRatio, baselineVariance, candidateVariance, fourth };
}

/**
 * Half width of the log ratio's interval.
 *
 * @param contrast of two designs
 * @param level coverage of the interval, 0.95 unless said
 * @returns half the interval, as a natural logarithm of the ratio
 */
export function halfWidth(contrast: SeriesContrast, level = 0.95): number {
  return studentTQuantile((1 + level) / 2, contrast.degreesOfFreedom) *
    Math.sqrt(contrast.variance);
}

/**
 * Probability that the candidate goes farther, with nothing known about the log ratio beforehand.
 *
 * @param contrast of two designs
 * @returns 0 to 1
 */
export function probabilityFarther(contrast: SeriesContrast): number {
  return studentTLowerTail(
    contrast.logRatio / Math.sqrt(contrast.variance),
    contrast.degreesOfFreedom,
  );
}
