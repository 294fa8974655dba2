/**
 * One step towards the law of a design's traces, with the covariance there.
 *
 * @module
 */
import {
  dot,
  inverseOfThree,
  mapThree,
  plus,
  quadraticForm,
  sandwich,
  type SymmetricThree,
  type Three,
  timesVector,
} from "./symmetric-three.ts";
import type { TowedCraft } from "./tow-data.ts";
import type { PhiCurve, TraceMotion, TraceRun } from "./trace-motion.ts";
import {
  type NoisyRun,
  RESIDUAL,
  TRACE_COLUMNS,
  type TraceNoise,
  whitenedSums,
} from "./trace-noise.ts";

/** Everything a fit needs. */
export interface TraceData {
  readonly runs: readonly TraceRun[];
  readonly craft: TowedCraft;
  /**
   * Standard uncertainty of how much more the height is spent at the end of a run than in the mean, as a share, alike in all
   * runs; left out, every sink is as stated.
   */
  readonly steepeningUncertainty?: number;
}

/** A run at the numbers of the moment. */
export interface Run {
  readonly run: TraceRun;
  readonly liftShare: number;
  launchSpeed: number;
  offset: number;
  motion: TraceMotion;
  residuals: Float64Array;
}

/** What stays the same through a fit. */
export interface Task {
  readonly data: TraceData;
  readonly phi: PhiCurve;
  readonly v0: number;
  readonly precision: SymmetricThree;
  readonly pull: Three;
}

/** The numbers of the moment. */
export interface State {
  readonly parameters: Three;
  readonly steepening: number;
  readonly runs: readonly Run[];
}

/**
 * Columns and residuals of all runs; without doubt about the steepening its column is empty.
 *
 * @param task the fit's data
 * @param runs with their motions and residuals
 * @returns for each run its times in s and, in m/s, the columns
 */
export function noisy({ data }: Task, runs: readonly Run[]): NoisyRun[] {
  const open = (data.steepeningUncertainty ?? 0) > 0;
  return runs.map(({ run, motion, residuals }) => ({
    times: run.times,
    columns: [
      motion.byLaunch,
      motion.byOffset,
      motion.byFirst,
      motion.byThird,
      open ? motion.bySteepening : new Float64Array(residuals.length),
      residuals,
    ],
  }));
}

/** A step and the covariance there, by origin. */
export interface Solved {
  readonly covariance: SymmetricThree;
  readonly noiseCovariance: SymmetricThree;
  readonly runCovariance: SymmetricThree;
  readonly steepeningCovariance: SymmetricThree;
  /** Of the three parameters, the steepening, and of each run's launch speed and offset. */
  readonly step: Three;
  readonly steepening: number;
  readonly own: readonly { readonly launchSpeed: number; readonly offset: number }[];
  readonly runScale: number;
  /** Degrees of freedom of the runs' own forces. */
  readonly runFree: number;
}

/** Columns of what all runs have in common: the three terms and the steepening; the second is the offset's. */
const COMMON = [2, 1, 3, 4] as const;

/**
 * One step of Gauss and Newton: each run's own numbers eliminated, then the steepening.
 *
 * @param task what stays the same
 * @param state numbers of the moment
 * @param noise of the samples
 * @param runScale variance of the runs' own forces over what was stated
 * @returns step and covariances, or `null` where the terms can't be told apart
 */
export function solve(
  task: Task,
  { parameters, steepening, runs }: State,
  noise: TraceNoise,
  runScale: number,
): Solved | null {
  const { precision, pull, data } = task;
  const per = noise.standardDeviation ** -2;
  const information = COMMON.map(() => [0, 0, 0, 0]);
  const right = [0, 0, 0, 0];
  const eliminated = [];
  for (const one of noisy(task, runs).map((part, i) => ({ ...part, own: runs[i]! }))) {
    const { liftShare: l, offset, run } = one.own;
    const gram = whitenedSums(one.columns, one.times, noise.memory);
    const at = (i: number, j: number) => gram[TRACE_COLUMNS * i + j]! * per;
    const factors = [1, l, 1, 1];
    const doubt = run.offsetUncertainty;
    const stiff = doubt > 0 ? 1 / (runScale * doubt * doubt) : 0;
    // Of launch speed and offset; without doubt about a force of its own a run has none.
    const n00 = at(0, 0), n01 = doubt > 0 ? at(0, 1) : 0, n11 = doubt > 0 ? at(1, 1) + stiff : 1;
    const determinant = n00 * n11 - n01 * n01;
    if (!(determinant > 0)) return null;
    const inverse = [n11 / determinant, -n01 / determinant, n00 / determinant] as const;
    const b0 = COMMON.map((column, i) => factors[i]! * at(0, column));
    const b1 = COMMON.map((column, i) => doubt > 0 ? factors[i]! * at(1, column) : 0);
    const c0 = at(0, RESIDUAL), c1 = doubt > 0 ? at(1, RESIDUAL) - offset * stiff : 0;
    const solveOwn = (x: number, y: number) =>
      [inverse[0] * x + inverse[1] * y, inverse[1] * x + inverse[2] * y] as const;
    const [k0, k1] = solveOwn(c0, c1);
    // What a force of this run's own does to the right side.
    const [g0, g1] = solveOwn(at(0, 1), doubt > 0 ? at(1, 1) : 0);
    const byOffset = COMMON.map((column, i) =>
      factors[i]! * at(column, 1) - b0[i]! * g0 - b1[i]! * g1
    );
    COMMON.forEach((column, i) => {
      COMMON.forEach((other, j) => {
        const [x, y] = solveOwn(b0[j]!, b1[j]!);
        information[i]![j]! += factors[i]! * factors[j]! * at(column, other) - b0[i]! * x -
          b1[i]! * y;
      });
      right[i]! += factors[i]! * at(column, RESIDUAL) - b0[i]! * k0 - b1[i]! * k1;
    });
    eliminated.push({ doubt, b0, b1, k0, k1, solveOwn, inverse, byOffset });
  }
  // The steepening goes out with its own expectation of none.
  const spread = data.steepeningUncertainty ?? 0;
  const stiffness = spread > 0 ? information[3]![3]! + spread ** -2 : Infinity;
  const byGrowth = [0, 1, 2].map((i) => information[i]![3]!) as unknown as Three;
  const growthRight = right[3]! - (spread > 0 ? steepening * spread ** -2 : 0);
  const left = mapThree((i, j) => information[i]![j]! - byGrowth[i]! * byGrowth[j]! / stiffness);
  const covariance = inverseOfThree(plus(left, precision));
  if (covariance === null) return null;
  const prior = timesVector(precision, parameters);
  const step = timesVector(
    covariance,
    [0, 1, 2].map((j) =>
      right[j]! - byGrowth[j]! * growthRight / stiffness + pull[j]! - prior[j]!
    ) as unknown as Three,
  );
  const growth = spread > 0 ? (growthRight - dot(byGrowth, step)) / stiffness : 0;
  const all = [...step, growth];
  const times = (row: readonly number[]) => row.reduce((sum, one, i) => sum + one * all[i]!, 0);
  const own = eliminated.map(({ b0, b1, k0, k1, solveOwn, doubt }) => {
    const [x, y] = solveOwn(times(b0), times(b1));
    return { launchSpeed: k0 - x, offset: doubt > 0 ? k1 - y : 0 };
  });
  const steepeningCovariance = spread > 0
    ? sandwich(
      covariance,
      mapThree((i, j) => byGrowth[i]! * byGrowth[j]! / (spread * stiffness) ** 2),
    )
    : mapThree(() => 0);
  let runPart = mapThree(() => 0);
  let square = 0, free = 0;
  const reduced = (row: readonly number[]) =>
    [0, 1, 2].map((j) => row[j]! - byGrowth[j]! * row[3]! / stiffness) as unknown as Three;
  eliminated.forEach(({ doubt, byOffset, solveOwn, inverse, b0, b1 }, i) => {
    if (doubt === 0) return;
    const variance = runScale * doubt * doubt;
    const force = reduced(byOffset);
    runPart = plus(runPart, mapThree((j, k) => force[j]! * force[k]!), variance);
    const share = b0.map((one, j) => solveOwn(one, b1[j]!)[1]);
    const known = inverse[2] + share[3]! ** 2 / stiffness +
      quadraticForm(covariance, reduced(share));
    square += ((runs[i]!.offset + own[i]!.offset) / doubt) ** 2;
    free += Math.max(0, 1 - known / variance);
  });
  const total = sandwich(covariance, left);
  const runCovariance = sandwich(covariance, runPart);
  return {
    covariance,
    noiseCovariance: mapThree((i, j) =>
      total[i]![j]! - runCovariance[i]![j]! - steepeningCovariance[i]![j]!
    ),
    runCovariance,
    steepeningCovariance,
    step,
    steepening: growth,
    own,
    runScale: free > 0.2 ? Math.max(1, square / free) : 1,
    runFree: free,
  };
}
