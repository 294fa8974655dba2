/**
 * Raw windows of a logger, reduced to one reading each.
 *
 * @module
 */
import type { Finding } from "../base/finding.ts";
import type { Session, TowPoint } from "../base/session.ts";
import type { TowWindow } from "../base/tow-answer.ts";
import { GAP, LEAST_SAMPLES } from "../check/check-windows.ts";
import { columnUncertainty, standardUncertaintyOf } from "../check/column-uncertainty.ts";
import { meanOf } from "../infer/sample.ts";
import { steadyPart } from "../infer/steady-part.ts";
import { windowMean } from "../infer/window-mean.ts";
import { LONG_ENOUGH, STEADY } from "../check/tow-steadiness.ts";
import { windowFindings } from "./tow-window-findings.ts";

/** A point of many samples, reduced. */
export interface ReducedWindow {
  readonly point: string;
  readonly row: number;
  /** `null` where there is a reason against it. */
  readonly window: TowWindow | null;
  readonly reason: string | null;
  /** Rows whose speed or tension is missing, or that the user left out. */
  readonly without: number;
  /** Longest time between two samples over the usual one, where that is a gap. */
  readonly gap: boolean;
}

/** A session with one row a point. */
export interface ReducedTow {
  readonly session: Session;
  /** By name of the point. */
  readonly windows: ReadonlyMap<string, ReducedWindow>;
  readonly findings: readonly Finding[];
}

/** What all samples of a point must agree on. */
const SAME = [
  "design",
  "setSpeed",
  "setSpeedOver",
  "direction",
  "speedOver",
  "sweep",
  "block",
] as const;

/**
 * A session whose tows have one row a point.
 *
 * Rows of one point with a `time` each are the samples of one window: they become their mean over its steady part, with the
 * drift of the speed as `speed_change`. What the scatter inside the window leaves open is added to what the instrument is
 * stated to leave open from window to window.
 *
 * @param session as read
 * @returns the session, what was made of each window, and findings about them; the same session where no row has a time
 */
export function reduceWindows(session: Session): ReducedTow {
  if (session.tow.every((one) => one.time == null)) {
    return { session, windows: new Map(), findings: [] };
  }
  const points = new Map<string, TowPoint[]>();
  for (const one of session.tow) points.set(one.point, [...points.get(one.point) ?? [], one]);
  const windows = new Map<string, ReducedWindow>();
  const tow = [...points].map(([name, rows]) => {
    if (rows.some((one) => one.time == null)) return rows[0]!;
    const reduced = reduce(session, rows);
    windows.set(name, reduced.about);
    return reduced.row;
  });
  return { session: { ...session, tow }, windows, findings: windowFindings([...windows.values()]) };
}

/** A sample with everything that a window needs. */
type WholeSample = TowPoint & {
  readonly time: number;
  readonly speed: number;
  readonly lineTension: number;
};

const whole = (one: TowPoint): one is WholeSample =>
  one.leaveOut === null && one.time != null && one.speed !== null && one.lineTension !== null;

function reduce(
  session: Session,
  rows: readonly TowPoint[],
): { readonly row: TowPoint; readonly about: ReducedWindow } {
  const first = rows[0]!;
  const samples = rows.filter(whole);
  const about = {
    point: first.point,
    row: first.row,
    without: rows.length - samples.length,
    gap: false,
  };
  const refuse = (reason: string) => ({
    row: { ...first, leaveOut: null },
    about: { ...about, window: null, reason },
  });
  if (rows.every((one) => one.leaveOut !== null)) {
    return { row: first, about: { ...about, window: null, reason: null } };
  }
  const mixed = SAME.find((name) => new Set(rows.map((one) => one[name] ?? null)).size > 1);
  if (mixed !== undefined) return refuse(`its samples differ in ${underscored(mixed)}`);
  const late = samples.find((one, i) => i > 0 && !(one.time > samples[i - 1]!.time));
  if (late !== undefined) return refuse(`its time does not rise in row ${late.row}`);
  const piece = longestPiece(samples);
  if (piece.length < LEAST_SAMPLES) {
    return refuse(`it has ${piece.length} whole samples in a row; a window needs ${LEAST_SAMPLES}`);
  }
  const part = steadyPart(
    piece.map(({ time, speed: value }) => ({ time, value })),
    { slope: STEADY, duration: LONG_ENOUGH },
  );
  const steady = piece.slice(part.from, part.to);
  const speed = windowMean(steady.map(({ time, speed: value }) => ({ time, value })));
  const tension = windowMean(steady.map(({ time, lineTension: value }) => ({ time, value })));
  const with_ = (column: string, value: number, own: number) => {
    const stated = first.own[column] ?? null;
    return Math.hypot(
      own,
      standardUncertaintyOf(columnUncertainty(session.instruments, column), value, stated),
    );
  };
  const angle = meanWhere(steady, "lineAngle");
  return {
    row: {
      ...first,
      own: {
        ...first.own,
        speed: with_("speed", speed.mean, speed.standardUncertainty),
        line_tension: with_("line_tension", tension.mean, tension.standardUncertainty),
        speed_change: speed.slopeUncertainty,
      },
      speed: speed.mean,
      speedChange: speed.slope,
      lineTension: tension.mean,
      lineAngle: angle,
      pitch: meanWhere(steady, "pitch"),
      depth: meanWhere(steady, "depth"),
      carriedMass: meanWhere(steady, "carriedMass"),
      window: speed.duration,
      leaveOut: null,
    },
    about: {
      ...about,
      gap: piece.length < samples.length,
      reason: null,
      window: {
        samples: rows.length,
        used: steady.length,
        given: (samples.at(-1)!.time - samples[0]!.time) * samples.length / (samples.length - 1),
        duration: speed.duration,
        speedScatter: speed.standardDeviation,
        speedCorrelationTime: speed.correlationTime,
        speedChange: speed.slope,
        speedChangeUncertainty: speed.slopeUncertainty,
        tensionScatter: tension.standardDeviation,
        tensionCorrelationTime: tension.correlationTime,
      },
    },
  };
}

const underscored = (name: string) => name.replace(/[A-Z]/g, (one) => `_${one.toLowerCase()}`);

function meanWhere(
  samples: readonly TowPoint[],
  name: "lineAngle" | "pitch" | "depth" | "carriedMass",
): number | null {
  const values = samples.flatMap((one) => one[name] ?? []);
  return values.length === 0 ? null : meanOf(values);
}

/** The longest run of samples without a gap. */
function longestPiece(samples: readonly WholeSample[]): readonly WholeSample[] {
  const steps = samples.slice(1).map((one, i) => one.time - samples[i]!.time);
  const usual = [...steps].sort((a, b) => a - b)[steps.length >> 1] ?? 0;
  const pieces: WholeSample[][] = [[]];
  samples.forEach((one, i) => {
    if (i > 0 && steps[i - 1]! > GAP * usual) pieces.push([]);
    pieces.at(-1)!.push(one);
  });
  return pieces.reduce((a, b) => b.length > a.length ? b : a);
}
