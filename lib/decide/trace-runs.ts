/**
 * The traces of a session made ready for a fit: what each may tell, and why one may not.
 *
 * @module
 */
import type { Glide, Session, Trace } from "../base/session.ts";
import { type ColumnUncertainty, columnUncertainty } from "../check/column-uncertainty.ts";
import { conditionOf } from "../check/condition-of.ts";
import { blockMedium, type Medium, withinNature } from "./session-medium.ts";

/** Columns of glides.csv, and the traces' own speed, whose uncertainty enters. */
export const TRACE_COLUMNS = ["trace_speed", "drop", "distance", "carried_mass", "depth"] as const;

/** One of them. */
export type TraceColumn = typeof TRACE_COLUMNS[number];

/** One trace, ready or refused. */
export interface PreparedTrace {
  readonly trace: Trace;
  readonly glide: Glide;
  /** What stands in its way; `null` when nothing does. */
  readonly reason: string | null;
  /** Samples from the launch to the end of the run. */
  readonly times: readonly number[];
  readonly speeds: readonly number[];
  /** kg */
  readonly mass: number;
  /** m */
  readonly depth: number | null;
  /** m of height lost, and whether one row of conditions.csv says so for many runs. */
  readonly drop: number;
  readonly dropStated: boolean;
  /** m */
  readonly distance: number;
  readonly medium: Medium;
}

/** A session's traces with what they share. */
export interface PreparedTraces {
  readonly session: Session;
  readonly columns: Readonly<Record<TraceColumn, ColumnUncertainty>>;
  readonly traces: readonly PreparedTrace[];
}

/** s by which a trace may outlast the run's duration: the watch, and the first sample. */
const WATCH = 0.3;

/** Samples that are left at the least. */
const LEAST = 5;

/**
 * A session's traces made ready.
 *
 * @param session as read
 * @returns every trace, in the order of the files
 * @throws DataError where a stated condition can't be
 */
export function prepareTraces(session: Session): PreparedTraces {
  return {
    session,
    columns: Object.fromEntries(
      TRACE_COLUMNS.map((column) => [column, columnUncertainty(session.instruments, column)]),
    ) as Record<TraceColumn, ColumnUncertainty>,
    traces: session.traces.flatMap((trace) => {
      const glide = session.glides.find((one) => one.run === trace.run);
      return glide === undefined ? [] : [prepareTrace(session, trace, glide)];
    }),
  };
}

function prepareTrace(session: Session, trace: Trace, glide: Glide): PreparedTrace {
  const mass = glide.carriedMass ?? conditionOf(session, "carried_mass", glide.block)?.value ??
    null;
  const stated = conditionOf(session, "drop", glide.block)?.value ?? null;
  const drop = glide.drop ?? stated;
  const depth = glide.depth ?? conditionOf(session, "running_depth", glide.block)?.value ?? null;
  const end = glide.duration === null ? Infinity : trace.times[0]! + glide.duration + WATCH;
  const kept = trace.times.filter((time) => time <= end).length;
  const reason = (): string | null => {
    if (glide.leaveOut !== null) return `left out on purpose: ${glide.leaveOut}`;
    if (!session.designs.some((one) => one.design === glide.design)) {
      return "its design is not in designs.csv";
    }
    if (mass === null || !(mass > 0)) return "no carried mass";
    if (drop === null) return "no drop, so its thrust is not known";
    if (glide.distance === null || !(glide.distance > 0)) {
      return "no distance, so its sink is not known";
    }
    if (kept < LEAST) return `only ${kept} samples within the run's duration`;
    return null;
  };
  return {
    trace,
    glide,
    reason: reason(),
    times: trace.times.slice(0, kept),
    speeds: trace.speeds.slice(0, kept),
    mass: mass ?? 0,
    depth,
    drop: drop ?? 0,
    dropStated: glide.drop === null,
    distance: glide.distance ?? 0,
    medium: withinNature(() => blockMedium(session, glide.block)),
  };
}
