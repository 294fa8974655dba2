/**
 * Follows a motion through time from its law: ordinary differential equations, with events on the way.
 *
 * @module
 */
import type { Result } from "../base/quantity.ts";
import { bracketedRoot } from "./roots.ts";
import { type DensePiece, densePiece, dormandPrinceStep } from "./dormand-prince.ts";

/** Rate of change of each component. */
export type RateOfChange = (time: number, state: readonly number[]) => readonly number[];

/** Something to watch for. */
export interface WatchedEvent {
  readonly name: string;
  /** Happens where this crosses zero. */
  readonly of: (time: number, state: readonly number[]) => number;
  /** Which way it must cross (default `either`). */
  readonly direction?: "rising" | "falling" | "either";
  /** Ends the motion. */
  readonly ends?: boolean;
}

/** An event that happened. */
export interface EventHappened {
  readonly name: string;
  readonly time: number;
  readonly state: readonly number[];
}

/** How exact, what to watch for, and when to give up. */
export interface MotionOptions {
  /** Error a step, relative to the state (default 1e-9). */
  readonly relativeTolerance?: number;
  /** Error a step where a component is near zero, one for all or one each (default 1e-12). */
  readonly absoluteTolerance?: number | readonly number[];
  readonly events?: readonly WatchedEvent[];
  /** Default 100000. */
  readonly mostSteps?: number;
  /** Longest step; without it as long as the error allows. */
  readonly longestStep?: number;
}

/** A motion that was followed. */
export interface Motion {
  /** Ends of the steps, the start first. */
  readonly times: readonly number[];
  readonly states: readonly (readonly number[])[];
  /** The state at any time followed, to about the accuracy of the steps; throws outside. */
  readonly at: (time: number) => number[];
  /** In the order in which they happened. */
  readonly events: readonly EventHappened[];
  /** Name of the event that ended it; `null` when it ran its time. */
  readonly endedBy: string | null;
  readonly evaluations: number;
}

/** Points inside a step at which events are looked at, so that two crossings in one step are seen. */
const LOOKS = [0.25, 0.5, 0.75, 1] as const;

/** Crossings of one event within a step. */
function crossings(piece: DensePiece, event: WatchedEvent): number[] {
  const g = (theta: number) => {
    const time = piece.from + theta * piece.length;
    const value = event.of(time, piece.at(theta));
    if (Number.isNaN(value)) {
      throw new RangeError(`Cannot watch for ${event.name} as it is not a number at ${time}`);
    }
    return value;
  };
  const found: number[] = [];
  let before = 0;
  let atBefore = g(0);
  for (const here of LOOKS) {
    const atHere = g(here);
    const rises = atBefore < 0 && atHere >= 0;
    const falls = atBefore > 0 && atHere <= 0;
    const direction = event.direction ?? "either";
    if ((rises && direction !== "falling") || (falls && direction !== "rising")) {
      found.push(bracketedRoot(g, { low: before, high: here }));
    }
    before = here;
    atBefore = atHere;
  }
  return found;
}

/**
 * Follows a motion from a start to a time, or to an event that ends it.
 *
 * Dormand and Prince's pair of orders 5 and 4; the step length follows the estimated error. The state between steps
 * comes from their fourth-order interpolation, and so do the times of events. Not for stiff equations.
 *
 * Source: Hairer, Nørsett and Wanner, Solving Ordinary Differential Equations I, 2nd edition, 1993, II.4 and II.6.
 *
 * @param rate rate of change of the state
 * @param span start time, end time (earlier ones run backwards) and state at the start
 * @param options tolerances, events, limits
 * @returns the motion, or the reason why it could not be followed to its end
 * @throws RangeError when the start makes no sense, or an event is not a number somewhere
 * @example A stone let go at 20 m: when it lands
 * ```ts
 * import { followMotion } from "lakeproof/numeric/ordinary-differential-equation.ts";
 * import { assertAlmostEqual } from "lakeproof/base/assert.ts";
 * const fall = followMotion((_time, [_height, speed]) => [speed!, -9.81], {
 *   from: 0,
 *   to: 10,
 *   start: [20, 0],
 * }, { events: [{ name: "landed", of: (_time, [height]) => height!, ends: true }] });
 * if (!fall.ok) throw new Error(fall.reason);
 * assertAlmostEqual(fall.events[0]!.time, Math.sqrt(40 / 9.81), 1e-12);
 * ```
 */
export function followMotion(
  rate: RateOfChange,
  span: { readonly from: number; readonly to: number; readonly start: readonly number[] },
  options: MotionOptions = {},
): Result<Motion> {
  const { from, to, start } = span;
  const events = options.events ?? [];
  const relative = Math.max(options.relativeTolerance ?? 1e-9, 10 * Number.EPSILON);
  const absolute = start.map((_value, i) => {
    const given = options.absoluteTolerance ?? 1e-12;
    return typeof given === "number" ? given : given[i] ?? 1e-12;
  });
  if (![from, to, ...start].every(Number.isFinite) || start.length === 0) {
    throw new RangeError("Cannot follow a motion as its start and times must be finite numbers");
  }
  const failed = (reason: string) => ({ ok: false as const, reason });
  const way = Math.sign(to - from);
  const longest = Math.min(options.longestStep ?? Infinity, Math.abs(to - from));
  let evaluations = 0;
  const slope: RateOfChange = (time, state) => {
    evaluations++;
    return rate(time, state);
  };
  const weigh = (error: readonly number[], one: readonly number[], other: readonly number[]) => {
    const squares = error.reduce((sum, e, i) => {
      const scale = absolute[i]! + relative * Math.max(Math.abs(one[i]!), Math.abs(other[i]!));
      return sum + (e / scale) ** 2;
    }, 0);
    return Math.sqrt(squares / error.length);
  };

  const times = [from];
  const states: (readonly number[])[] = [[...start]];
  const pieces: DensePiece[] = [];
  const happened: EventHappened[] = [];
  let endedBy: string | null = null;
  let time = from;
  let state: readonly number[] = [...start];
  let first = slope(time, state);
  if (first.length !== start.length || !first.every(Number.isFinite)) {
    return failed("the rate of change at the start is not a finite number for each component");
  }
  // A first step over which the state changes by about a hundredth of itself (or of its tolerance).
  const speed = weigh(first, state, state);
  const size = weigh(state, state, state);
  let length = way * Math.min(longest, speed > 0 ? 0.01 * Math.max(size, 1) / speed : longest);
  let steps = 0;
  while (endedBy === null && (to - time) * way > 0) {
    if (++steps > (options.mostSteps ?? 100_000)) {
      return failed(`the motion was followed to ${time} only, in ${steps - 1} steps`);
    }
    if ((time + 1.01 * length - to) * way > 0) length = to - time;
    if (time + length === time) return failed(`the step became too short at ${time}`);
    const step = dormandPrinceStep(slope, { time, state, slope: first, length });
    const error = step.end.every(Number.isFinite) && step.error.every(Number.isFinite)
      ? weigh(step.error, state, step.end)
      : Infinity;
    const factor = error === 0 ? 5 : Math.min(5, Math.max(0.2, 0.9 * error ** -0.2));
    if (error > 1) {
      length *= Math.min(0.9, factor);
      continue;
    }
    const piece = densePiece(step, { time, state, length });
    const found = events
      .flatMap((event) => crossings(piece, event).map((theta) => ({ event, theta })))
      .sort((one, other) => one.theta - other.theta);
    let end = 1;
    for (const { event, theta } of found) {
      happened.push({ name: event.name, time: time + theta * length, state: piece.at(theta) });
      if (event.ends === true) {
        endedBy = event.name;
        end = theta;
        break;
      }
    }
    pieces.push(piece);
    time = endedBy !== null ? time + end * length : length === to - time ? to : time + length;
    state = endedBy !== null ? piece.at(end) : step.end;
    first = step.lastSlope;
    times.push(time);
    states.push(state);
    length = way * Math.min(longest, Math.abs(length) * factor);
  }
  const at = (when: number): number[] => {
    if (!((when - from) * way >= 0 && (time - when) * way >= 0)) {
      throw new RangeError(`Cannot tell the state at ${when}: followed from ${from} to ${time}`);
    }
    // The last step that starts at or before the time.
    let [low, high] = [0, pieces.length - 1];
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      if ((times[middle]! - when) * way <= 0) low = middle;
      else high = middle - 1;
    }
    const piece = pieces[low];
    return piece === undefined ? [...start] : piece.at((when - piece.from) / piece.length);
  };
  return { ok: true, times, states, at, events: happened, endedBy, evaluations };
}
