/**
 * Speeds of a glide against each other and against its distance and time.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import type { Glide, Session } from "../base/session.ts";
import { UNITS } from "../base/units.ts";
import { columnUncertainty, standardUncertaintyOf } from "./column-uncertainty.ts";
import { keptGlides, median, short } from "./rule.ts";

const FILE = "glides.csv";

/**
 * Warns of runs whose speed rose after launch: a gliding craft only slows down or sinks.
 *
 * @param session runs left out do not count
 * @returns warnings by run
 */
export function checkSpedUp(session: Session): Finding[] {
  return keptGlides(session).flatMap((glide) => {
    const { launchSpeed: v0, endSpeed: v1, row } = glide;
    if (v0 === null || v1 === null || v1 <= v0) return [];
    return [finding({
      severity: "warning",
      code: "sped-up",
      file: FILE,
      row,
      column: "end_speed",
      what: `The run ends faster (${short(v1)} m/s) than it was launched (${
        short(v0)
      } m/s): pumped or pushed? It stays in.`,
      wanted:
        "Look whether the two speeds are swapped; write a reason in leave_out to take it out.",
    })];
  });
}

/** Mean speed by distance and time over the mean of the two speeds, with its standard uncertainty. */
interface SpeedRatio {
  readonly glide: Glide;
  readonly ratio: number;
  readonly uncertainty: number;
}

function speedRatio(session: Session, glide: Glide): SpeedRatio | null {
  const { launchSpeed: v0, endSpeed: v1, distance: x, duration: t } = glide;
  if (v0 === null || v1 === null || x === null || t === null) return null;
  if (!(v0 > 0 && v1 > 0 && x > 0 && t > 0)) return null;
  const u = (column: string, value: number) =>
    standardUncertaintyOf(
      columnUncertainty(session.instruments, column),
      value,
      glide.own[column] ?? null,
    );
  const ratio = (x / t) / ((v0 + v1) / 2);
  const speeds = Math.hypot(u("launch_speed", v0), u("end_speed", v1)) / (v0 + v1);
  const share = Math.hypot(u("distance", x) / x, u("duration", t) / t, speeds);
  return { glide, ratio, uncertainty: ratio * share };
}

/** Room for the shape of the slowing down itself: in a real glide the ratio is 0.97 to 1.03 whatever the drag law. */
const SHAPE = 0.015;

/** How near a whole column's ratio must be to a unit's factor to name that unit. */
const NEAR = 0.06;

/**
 * Warns of runs whose distance over time does not fit their speeds.
 *
 * Distance over duration is the mean speed in time. It lies within 2 % of the mean of launch and end speed for any glide
 * whose drag changes little with speed; beyond four standard uncertainties one of the four readings is wrong. When all
 * runs are off by the factor of a unit, that unit is named once for the column.
 *
 * Source: mean-value bound of the decay under a drag between constant and quadratic; four standard uncertainties are
 * common practice.
 *
 * @param session runs left out do not count
 * @returns warnings by run, or one for the column
 */
export function checkMeanSpeed(session: Session): Finding[] {
  const ratios = keptGlides(session).flatMap((glide) => speedRatio(session, glide) ?? []);
  const middle = median(ratios.map((one) => one.ratio));
  if (middle === null) return [];
  const alike = ratios.length >= 3 &&
    ratios.every((one) => Math.abs(one.ratio / middle - 1) < 0.15);
  const unit = !alike ? undefined : UNITS.find((one) => {
    const factor = Number(one.numerator) / Number(one.denominator);
    return one.dimension === "speed" && factor !== 1 && Math.abs(middle / factor - 1) < NEAR;
  });
  if (unit !== undefined) {
    const first = ratios[0]!.glide;
    return [finding({
      severity: "warning",
      code: "unit-slip",
      file: FILE,
      column: "launch_speed",
      count: ratios.length,
      what: `In every run the distance over the duration is about ${
        short(middle)
      } times the mean of the two speeds (row ${first.row}: ${short(first.distance!)} m in ${
        short(first.duration!)
      } s).`,
      wanted:
        `Did you mean ${unit.name}? Then write launch_speed [${unit.name}] and end_speed [${unit.name}].`,
    })];
  }
  return ratios.flatMap(({ glide, ratio, uncertainty }) => {
    if (Math.abs(ratio - 1) <= 4 * Math.hypot(uncertainty, SHAPE)) return [];
    const { launchSpeed, endSpeed, distance, duration, row } = glide;
    return [finding({
      severity: "warning",
      code: "mean-speed",
      file: FILE,
      row,
      column: "duration",
      what: `${short(distance!)} m in ${short(duration!)} s is ${
        short(distance! / duration!)
      } m/s on average, but the speeds ${short(launchSpeed!)} and ${short(endSpeed!)} m/s mean ${
        short((launchSpeed! + endSpeed!) / 2)
      } m/s. The run stays in.`,
      wanted: "Look which of launch_speed, end_speed, distance and duration is wrong.",
    })];
  });
}
