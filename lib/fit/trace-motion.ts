/**
 * Speed of a glide against time under a drag law, and how it changes with everything that is fitted.
 *
 * @module
 */
import type { Three } from "./symmetric-three.ts";

/** One glide with its speed read again and again. */
export interface TraceRun {
  /** s, rising. */
  readonly times: readonly number[];
  /** m/s, one a time. */
  readonly speeds: readonly number[];
  /** kg, carried mass plus the water that moves along. */
  readonly effectiveMass: number;
  /** N: weight less buoyancy of this run, which is its lift. */
  readonly weight: number;
  /** N of thrust that a steady sink gives: that weight times height lost over distance. */
  readonly sinkThrust: number;
  /** How much more of that thrust there is at the end than in the mean, and less at the launch, as a share; 0 for a steady sink. */
  readonly sinkSteepening?: number;
  /** N: standard uncertainty of a constant force of this run alone: its sink, and what differs from run to run; 0 for none. */
  readonly offsetUncertainty: number;
}

/** A law and one run's own numbers. */
export interface MotionSetting {
  /** N, as in `D = p1 (v/v0)^2 + p2 l + p3 l^2 phi (v0/v)^2`, `l` the run's weight over the craft's lift. */
  readonly parameters: Three;
  /** v0 in m/s. */
  readonly referenceSpeed: number;
  /** Weight of the run over the lift that the law is told at, 1. */
  readonly liftShare: number;
  /** m/s at the first sample. */
  readonly launchSpeed: number;
  /** N of drag that is this run's alone. */
  readonly offset: number;
  /** Share by which the thrust of the sink is larger at the end than in the mean, in all runs, beyond what is known of each. */
  readonly steepening?: number;
}

/** Speed at the samples and its changes, one entry a sample. */
export interface TraceMotion {
  /** m/s */
  readonly speed: Float64Array;
  /** By the launch speed, 1. */
  readonly byLaunch: Float64Array;
  /** By a constant force, m/s per N; `p2` has the same times the lift share. */
  readonly byOffset: Float64Array;
  /** By `p1`, m/s per N. */
  readonly byFirst: Float64Array;
  /** By `p3`, m/s per N. */
  readonly byThird: Float64Array;
  /** By the common steepening of the sink, m/s. */
  readonly bySteepening: Float64Array;
}

/** phi and its slope by speed, both cheap. */
export interface PhiCurve {
  /** m/s between which it is tabulated. */
  readonly from: number;
  readonly to: number;
  /** Value and slope (s/m) by node: cubic between nodes. */
  readonly values: Float64Array;
  readonly slopes: Float64Array;
}

const NODES = 160;

/**
 * phi tabulated for the many steps of a fit: cubic between 160 nodes, good to 1e-6 of phi over a range of 1 to 12 m/s.
 *
 * @param phi by speed in m/s
 * @param range of speeds in m/s
 * @returns values and slopes
 */
export function phiCurve(
  phi: (speed: number) => number,
  range: { readonly from: number; readonly to: number },
): PhiCurve {
  const { from, to } = range;
  const h = (to - from) / NODES;
  const values = new Float64Array(NODES + 1), slopes = new Float64Array(NODES + 1);
  const at = Array.from({ length: NODES + 3 }, (_, i) => phi(from + (i - 1) * h));
  for (let i = 0; i <= NODES; i++) {
    values[i] = at[i + 1]!;
    slopes[i] = (at[i + 2]! - at[i]!) / (2 * h);
  }
  return { from, to, values, slopes };
}

/** Speed and its five sensitivities. */
const PARTS = 6;

/** s: longest step; what it leaves out is below 1e-6 m/s for glides of this kind. */
const STEP = 0.2;

/**
 * Follows the glide of one run through its samples.
 *
 * `m_e dv/dt = -(D(v) + offset) + thrust of the sink`, together with the equations of its sensitivities, by classical
 * fourth-order Runge-Kutta in equal steps and cubic interpolation between them.
 *
 * Source: sensitivity equations of an ordinary differential equation, any text on parameter estimation.
 *
 * @param run samples, masses, thrust
 * @param phi of the craft over the speeds that occur
 * @param setting law and the run's own numbers
 * @returns speed and sensitivities, or `null` where the speed leaves the range of phi: no such glide
 */
export function traceMotion(
  run: TraceRun,
  phi: PhiCurve,
  setting: MotionSetting,
): TraceMotion | null {
  const { times, effectiveMass: mass, sinkThrust } = run;
  const { parameters: [p1, p2, p3], referenceSpeed: v0, liftShare, offset } = setting;
  const count = times.length;
  const length = times[count - 1]! - times[0]!;
  const steps = Math.max(1, Math.ceil(length / STEP));
  const h = length / steps;
  const square = 1 / (v0 * v0);
  const lift = liftShare * liftShare * v0 * v0;
  // Linear in time; its mean over the distance is that of a steady sink, since the height lost is the same.
  const unit = 2 * sinkThrust / length;
  const growth = ((run.sinkSteepening ?? 0) + (setting.steepening ?? 0)) * unit;
  const middle = unit === 0 ? 0 : meanTime(run);
  const constant = p2 * liftShare + offset - sinkThrust;
  const { values, slopes, from, to } = phi;
  const width = (to - from) / (values.length - 1);
  const rate = new Float64Array(PARTS);
  const state = new Float64Array([setting.launchSpeed, 1, 0, 0, 0, 0]);
  /** Rates of speed and sensitivities; false outside the range of phi. */
  const rates = (time: number, y: Float64Array): boolean => {
    const v = y[0]!;
    if (!(v >= from && v <= to)) return false;
    const place = (v - from) / width;
    const i = Math.min(values.length - 2, Math.floor(place));
    const t = place - i;
    const left = values[i]!, right = values[i + 1]!;
    const m0 = slopes[i]! * width, m1 = slopes[i + 1]! * width;
    // Cubic through both ends: left + t (m0 + t (c2 + t c3)).
    const c2 = 3 * (right - left) - 2 * m0 - m1, c3 = m0 + m1 - 2 * (right - left);
    const value = left + t * (m0 + t * (c2 + t * c3));
    const slope = (m0 + t * (2 * c2 + 3 * t * c3)) / width;
    const first = v * v * square;
    const third = lift * value / (v * v);
    const steep = -(2 * p1 * v * square + p3 * lift * (slope - 2 * value / v) / (v * v)) / mass;
    rate[0] = -(p1 * first + p3 * third + constant - growth * (time - middle)) / mass;
    rate[1] = steep * y[1]!;
    rate[2] = steep * y[2]! - 1 / mass;
    rate[3] = steep * y[3]! - first / mass;
    rate[4] = steep * y[4]! - third / mass;
    rate[5] = steep * y[5]! + unit * (time - middle) / mass;
    return true;
  };
  // One piece of memory: most of the time of a short fit went into asking for it.
  const all = new Float64Array(PARTS * count);
  const before = new Float64Array(PARTS), startRate = new Float64Array(PARTS);
  const moved = new Float64Array(PARTS), sum = new Float64Array(PARTS);
  let sample = 0;
  const begin = times[0]!;
  if (!rates(begin, state)) return null;
  for (let step = 0; step < steps; step++) {
    const start = begin + step * h;
    before.set(state);
    startRate.set(rate);
    sum.set(rate);
    for (let stage = 1; stage < 4; stage++) {
      const reach = stage === 3 ? h : h / 2;
      for (let j = 0; j < PARTS; j++) moved[j] = before[j]! + reach * rate[j]!;
      if (!rates(start + reach, moved)) return null;
      const weight = stage === 3 ? 1 : 2;
      for (let j = 0; j < PARTS; j++) sum[j]! += weight * rate[j]!;
    }
    for (let j = 0; j < PARTS; j++) state[j] = before[j]! + h / 6 * sum[j]!;
    if (!rates(start + h, state)) return null;
    const last = step === steps - 1;
    let end = sample;
    while (end < count && (last || times[end]! <= start + h)) end++;
    for (let j = 0; j < PARTS && end > sample; j++) {
      const left = before[j]!, right = state[j]!;
      const m0 = startRate[j]! * h, m1 = rate[j]! * h;
      const c2 = 3 * (right - left) - 2 * m0 - m1, c3 = m0 + m1 - 2 * (right - left);
      for (let i = sample; i < end; i++) {
        const t = (times[i]! - start) / h;
        all[j * count + i] = left + t * (m0 + t * (c2 + t * c3));
      }
    }
    sample = end;
  }
  const part = (j: number) => all.subarray(j * count, (j + 1) * count);
  return {
    speed: part(0),
    byLaunch: part(1),
    byOffset: part(2),
    byFirst: part(3),
    byThird: part(4),
    bySteepening: part(5),
  };
}

/** Time at which half of the distance lies behind, more or less: the mean of time over distance, s. */
function meanTime({ times, speeds }: TraceRun): number {
  let distance = 0, sum = 0;
  for (let i = 1; i < times.length; i++) {
    const part = (times[i]! - times[i - 1]!) * (speeds[i]! + speeds[i - 1]!) / 2;
    distance += part;
    sum += part * (times[i]! + times[i - 1]!) / 2;
  }
  return sum / distance;
}
