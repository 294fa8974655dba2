/**
 * The rows of glides.csv made ready for a comparison: what each run may tell, and why one may not.
 *
 * @module
 */
import type { Design, Glide, Session } from "../base/session.ts";
import {
  type ColumnUncertainty,
  columnUncertainty,
  standardUncertaintyOf,
} from "../check/column-uncertainty.ts";
import { conditionOf } from "../check/condition-of.ts";
import type { GlideRun } from "../fit/glide-run.ts";
import { LEAST_DEPTH_OVER_SPAN } from "../model/free-surface.ts";
import { prepareCraft } from "./glide-craft.ts";
import { blockMedium, meanMedium, type Medium, withinNature } from "./session-medium.ts";

/** A session with everything about it that its runs share. */
export interface PreparedSession {
  readonly session: Session;
  /** Place among the sessions asked about, from 0. */
  readonly place: number;
  /** Mean over the blocks flown: what designs are compared in. */
  readonly medium: Medium;
  /** By block; `null` for runs without one. */
  readonly media: ReadonlyMap<string | null, Medium>;
  readonly columns: Readonly<Record<GlideColumn, ColumnUncertainty>>;
}

/** Columns whose uncertainty enters a comparison. */
export const GLIDE_COLUMNS = [
  "launch_speed",
  "end_speed",
  "drop",
  "distance",
  "carried_mass",
] as const;

/** One of them. */
export type GlideColumn = typeof GLIDE_COLUMNS[number];

/** One run, ready or refused. */
export interface PreparedRun {
  readonly prepared: PreparedSession;
  readonly glide: Glide;
  readonly spec: Design | null;
  /** What is alike within, unique among all sessions. */
  readonly block: string;
  /** Carried mass, kg. */
  readonly mass: number | null;
  /** m */
  readonly depth: number | null;
  /** m, the row's own drop or the session's. */
  readonly drop: number | null;
  /** The run as the sums take it; `null` when it can't be used at all. */
  readonly run: GlideRun | null;
  /** Standard uncertainty of ln of the induced share of this run's craft. */
  readonly shapeUncertainty: number;
  /** Why it is not used, or used in part only. */
  readonly reason: string | null;
}

/**
 * A session made ready: its water, and how well its columns are known.
 *
 * @param session as read
 * @param place among the sessions asked about, from 0
 * @returns the prepared session
 * @throws DataError where a stated condition can't be
 */
export function prepareSession(session: Session, place: number): PreparedSession {
  const columns = Object.fromEntries(
    GLIDE_COLUMNS.map((column) => [column, columnUncertainty(session.instruments, column)]),
  ) as Record<GlideColumn, ColumnUncertainty>;
  const media = mediaOf(session);
  return { session, place, medium: meanMedium([...media.values()]), media, columns };
}

/** Water and gravity by block; a condition that no water has is a fault in the data. */
function mediaOf(session: Session): Map<string | null, Medium> {
  const named = session.glides.flatMap((one) => one.block === null ? [] : [one.block]);
  const blocks: (string | null)[] = [...new Set(named)].sort();
  if (named.length < session.glides.length || named.length === 0) blocks.push(null);
  return withinNature(() => new Map(blocks.map((block) => [block, blockMedium(session, block)])));
}

/** Runs in an order that does not depend on the order of the rows: by session, then by name, digits by value. */
function byName(first: Glide, second: Glide): number {
  const [a, b] = [first.run, second.run].map((name) => name.split(/(\d+)/)) as [string[], string[]];
  for (let i = 0; i < Math.min(a.length, b.length); i++) {
    const [x, y] = [a[i]!, b[i]!];
    if (x === y) continue;
    const [m, n] = [Number(x), Number(y)];
    if (i % 2 === 1 && m !== n) return m - n;
    return x < y ? -1 : 1;
  }
  return a.length - b.length || first.row - second.row;
}

/**
 * All runs of a session, ready or refused with a reason, ordered by name.
 *
 * @param prepared the session
 * @returns one entry a row of glides.csv
 */
export function prepareRuns(prepared: PreparedSession): PreparedRun[] {
  return [...prepared.session.glides].sort(byName).map((glide) => prepareRun(prepared, glide));
}

const known = (value: number | null): value is number => value !== null && Number.isFinite(value);

/** m/s and m: anything smaller is a slip, not a glide. */
const LEAST_READING = 1e-3;

const above = (value: number | null): value is number => known(value) && value > LEAST_READING;

function prepareRun(prepared: PreparedSession, glide: Glide): PreparedRun {
  const { session } = prepared;
  const medium = prepared.media.get(glide.block)!;
  const spec = session.designs.find((one) => one.design === glide.design) ?? null;
  const mass = glide.carriedMass ??
    conditionOf(session, "carried_mass", glide.block)?.value ?? null;
  const depth = glide.depth ?? conditionOf(session, "running_depth", glide.block)?.value ?? null;
  const drop = glide.drop ?? conditionOf(session, "drop", glide.block)?.value ?? null;
  const block = JSON.stringify([session.name, glide.block ?? glide.date]);
  const common = { prepared, glide, spec, block, mass, depth, drop };
  const refused = (reason: string): PreparedRun => ({
    ...common,
    run: null,
    shapeUncertainty: 0,
    reason,
  });

  if (glide.leaveOut !== null) return refused(`left out on purpose: ${glide.leaveOut}`);
  if (spec === null) return refused("its design is not in designs.csv");
  if (!above(glide.launchSpeed)) return refused("no launch speed");
  if (!known(mass) || !(mass > 0)) {
    return refused("no carried mass, neither in the run nor in conditions.csv");
  }
  if (depth !== null && depth < LEAST_DEPTH_OVER_SPAN * spec.span) {
    return refused(
      "a depth of less than a hundredth of the span: no wing glides so near the surface",
    );
  }
  const craft = prepareCraft(spec, { mass, depth, medium });
  if (craft === null) return refused("the foil floats what it carries: nothing glides down");
  const end = above(glide.endSpeed) ? glide.endSpeed : null;
  const distance = above(glide.distance) ? glide.distance : null;
  const inLevel = end !== null && distance !== null && known(drop);
  const inEnd = glide.ended === "stalled" && end !== null;
  const missing = [
    end === null ? "no end speed" : "",
    known(drop) ? "" : "no drop",
    distance === null ? "no distance" : "",
  ].filter((word) => word !== "").join(", ");
  if (!inLevel && !inEnd) return refused(`energy spent is not known: ${missing}`);
  return {
    ...common,
    run: {
      launchSpeed: glide.launchSpeed,
      endSpeed: end!,
      drop: drop ?? 0,
      distance: distance ?? 0,
      inLevel,
      inEnd,
      craft: craft.craft,
      uncertainty: {
        launchSpeed: uncertaintyOf(prepared, glide, "launch_speed", glide.launchSpeed),
        endSpeed: uncertaintyOf(prepared, glide, "end_speed", end!),
        drop: uncertaintyOf(prepared, glide, "drop", drop ?? 0),
        distance: uncertaintyOf(prepared, glide, "distance", distance ?? 0),
      },
    },
    shapeUncertainty: craft.shapeUncertainty,
    reason: inLevel ? null : `${missing}: only its end speed counts`,
  };
}

function uncertaintyOf(
  prepared: PreparedSession,
  glide: Glide,
  column: GlideColumn,
  value: number,
): number {
  return standardUncertaintyOf(prepared.columns[column], value, glide.own[column] ?? null);
}
