/**
 * The rows of tow.csv made ready for a fit: what each reading may tell, and why one may not.
 *
 * @module
 */
import type { Finding } from "../base/finding.ts";
import type { Design, Session, TowPoint } from "../base/session.ts";
import type { TowWindow } from "../base/tow-answer.ts";
import { type ColumnUncertainty, columnUncertainty } from "../check/column-uncertainty.ts";
import { conditionOf } from "../check/condition-of.ts";
import { meanOf } from "../infer/sample.ts";
import { blockMedium, meanMedium, type Medium, withinNature } from "./session-medium.ts";
import { type TowCalibration, towCalibration } from "./tow-calibration.ts";
import { type PassSign, type TowCurrents, towCurrents } from "./tow-current.ts";
import { drifts, UNSTEADY } from "../check/tow-steadiness.ts";
import { type ReducedWindow, reduceWindows } from "./tow-windows.ts";

/** Columns whose uncertainty enters a tow. */
const TOW_COLUMNS = [
  "speed",
  "line_tension",
  "line_angle",
  "carried_mass",
  "depth",
] as const;

/** One of them. */
export type TowColumn = typeof TOW_COLUMNS[number];

/** One reading, ready or refused. */
export interface PreparedPoint {
  readonly point: TowPoint;
  /** Place among the session's rows, struts alone included, from 0. */
  readonly order: number;
  /** What stands in its way; `null` when nothing does. */
  readonly reason: string | null;
  /** True where the row says what can't be: no fit goes on beside it. */
  readonly impossible: boolean;
  /** N, calibrated; 0 where there is none. */
  readonly tension: number;
  /** N as the load cell showed it, off its zero; 0 where there is none. */
  readonly cellReading: number;
  /** Stretch between two looks at the load cell's zero; `null` outside all. */
  readonly zeroStretch: number | null;
  /** m/s through the water: over ground less the current, as far as that is known. */
  readonly speed: number;
  /** How the pass stands to the current; `null` for a speed that was read through the water. */
  readonly pass: PassSign | null;
  /** What the reading was made of; `null` where its row is a mean already. */
  readonly window: TowWindow | null;
  /** rad */
  readonly angle: number;
  /** kg */
  readonly mass: number;
  /** m */
  readonly depth: number | null;
  readonly group: string;
  readonly sweep: string;
}

/** A session with everything about it that its readings share. */
export interface PreparedTow {
  readonly session: Session;
  readonly medium: Medium;
  readonly columns: Readonly<Record<TowColumn, ColumnUncertainty>>;
  readonly calibration: TowCalibration;
  readonly points: readonly PreparedPoint[];
  /** Readings of the struts alone; those need no mass. */
  readonly tares: readonly PreparedPoint[];
  /** kg that drag is told at; `null` where no reading has a mass. */
  readonly referenceMass: number | null;
  /** True where no row has a line angle: the line then counts as level. */
  readonly levelLine: boolean;
  /** The current in speeds over ground. */
  readonly currents: TowCurrents;
  /** Findings about raw windows. */
  readonly windowFindings: readonly Finding[];
}

/** A row of tow.csv for struts alone. */
const TARE = "tare";

/** Speeds without a set speed that are nearer than this count as repeats, m/s. */
const SAME_SPEED = 0.25;

/**
 * A session made ready.
 *
 * @param session as read
 * @returns water, uncertainties, calibration, and every reading of a design in the order of the rows
 * @throws DataError where a stated condition can't be
 */
export function prepareTow(session: Session): PreparedTow {
  const reduced = reduceWindows(session);
  const { tow } = reduced.session;
  const rows = tow.filter((one) => one.design !== TARE);
  const blocks: readonly (string | null)[] = [...new Set(rows.map((one) => one.block))];
  const medium = mediumOf(session, blocks.length > 0 ? blocks : [null]);
  const columns = Object.fromEntries(
    TOW_COLUMNS.map((column) => [column, columnUncertainty(session.instruments, column)]),
  ) as Record<TowColumn, ColumnUncertainty>;
  const calibration = towCalibration(reduced.session, medium.gravity);
  const currents = towCurrents(reduced.session);
  const kept = rows.filter((one) => one.leaveOut === null);
  const levelLine = kept.every((one) => one.lineAngle === null);
  const prepared = tow.map((point, order) =>
    preparePoint(session, {
      point,
      order,
      calibration,
      levelLine,
      currents,
      reduced: reduced.windows.get(point.point) ?? null,
    })
  );
  const [points, tares] = [false, true].map((tare) =>
    prepared.filter(({ point }) => (point.design === TARE) === tare)
  ) as [PreparedPoint[], PreparedPoint[]];
  const masses = points.filter((one) => one.reason === null).map((one) => one.mass);
  const stated = conditionOf(session, "reference_mass", null)?.value ?? null;
  return {
    session,
    medium,
    columns,
    calibration,
    points,
    tares,
    referenceMass: stated ?? (masses.length === 0 ? null : meanOf(masses)),
    levelLine,
    currents,
    windowFindings: reduced.findings,
  };
}

/** Mean water and gravity; a condition that no water has is a fault in the data. */
function mediumOf(session: Session, blocks: readonly (string | null)[]): Medium {
  return withinNature(() => meanMedium(blocks.map((one) => blockMedium(session, one))));
}

interface PointTask {
  readonly point: TowPoint;
  readonly order: number;
  readonly calibration: TowCalibration;
  readonly levelLine: boolean;
  readonly currents: TowCurrents;
  readonly reduced: ReducedWindow | null;
}

function preparePoint(session: Session, task: PointTask): PreparedPoint {
  const { point, order, levelLine } = task;
  const tare = point.design === TARE;
  const mass = point.carriedMass ?? conditionOf(session, "carried_mass", point.block)?.value ??
    null;
  const depth = point.depth ?? conditionOf(session, "running_depth", point.block)?.value ?? null;
  const { line, zero } = task.calibration;
  const cellReading = point.lineTension === null
    ? null
    : point.lineTension - (zero?.zeroAt(order) ?? 0);
  const tension = cellReading === null || line === null
    ? cellReading
    : line.valueAtCentre + line.slope * (cellReading - line.centre);
  const speed = task.currents.waterSpeed(point, order);
  const angle = point.lineAngle ?? (levelLine ? 0 : null);
  const refuse = (): { readonly reason: string | null; readonly impossible: boolean } => {
    const open = (reason: string | null) => ({ reason, impossible: false });
    if (point.leaveOut !== null) return open(`left out on purpose: ${point.leaveOut}`);
    if (!tare && !session.designs.some((one) => one.design === point.design)) {
      return open("its design is not in designs.csv");
    }
    if (task.reduced?.reason != null) return open(task.reduced.reason);
    if (speed === null) return open("no speed");
    if (tension === null) return open("no line tension");
    if (!tare && (mass === null || !(mass > 0))) {
      return open("no carried mass, neither in the reading nor in conditions.csv");
    }
    if (angle === null) return open("no line angle");
    if (!(speed > 0)) return { reason: "its speed is not above zero", impossible: true };
    if (!(tension > 0)) return { reason: "its line does not pull", impossible: true };
    if (!(Math.abs(angle) < Math.PI / 2)) {
      return { reason: "its line does not lead ahead", impossible: true };
    }
    if (drifts(point.speedChange, UNSTEADY, point.own.speed_change)) {
      return open(
        `its speed drifts by ${point.speedChange!.toFixed(3)} m/s2, more than ${UNSTEADY}`,
      );
    }
    return open(null);
  };
  return {
    point,
    order,
    ...refuse(),
    tension: tension ?? 0,
    cellReading: cellReading ?? 0,
    zeroStretch: zero?.stretchAt(order) ?? null,
    speed: speed ?? 0,
    pass: task.currents.passOf(point, order),
    window: task.reduced?.window ?? null,
    angle: angle ?? 0,
    mass: mass ?? 0,
    depth,
    group: point.setSpeed === null
      ? `about ${Math.round((speed ?? 0) / SAME_SPEED) * SAME_SPEED}`
      : `${Number(point.setSpeed.toPrecision(6))}`,
    sweep: point.sweep ?? point.block ?? "",
  };
}

/**
 * Designs that were towed, in the order of designs.csv.
 *
 * @param prepared a session
 * @returns designs with their readings, refused ones included
 */
export function towedDesigns(
  prepared: PreparedTow,
): { readonly spec: Design; readonly place: number; readonly points: readonly PreparedPoint[] }[] {
  return prepared.session.designs.map((spec, i) => ({
    spec,
    place: i + 1,
    points: prepared.points.filter((one) => one.point.design === spec.design),
  })).filter((one) => one.points.length > 0);
}

/**
 * Whether designs took turns behind the boat: each came back after another had been towed.
 *
 * @param prepared a session
 * @param names designs
 * @returns false where one of them was towed in a single stretch, so that the day may be the difference
 */
export function alternated(prepared: PreparedTow, names: readonly string[]): boolean {
  const used = prepared.points.filter((one) =>
    one.reason === null && names.includes(one.point.design)
  );
  const stretches = new Map<string, number>();
  used.forEach((one, i) => {
    if (used[i - 1]?.point.design === one.point.design) return;
    stretches.set(one.point.design, (stretches.get(one.point.design) ?? 0) + 1);
  });
  return names.every((name) => (stretches.get(name) ?? 0) >= 2);
}
