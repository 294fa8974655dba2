/**
 * Whether the samples of a logger make windows behind the boat that a mean can be taken of.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import { excerpt } from "../base/printable.ts";
import type { Session, TowPoint } from "../base/session.ts";
import { median, type Rule } from "./rule.ts";
import { LONG_ENOUGH, UNSTEADY } from "./tow-steadiness.ts";

/** Fewer samples make no mean with an uncertainty. */
export const LEAST_SAMPLES = 3;

/** A step so many times the usual one is a gap. */
export const GAP = 2.5;

/** Codes of this rule: the answer on tows tells of the same windows in its own words, with what it made of them. */
export const WINDOW_CODES: readonly string[] = [
  "time-not-rising",
  "window-gap",
  "short-window",
  "few-samples",
  "drifting-window",
];

/** Samples that have everything a mean needs. */
type Sample = TowPoint & { readonly time: number; readonly speed: number };

const whole = (one: TowPoint): one is Sample =>
  one.leaveOut === null && one.time != null && one.speed !== null && one.lineTension !== null;

const meanSpeed = (samples: readonly Sample[]) =>
  samples.reduce((sum, one) => sum + one.speed, 0) / samples.length;

/**
 * m/s2 from the first third of a window to its last: no more than a look, but one that waves hardly fool.
 *
 * @param samples three or more, in the order of time
 */
function driftOf(samples: readonly Sample[]): number {
  const third = Math.max(1, Math.floor(samples.length / 3));
  const [start, end] = [samples.slice(0, third), samples.slice(-third)];
  const middle = (part: readonly Sample[]) => (part[0]!.time + part.at(-1)!.time) / 2;
  return (meanSpeed(end) - meanSpeed(start)) / (middle(end) - middle(start));
}

/** What is odd about one point's samples, the first thing first. */
function checkPoint(rows: readonly TowPoint[]): Finding[] {
  const first = rows[0]!;
  const name = `Reading ${excerpt(first.point)}`;
  const tell = (
    code: string,
    row: TowPoint,
    what: string,
    wanted: string,
    column = "time",
  ): Finding =>
    finding({
      severity: "warning",
      code,
      file: "tow.csv",
      row: row.row,
      column,
      what: `${name} ${what}`,
      wanted,
    });
  if (rows.every((one) => one.leaveOut !== null)) return [];
  const without = rows.find((one) => one.time == null);
  if (without !== undefined) {
    return [tell(
      "sample-without-time",
      without,
      `has ${rows.length} rows, and not all of them a time: only its first row is read.`,
      "The time of every sample, or one row a reading.",
    )];
  }
  const samples = rows.filter(whole);
  if (samples.length < LEAST_SAMPLES) {
    return [tell(
      "few-samples",
      first,
      `has ${samples.length} samples with time, speed and tension: no mean is taken of fewer than ${LEAST_SAMPLES}.`,
      "Every sample of the window, each in a row.",
    )];
  }
  const late = samples.find((one, i) => i > 0 && !(one.time > samples[i - 1]!.time));
  if (late !== undefined) {
    return [tell(
      "time-not-rising",
      late,
      "has a clock that does not run forward here.",
      "The samples of a point in the order of time, each once.",
    )];
  }
  const steps = samples.slice(1).map((one, i) => one.time - samples[i]!.time);
  const usual = median(steps)!;
  const gap = steps.findIndex((step) => step > GAP * usual);
  const length = (samples.at(-1)!.time - samples[0]!.time) * samples.length / (samples.length - 1);
  const drift = driftOf(samples);
  return [
    ...(gap < 0 ? [] : [tell(
      "window-gap",
      samples[gap + 1]!,
      `misses samples for ${steps[gap]!.toFixed(1)} s before this row.`,
      "Windows without a gap.",
    )]),
    ...(length >= LONG_ENOUGH ? [] : [tell(
      "short-window",
      first,
      `lasts ${length.toFixed(1)} s.`,
      `${LONG_ENOUGH} s and more at a steady speed.`,
    )]),
    ...(Math.abs(drift) <= UNSTEADY ? [] : [tell(
      "drifting-window",
      first,
      `${drift > 0 ? "speeds up" : "slows down"} by ${
        Math.abs(drift).toFixed(3)
      } m/s a second from its first third to its last.`,
      `A window in which the speed has settled, to ${UNSTEADY} m/s a second.`,
      "speed",
    )]),
  ];
}

/**
 * Warns of raw windows in tow.csv that are too short, hold too few samples or a gap, drift, or whose clock runs backward.
 *
 * Plain looks at the samples, as a person would take them. What is done about each window, and how much doubt it leaves, the
 * answer on tows tells: it cuts windows to their steady part, so that one which drifts here may still count there.
 *
 * @param session its tows; points of one row each are means already and not looked at
 * @returns warnings at the first sample concerned
 * @example A window of half a second
 * ```ts
 * import { checkWindows } from "lakeproof/check/check-windows.ts";
 * import { readSession } from "lakeproof/read/read-session.ts";
 * import { equal } from "node:assert/strict";
 * const rows = [0, 1, 2, 3, 4].map((i) => `1,alder,4.0,60,0.1,${i / 10}`);
 * const tow = ["point,design,speed,line_tension,line_angle,time", ...rows].join("\n");
 * const bytes = (text: string) => new TextEncoder().encode(text);
 * const designs = bytes("design,span,area\nalder,0.95,0.15\n");
 * const session = readSession("lake", new Map([["designs.csv", designs], ["tow.csv", bytes(tow)]]));
 * equal(checkWindows(session)[0]?.code, "short-window");
 * ```
 */
export const checkWindows: Rule = (session: Session) => {
  if (session.tow.every((one) => one.time == null)) return [];
  const points = new Map<string, TowPoint[]>();
  for (const one of session.tow) {
    const rows = points.get(one.point);
    if (rows === undefined) points.set(one.point, [one]);
    else rows.push(one);
  }
  return [...points.values()].filter((rows) => rows.length > 1 || rows[0]!.time != null)
    .flatMap(checkPoint);
};
