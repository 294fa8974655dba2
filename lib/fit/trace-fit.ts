/**
 * A drag law through the speed traces of one design's glides.
 *
 * @module
 */
import type { Result } from "../base/quantity.ts";
import { expectedTerms } from "./expected-terms.ts";
import { dot, type SymmetricThree, type Three, timesVector } from "./symmetric-three.ts";
import type { TowedCraft } from "./tow-data.ts";
import { phiCurve, type TraceRun } from "./trace-motion.ts";
import { type TraceNoise, traceNoise, whitenedSquares } from "./trace-noise.ts";
import { firstLaw, follow, type KnownLaw } from "./trace-start.ts";
import { noisy, solve, type Solved, type State, type Task, type TraceData } from "./trace-step.ts";

export type { TraceData };

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
  /** The part of it from how the height was spent. */
  readonly steepeningCovariance: SymmetricThree;
  /** How much more of the sink there is at the end than in the mean, as a share: 0 unless the runs say otherwise. */
  readonly steepening: number;
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
  readonly start?: KnownLaw & Pick<TraceFit, "referenceSpeed">;
}

const MOST_STEPS = 60;

/** Steps in which noise and scale of the runs are found anew; they have long come to rest by then. */
const NOISE_STEPS = 8;

/** Change in standard uncertainties at which it has settled, and above which it has not. */
const SETTLED = 1e-7, UNSETTLED = 1e-3;

/** Speeds looked at beyond those read: a glide that leaves them is none of this run. */
const BELOW = 0.5, ABOVE = 1.6;

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
  let state = firstLaw(task, options.start);
  if (state === null) return { ok: false, reason: "no glide of this law fits the traces" };

  let noise: TraceNoise & { readonly free?: number } = options.known?.noise ??
    traceNoise(noisy(task, state.runs), { white: true });
  let runScale = options.known?.runScale ?? 1;
  let change = Infinity;
  let solved: Solved | null = null;
  for (let step = 0; step < MOST_STEPS && change > SETTLED; step++) {
    const looks = options.known === undefined && step > 0 && step < NOISE_STEPS;
    if (looks) noise = traceNoise(noisy(task, state.runs), { white: options.white === true });
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
    steepeningCovariance: solved.steepeningCovariance,
    steepening: state.steepening,
    noise: { standardDeviation: noise.standardDeviation, memory: noise.memory },
    noiseDegreesOfFreedom: Math.max(1, free * (1 - kept) / (1 + kept)),
    runScale,
    runDegreesOfFreedom: Math.max(1, solved.runFree),
  };
}

function meanSpacing(runs: readonly TraceRun[]): number {
  const length = runs.reduce((sum, { times }) => sum + times.at(-1)! - times[0]!, 0);
  return length / runs.reduce((sum, { times }) => sum + times.length - 1, 0);
}

/** What is minimised: whitened residuals, the runs' own forces, the planform. */
function objective(
  task: Task,
  { parameters, steepening, runs }: State,
  noise: TraceNoise,
  runScale: number,
): number {
  const { precision, pull, data: { steepeningUncertainty: spread = 0 } } = task;
  const samples = runs.reduce(
    (sum, { residuals, run: { times } }) => sum + whitenedSquares(residuals, times, noise.memory),
    0,
  ) / noise.standardDeviation ** 2;
  const forces = runs.reduce(
    (sum, { offset, run: { offsetUncertainty: doubt } }) =>
      sum + (doubt > 0 ? offset ** 2 / (runScale * doubt ** 2) : 0),
    0,
  );
  const growth = spread > 0 ? (steepening / spread) ** 2 : 0;
  return samples + forces + growth + dot(parameters, timesVector(precision, parameters)) -
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
    const steepening = state.steepening + share * solved.steepening;
    const runs = state.runs.map(({ run, launchSpeed, offset }, i) =>
      follow(task, run, {
        parameters,
        steepening,
        launchSpeed: launchSpeed + share * solved.own[i]!.launchSpeed,
        offset: offset + share * solved.own[i]!.offset,
      })
    );
    if (!runs.every((one) => one !== null)) continue;
    const moved = { parameters, steepening, runs };
    const after = objective(task, moved, noise, runScale);
    if (after <= before + 1e-9 * Math.abs(before)) return moved;
  }
  return null;
}
