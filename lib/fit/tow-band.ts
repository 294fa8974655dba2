/**
 * Where along the speeds two designs' drags differ, with all speeds judged at once.
 *
 * @module
 */
import type { Result } from "../base/quantity.ts";
import { fisherFUpperTail, studentTUpperTail } from "../numeric/distributions.ts";
import { bracketedRoot } from "../numeric/roots.ts";
import { inverseOfThree, mapThree, quadraticForm, timesVector } from "./symmetric-three.ts";
import { type SpeedRange, towDrag, towTerms } from "./tow-curve.ts";
import type { TowSeries } from "./tow-series.ts";
import { effectiveFreedom, partsKnownBy, sharedChanges } from "./tow-variance.ts";

/** The difference at one speed. */
export interface BandPoint {
  /** m/s */
  readonly speed: number;
  /** N, candidate less baseline. */
  readonly difference: number;
  /** N */
  readonly standardUncertainty: number;
  /** N, ends of the band that holds the whole curve in 95 of 100 comparisons. */
  readonly low: number;
  readonly high: number;
}

/** A stretch of speeds, m/s. */
export type SpeedStretch = readonly [from: number, to: number];

/** Two designs' drags over the speeds at which both were towed. */
export interface DragComparison {
  readonly points: readonly BandPoint[];
  readonly candidateLess: readonly SpeedStretch[];
  readonly candidateMore: readonly SpeedStretch[];
  /** Half width of the band over the standard uncertainty. */
  readonly factor: number;
  /** Least over the speeds. */
  readonly degreesOfFreedom: number;
  /** Length of the path of the scaled difference, rad: how many separate looks the speeds amount to. */
  readonly pathLength: number;
  /** Whether there is any difference at both ends and the middle. */
  readonly jointTest: {
    readonly f: number;
    readonly degreesOfFreedom: number;
    readonly pValue: number;
  };
}

/** Settings of a comparison. */
export interface DragComparisonOptions {
  readonly range: SpeedRange;
  /** Standard uncertainty, as a share of each design's drag, of what a day may do to one design alone; 0 when alternated. */
  readonly dayShare: number;
  /** How many such bands shall all hold at once (default 1), by Bonferroni. */
  readonly comparisons?: number;
}

/** Speeds looked at. */
const COUNT = 63;

/** Degrees of freedom beyond which t counts as normal. */
const UNLIMITED = 1e6;

/**
 * Difference of drag, candidate less baseline, with a simultaneous 95 % band.
 *
 * A band that holds at each speed alone would cry wolf somewhere along the range in one null comparison of ten or more;
 * this one is widened by the length of the path that the scaled difference takes, so that a stretch of speeds outside it is
 * a claim. Shared errors of one session cancel with their signs before anything is judged.
 *
 * Source: tube formula of Naiman, Annals of Statistics 14 (1986) 896, with Student's t; from memory.
 *
 * @param baseline a design's fit
 * @param candidate another's
 * @param options speeds, and the day's doubt
 * @returns the band, the stretches of speed where the candidate drags less or more, and the joint test; or why there is none
 * @throws RangeError when the range of speeds is empty
 */
export function compareDrag(
  baseline: TowSeries,
  candidate: TowSeries,
  options: DragComparisonOptions,
): Result<DragComparison> {
  const { range: { from, to }, dayShare, comparisons = 1 } = options;
  if (!(from > 0 && to > from)) {
    throw new RangeError(
      `Cannot compare drag as there is no range of speeds: ${from} to ${to} m/s`,
    );
  }
  const speeds = Array.from({ length: COUNT }, (_, i) => from + (to - from) * i / (COUNT - 1));
  const sides = [baseline, candidate].map((series) => ({
    series,
    drag: speeds.map((v) => towDrag(series.fit, v)),
    terms: speeds.map((v) => towTerms(series.fit, v)),
    shared: series.shifts.map(({ fits: [plus, minus], ...error }) => ({
      ...error,
      change: speeds.map((v) => (towDrag(plus, v) - towDrag(minus, v)) / 2),
    })),
  }));
  const [one, two] = sides;
  const changes = sharedChanges(one!.shared, two!.shared, {
    subtract: (a, b) => a.map((value, i) => value - b[i]!),
    negate: (a) => a.map((value) => -value),
  });
  const together = (i: number, j: number) =>
    sides.reduce(
      (sum, { series: { fit }, terms, drag }) =>
        sum + quadraticForm(fit.covariance, terms[i]!, terms[j]!) +
        dayShare ** 2 * drag[i]! * drag[j]!,
      0,
    ) +
    changes.reduce((sum, { change }) => sum + change[i]! * change[j]!, 0);
  const difference = speeds.map((_, i) => two!.drag[i]! - one!.drag[i]!);
  const u = speeds.map((_, i) => Math.sqrt(together(i, i)));
  if (!u.every((value) => value > 0 && value < Infinity)) {
    return { ok: false, reason: "the difference has no uncertainty at some speed" };
  }
  const degreesOfFreedom = Math.min(
    UNLIMITED,
    ...speeds.map((_, i) =>
      effectiveFreedom(u[i]! ** 2, [
        ...sides.map(({ series: { fit }, terms }) => ({
          variance: quadraticForm(fit.dataCovariance, terms[i]!),
          degreesOfFreedom: fit.degreesOfFreedom,
        })),
        ...partsKnownBy(changes.map((one) => ({ ...one, change: one.change[i]! }))),
      ]) ?? UNLIMITED
    ),
  );
  let pathLength = 0;
  for (let i = 0; i + 1 < COUNT; i++) {
    pathLength += Math.acos(Math.min(1, together(i, i + 1) / (u[i]! * u[i + 1]!)));
  }
  const factor = bandFactor(pathLength, degreesOfFreedom, 0.05 / comparisons);
  const ends = [0, COUNT >> 1, COUNT - 1] as const;
  const inverse = inverseOfThree(mapThree((i, j) => together(ends[i]!, ends[j]!)));
  if (inverse === null) return { ok: false, reason: "the speeds can't be told apart" };
  const gaps = [difference[ends[0]]!, difference[ends[1]]!, difference[ends[2]]!] as const;
  const f = timesVector(inverse, gaps).reduce((sum, value, i) => sum + value * gaps[i]!, 0) / 3;
  const stretches = (claimed: (i: number) => boolean) => stretchesWhere(speeds, claimed);
  return {
    ok: true,
    points: speeds.map((speed, i) => ({
      speed,
      difference: difference[i]!,
      standardUncertainty: u[i]!,
      low: difference[i]! - factor * u[i]!,
      high: difference[i]! + factor * u[i]!,
    })),
    candidateLess: stretches((i) => difference[i]! < -factor * u[i]!),
    candidateMore: stretches((i) => difference[i]! > factor * u[i]!),
    factor,
    degreesOfFreedom,
    pathLength,
    jointTest: {
      f,
      degreesOfFreedom,
      pValue: fisherFUpperTail(f, { numerator: 3, denominator: degreesOfFreedom }),
    },
  };
}

/**
 * How many standard uncertainties a band must reach so that a whole path stays inside in 95 of 100 cases.
 *
 * @param pathLength of the scaled curve, rad; 0 is a single look
 * @param degreesOfFreedom of the uncertainty
 * @param outside share of the paths that may leave it
 * @returns 1
 * @throws RangeError when an argument makes no sense
 *
 * @example A path without length is a single look: Student's t
 * ```ts
 * import { bandFactor } from "lakeproof/fit/tow-band.ts";
 * if (Math.abs(bandFactor(0, 5) - 2.5706) > 5e-5) throw new Error("t of 5 degrees of freedom");
 * ```
 */
export function bandFactor(
  pathLength: number,
  degreesOfFreedom: number,
  outside = 0.05,
): number {
  if (!(pathLength >= 0 && degreesOfFreedom > 0)) {
    throw new RangeError(`Cannot give a band factor for ${pathLength} rad, ${degreesOfFreedom}`);
  }
  const nu = degreesOfFreedom;
  const surplus = (c: number) =>
    pathLength / Math.PI * (1 + c * c / nu) ** (-nu / 2) + 2 * studentTUpperTail(c, nu) - outside;
  let high = 4;
  while (surplus(high) > 0) high *= 2;
  return bracketedRoot(surplus, { low: 1, high });
}

function stretchesWhere(
  speeds: readonly number[],
  claimed: (i: number) => boolean,
): SpeedStretch[] {
  const found: [number, number][] = [];
  speeds.forEach((speed, i) => {
    if (!claimed(i)) return;
    if (i > 0 && claimed(i - 1)) found.at(-1)![1] = speed;
    else found.push([speed, speed]);
  });
  return found;
}
