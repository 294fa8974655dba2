/**
 * A drag law through the speed traces of one design's glides.
 *
 * @module
 */
import type { Result } from "../base/quantity.ts";
import {
  dot,
  inverseOfThree,
  mapThree,
  plus,
  sandwich,
  type SymmetricThree,
  type Three,
  timesVector,
} from "./symmetric-three.ts";
import { expectedTerms } from "./expected-terms.ts";
import type { TowedCraft } from "./tow-data.ts";
import { type NoisyRun, type TraceNoise, traceNoise, whitenedSums } from "./trace-noise.ts";
import {
  type PhiCurve,
  phiCurve,
  type TraceMotion,
  traceMotion,
  type TraceRun,
} from "./trace-motion.ts";

/** Everything a fit needs. */
export interface TraceData {
  readonly runs: readonly TraceRun[];
  readonly craft: TowedCraft;
}

/** One run at the fit. */
export interface FittedRun {
  /** m/s at the first sample. */
  readonly launchSpeed: number;
  /** N of drag that is this run's alone. */
  readonly offset: number;
  /** m/s, one a sample. */
  readonly speeds: Float64Array;
}

/** A law as `TowFit` has it, from speeds that fall. */
export interface TraceFit {
  /** Craft, and the slowest and fastest speed of the fitted glides. */
  readonly data: {
    readonly craft: TowedCraft;
    readonly readings: readonly { readonly speed: number }[];
  };
  readonly runs: readonly FittedRun[];
  /** v0 in m/s. */
  readonly referenceSpeed: number;
  /** N at v0, as in a tow. */
  readonly parameters: Three;
  /** Of the parameters: noise, runs and planform together, without what all runs share. */
  readonly covariance: SymmetricThree;
  /** The part of it from the noise of the samples. */
  readonly noiseCovariance: SymmetricThree;
  /** The part of it from what differs from run to run. */
  readonly runCovariance: SymmetricThree;
  readonly noise: TraceNoise;
  readonly noiseDegreesOfFreedom: number;
  /** Variance of the runs' own forces over what was stated for them, not under 1. */
  readonly runScale: number;
  readonly runDegreesOfFreedom: number;
}

/** Noise taken from elsewhere, for what a shared error does to the same samples. */
export interface KnownNoise {
  readonly noise: TraceNoise;
  readonly runScale: number;
}

/** Options of a fit. */
export interface TraceFitOptions {
  readonly known?: KnownNoise;
  /** True to take samples as independent: only to show what that hides. */
  readonly white?: boolean;
  /** Where to begin; each run's launch speed and offset too. */
  readonly start?: Pick<TraceFit, "parameters" | "referenceSpeed" | "runs">;
}

const MOST_STEPS = 60;

/** Steps in which noise and scale of the runs are found anew; they have long come to rest by then. */
const NOISE_STEPS = 8;

/** Change in standard uncertainties at which it has settled, and above which it has not. */
const SETTLED = 1e-7, UNSETTLED = 1e-3;

/** Speeds looked at beyond those read: a glide that leaves them is none of this run. */
const BELOW = 0.5, ABOVE = 1.6;

interface Run {
  readonly run: TraceRun;
  readonly liftShare: number;
  launchSpeed: number;
  offset: number;
  motion: TraceMotion;
  residuals: Float64Array;
}

/**
 * Fits the law to the falling speed of one or more glides.
 *
 * Speeds are compared with the integrated equation of motion `m_e dv/dt = -D(v) + (W - B) sink`, never differentiated: a
 * difference of two noisy speeds tells little. Each run has its launch speed and a constant force of its own, the latter
 * with a stated doubt (the sink is known to so much, and drag differs from run to run); what the runs show can widen that
 * doubt, never narrow it. Samples remember their noise: its memory is found by restricted maximum likelihood, and the
 * intervals widen with it. Two of the three terms lean on the planform as in a tow.
 *
 * Source: generalised least squares by Gauss-Newton with sensitivity equations; variance components by restricted maximum
 * likelihood (Harville, Journal of the American Statistical Association 72 (1977) 320; from memory).
 *
 * @param data runs and craft
 * @param options noise from elsewhere, white noise
 * @returns the fit, or why there is none
 */
export function fitTraces(data: TraceData, options: TraceFitOptions = {}): Result<TraceFit> {
  const { craft } = data;
  const all = data.runs.flatMap((one) => one.speeds);
  if (!all.every((one) => one > 0 && one < Infinity)) {
    return { ok: false, reason: "a speed is not above zero" };
  }
  const samples = all.length;
  if (samples < 5 + 2 * data.runs.length) return { ok: false, reason: "too few samples" };
  const low = all.reduce((a, b) => Math.min(a, b)), high = all.reduce((a, b) => Math.max(a, b));
  const v0 = options.start?.referenceSpeed ?? Math.sqrt(low * high);
  const phi = phiCurve(craft.phi, { from: BELOW * low, to: ABOVE * high });
  const { precision, pull } = expectedTerms(craft, v0);
  const task: Task = { data, phi, v0, precision, pull };
  let state = begin(task, options.start);
  if (state === null) return { ok: false, reason: "no glide of this law fits the traces" };

  let noise: TraceNoise & { readonly free?: number } = options.known?.noise ??
    traceNoise(noisy(state.runs), { white: true });
  let runScale = options.known?.runScale ?? 1;
  let change = Infinity;
  let solved: Solved | null = null;
  for (let step = 0; step < MOST_STEPS && change > SETTLED; step++) {
    const looks = options.known === undefined && step > 0 && step < NOISE_STEPS;
    if (looks) noise = traceNoise(noisy(state.runs), { white: options.white === true });
    solved = solve(task, state, noise, runScale);
    if (solved === null) return { ok: false, reason: "the traces can't tell the terms apart" };
    const moved: State | null = move(task, state, solved, noise, runScale);
    if (moved === null) return { ok: false, reason: "no glide of this law fits the traces" };
    change = Math.max(
      ...solved.step.map((one, j) => Math.abs(one) / Math.sqrt(solved!.covariance[j]![j]!)),
    );
    state = moved;
    if (options.known === undefined) runScale = solved.runScale;
  }
  if (!(change < UNSETTLED)) return { ok: false, reason: "the traces do not settle on a law" };
  solved = solve(task, state, noise, runScale);
  if (solved === null) return { ok: false, reason: "the traces can't tell the terms apart" };
  const speeds = state.runs.flatMap((one) => [one.motion.speed[0]!, one.motion.speed.at(-1)!]);
  const spacing = meanSpacing(data.runs);
  const kept = noise.memory === 0 ? 0 : Math.exp(-spacing / noise.memory);
  const free = noise.free ?? samples - 2 * data.runs.length - 2;
  return {
    ok: true,
    data: {
      craft,
      readings: [{ speed: Math.min(...speeds) }, { speed: Math.max(...speeds) }],
    },
    runs: state.runs.map(({ launchSpeed, offset, motion }) => ({
      launchSpeed,
      offset,
      speeds: motion.speed,
    })),
    referenceSpeed: v0,
    parameters: state.parameters,
    covariance: solved.covariance,
    noiseCovariance: solved.noiseCovariance,
    runCovariance: solved.runCovariance,
    noise: { standardDeviation: noise.standardDeviation, memory: noise.memory },
    noiseDegreesOfFreedom: Math.max(1, free * (1 - kept) / (1 + kept)),
    runScale,
    runDegreesOfFreedom: Math.max(1, solved.runFree),
  };
}

interface Task {
  readonly data: TraceData;
  readonly phi: PhiCurve;
  readonly v0: number;
  readonly precision: SymmetricThree;
  readonly pull: Three;
}

interface State {
  readonly parameters: Three;
  readonly runs: readonly Run[];
}

function meanSpacing(runs: readonly TraceRun[]): number {
  const length = runs.reduce((sum, { times }) => sum + times.at(-1)! - times[0]!, 0);
  return length / runs.reduce((sum, { times }) => sum + times.length - 1, 0);
}

function noisy(runs: readonly Run[]): NoisyRun[] {
  return runs.map(({ run, motion, residuals }) => ({
    times: run.times,
    columns: [motion.byLaunch, motion.byOffset, motion.byFirst, motion.byThird, residuals],
  }));
}

/** One run followed; `null` where it leaves the speeds looked at. */
function follow(
  { phi, v0, data: { craft } }: Task,
  run: TraceRun,
  setting: { readonly parameters: Three; readonly launchSpeed: number; readonly offset: number },
): Run | null {
  const liftShare = run.weight / craft.lift;
  const { launchSpeed, offset } = setting;
  const motion = traceMotion(run, phi, { ...setting, referenceSpeed: v0, liftShare });
  if (motion === null) return null;
  const residuals = Float64Array.from(run.speeds, (one, i) => one - motion.speed[i]!);
  return { run, liftShare, launchSpeed, offset, motion, residuals };
}

/** A first law: the planform's lift term, the rest of the mean drag as the first term. */
function begin(task: Task, start: TraceFitOptions["start"]): State | null {
  const { data: { runs, craft }, v0 } = task;
  if (start !== undefined) {
    const followed = runs.map((run, i) =>
      follow(task, run, { parameters: start.parameters, ...start.runs[i]! })
    );
    if (followed.every((one) => one !== null)) {
      return { parameters: start.parameters, runs: followed };
    }
  }
  const drags = runs.map((run) => {
    const { slope } = straightLine(run);
    return (run.sinkThrust - run.effectiveMass * slope) * craft.lift / run.weight;
  });
  const drag = Math.max(1, drags.reduce((sum, one) => sum + one, 0) / drags.length);
  const third = Math.min(
    0.7 * drag,
    craft.expected === null ? drag / 2 : craft.expected.liftTerm.mean / v0 ** 2,
  );
  const parameters: Three = [drag - third * craft.phi(v0), 0, third];
  const followed = runs.map((run) =>
    follow(task, run, { parameters, launchSpeed: straightLine(run).start, offset: 0 })
  );
  return followed.every((one) => one !== null) ? { parameters, runs: followed } : null;
}

/** Least squares line through a trace: speed at its first sample, and change a second. */
function straightLine(
  { times, speeds }: TraceRun,
): { readonly start: number; readonly slope: number } {
  const n = times.length;
  const mean = times.reduce((sum, one) => sum + one, 0) / n;
  const level = speeds.reduce((sum, one) => sum + one, 0) / n;
  let cross = 0, square = 0;
  times.forEach((time, i) => {
    cross += (time - mean) * (speeds[i]! - level);
    square += (time - mean) ** 2;
  });
  const slope = cross / square;
  return { start: level + slope * (times[0]! - mean), slope };
}

interface Solved {
  readonly covariance: SymmetricThree;
  readonly noiseCovariance: SymmetricThree;
  readonly runCovariance: SymmetricThree;
  /** Of the three parameters, and of each run's launch speed and offset. */
  readonly step: Three;
  readonly own: readonly { readonly launchSpeed: number; readonly offset: number }[];
  readonly runScale: number;
  /** Degrees of freedom of the runs' own forces. */
  readonly runFree: number;
}

/** One step of Gauss and Newton, each run's own numbers eliminated, with the covariance of the rest. */
function solve(
  { precision, pull }: Task,
  { parameters, runs }: State,
  noise: TraceNoise,
  runScale: number,
): Solved | null {
  const per = noise.standardDeviation ** -2;
  let information = mapThree(() => 0);
  let right: Three = [0, 0, 0];
  const eliminated = [];
  for (const one of noisy(runs).map((part, i) => ({ ...part, own: runs[i]! }))) {
    const { liftShare: l, offset, run } = one.own;
    const gram = whitenedSums(one.columns, one.times, noise.memory);
    const at = (i: number, j: number) => gram[5 * i + j]! * per;
    const doubt = run.offsetUncertainty;
    const stiff = doubt > 0 ? 1 / (runScale * doubt * doubt) : 0;
    // Of launch speed and offset; without doubt about a force of its own a run has none.
    const n00 = at(0, 0), n01 = doubt > 0 ? at(0, 1) : 0, n11 = doubt > 0 ? at(1, 1) + stiff : 1;
    const determinant = n00 * n11 - n01 * n01;
    if (!(determinant > 0)) return null;
    const inverse = [n11 / determinant, -n01 / determinant, n00 / determinant] as const;
    const columns = [2, 1, 3] as const, factors = [1, l, 1] as const;
    const b0: Three = [at(0, 2), l * at(0, 1), at(0, 3)];
    const b1: Three = doubt > 0 ? [at(1, 2), l * at(1, 1), at(1, 3)] : [0, 0, 0];
    const c0 = at(0, 4), c1 = doubt > 0 ? at(1, 4) - offset * stiff : 0;
    const solveOwn = (x: number, y: number) =>
      [inverse[0] * x + inverse[1] * y, inverse[1] * x + inverse[2] * y] as const;
    const [k0, k1] = solveOwn(c0, c1);
    information = plus(
      information,
      mapThree((i, j) => {
        const [x, y] = solveOwn(b0[j]!, b1[j]!);
        return factors[i]! * factors[j]! * at(columns[i]!, columns[j]!) - b0[i]! * x - b1[i]! * y;
      }),
    );
    right = [0, 1, 2].map((i) =>
      right[i]! + factors[i]! * at(columns[i]!, 4) - b0[i]! * k0 - b1[i]! * k1
    ) as unknown as Three;
    // What a force of this run's own does to the right side.
    const [g0, g1] = solveOwn(at(0, 1), doubt > 0 ? at(1, 1) : 0);
    const byOffset = [0, 1, 2].map((i) =>
      factors[i]! * at(columns[i]!, 1) - b0[i]! * g0 - b1[i]! * g1
    ) as unknown as Three;
    eliminated.push({ doubt, b0, b1, k0, k1, solveOwn, inverse, byOffset });
  }
  const covariance = inverseOfThree(plus(information, precision));
  if (covariance === null) return null;
  const prior = timesVector(precision, parameters);
  const step = timesVector(
    covariance,
    right.map((one, j) => one + pull[j]! - prior[j]!) as unknown as Three,
  );
  const own = eliminated.map(({ b0, b1, k0, k1, solveOwn, doubt }) => {
    const [x, y] = solveOwn(dot(b0, step), dot(b1, step));
    return { launchSpeed: k0 - x, offset: doubt > 0 ? k1 - y : 0 };
  });
  const total = sandwich(covariance, information);
  let runPart = mapThree(() => 0);
  let square = 0, free = 0;
  eliminated.forEach(({ doubt, byOffset, solveOwn, inverse, b0, b1 }, i) => {
    if (doubt === 0) return;
    const variance = runScale * doubt * doubt;
    runPart = plus(runPart, mapThree((j, k) => byOffset[j]! * byOffset[k]!), variance);
    const share = [0, 1, 2].map((j) => solveOwn(b0[j]!, b1[j]!)[1]) as unknown as Three;
    const known = inverse[2] + dot(share, timesVector(covariance, share));
    square += ((runs[i]!.offset + own[i]!.offset) / doubt) ** 2;
    free += Math.max(0, 1 - known / variance);
  });
  const runCovariance = sandwich(covariance, runPart);
  return {
    covariance,
    noiseCovariance: mapThree((i, j) => total[i]![j]! - runCovariance[i]![j]!),
    runCovariance,
    step,
    own,
    runScale: free > 0.2 ? Math.max(1, square / free) : 1,
    runFree: free,
  };
}

/** What is minimised: whitened residuals, the runs' own forces, the planform. */
function objective(
  { precision, pull }: Task,
  { parameters, runs }: State,
  noise: TraceNoise,
  runScale: number,
): number {
  const samples = noisy(runs).reduce(
    (sum, one) => sum + whitenedSums(one.columns, one.times, noise.memory)[24]!,
    0,
  ) / noise.standardDeviation ** 2;
  const forces = runs.reduce(
    (sum, { offset, run: { offsetUncertainty: doubt } }) =>
      sum + (doubt > 0 ? offset ** 2 / (runScale * doubt ** 2) : 0),
    0,
  );
  return samples + forces + dot(parameters, timesVector(precision, parameters)) -
    2 * dot(pull, parameters);
}

/** The step, halved until it helps. */
function move(
  task: Task,
  state: State,
  solved: Solved,
  noise: TraceNoise,
  runScale: number,
): State | null {
  const before = objective(task, state, noise, runScale);
  for (let share = 1; share > 1e-4; share /= 2) {
    const parameters = state.parameters.map((one, j) =>
      one + share * solved.step[j]!
    ) as unknown as Three;
    const runs = state.runs.map(({ run, launchSpeed, offset }, i) =>
      follow(task, run, {
        parameters,
        launchSpeed: launchSpeed + share * solved.own[i]!.launchSpeed,
        offset: offset + share * solved.own[i]!.offset,
      })
    );
    if (!runs.every((one) => one !== null)) continue;
    const moved = { parameters, runs };
    const after = objective(task, moved, noise, runScale);
    if (after <= before + 1e-9 * Math.abs(before)) return moved;
  }
  return null;
}
