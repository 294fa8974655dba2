/**
 * Where the fit of a design's traces begins.
 *
 * @module
 */
import type { Three } from "./symmetric-three.ts";
import { type MotionSetting, traceMotion, type TraceRun } from "./trace-motion.ts";
import type { Run, State, Task } from "./trace-step.ts";

/** A law with the numbers of its runs. */
export interface KnownLaw {
  readonly parameters: Three;
  readonly steepening: number;
  readonly runs: readonly { readonly launchSpeed: number; readonly offset: number }[];
}

/**
 * One run followed.
 *
 * @param task what stays the same
 * @param run samples
 * @param setting numbers of the moment
 * @returns motion and residuals, or `null` where it leaves the speeds looked at
 */
export function follow(
  { phi, v0, data: { craft } }: Task,
  run: TraceRun,
  setting: Pick<MotionSetting, "parameters" | "launchSpeed" | "offset" | "steepening">,
): Run | null {
  const liftShare = run.weight / craft.lift;
  const { launchSpeed, offset } = setting;
  const motion = traceMotion(run, phi, { ...setting, referenceSpeed: v0, liftShare });
  if (motion === null) return null;
  const residuals = differences(run.speeds, motion.speed);
  return { run, liftShare, launchSpeed, offset, motion, residuals };
}

function differences(one: readonly number[], other: Float64Array): Float64Array {
  const result = new Float64Array(other.length);
  for (let i = 0; i < result.length; i++) result[i] = one[i]! - other[i]!;
  return result;
}

/**
 * A first law: the one that is known, else the planform's lift term, and the rest of the mean drag as the first term.
 *
 * @param task what stays the same
 * @param start a law of the same runs, for what a shared error does to them
 * @returns the numbers to begin with, or `null` where no glide follows from them
 */
export function firstLaw(task: Task, start?: KnownLaw): State | null {
  const { data: { runs, craft }, v0 } = task;
  if (start !== undefined) {
    const followed = runs.map((run, i) =>
      follow(task, run, {
        parameters: start.parameters,
        steepening: start.steepening,
        launchSpeed: start.runs[i]!.launchSpeed,
        offset: start.runs[i]!.offset,
      })
    );
    if (followed.every((one) => one !== null)) {
      return { parameters: start.parameters, steepening: start.steepening, runs: followed };
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
  return followed.every((one) => one !== null)
    ? { parameters, steepening: 0, runs: followed }
    : null;
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
