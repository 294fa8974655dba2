/**
 * One reading of a tow with an error of its instruments taken off.
 *
 * @module
 */
import type { TowReading } from "../fit/tow-data.ts";
import type { PassSign } from "./tow-current.ts";
import type { PreparedPoint, PreparedTow } from "./tow-readings.ts";

/** A change of the inputs that all readings share; nothing stands for none. */
export interface Off {
  readonly tensionShare?: number;
  readonly tensionFixed?: number;
  /** Share of the distance from the calibration's middle load, N each N. */
  readonly tensionSlope?: number;
  /** N of the load cell's zero in one stretch between two looks at it. */
  readonly zero?: { readonly stretch: number; readonly newtons: number };
  readonly speedShare?: number;
  readonly speedFixed?: number;
  /** Of a block's current: m/s, and m/s a row from its centre; each pass takes it with its own sign. */
  readonly current?: {
    readonly block: string | null;
    readonly fixed: number;
    readonly slope: number;
  };
  /** m/s of a current in speeds over ground whose direction nobody wrote down. */
  readonly undirected?: number;
  readonly angle?: number;
  readonly mass?: number;
  readonly volumeShare?: number;
  readonly depth?: number;
}

/**
 * A reading of the instruments with a shared error taken off, and what is independent in it.
 *
 * @param prepared the session
 * @param one the reading
 * @param off the error
 * @returns speed, tension, angle, and their independent standard uncertainties
 */
export function readingOff(
  { columns, calibration }: PreparedTow,
  { point, speed, tension, angle, zeroStretch, pass }: PreparedPoint,
  off: Off,
): Pick<TowReading, "speed" | "tension" | "angle" | "uncertainty"> {
  const middle = calibration.line === null ? 0 : calibration.line.valueAtCentre;
  const known = (column: "speed" | "line_tension") => {
    const stated = point.own[column];
    const { fixed, share } = columns[column];
    return stated === undefined ? { fixed, share } : { fixed: stated, share: 0 };
  };
  return {
    speed: speed * (1 - (off.speedShare ?? 0)) - (off.speedFixed ?? 0) -
      currentOff(off, point.block, pass),
    tension: tension * (1 - (off.tensionShare ?? 0)) - (off.tensionFixed ?? 0) -
      (off.tensionSlope ?? 0) * (tension - middle) -
      (off.zero?.stretch === zeroStretch ? off.zero.newtons : 0),
    angle: angle - (off.angle ?? 0),
    uncertainty: {
      speed: known("speed"),
      tension: known("line_tension"),
      angle: point.own.line_angle ?? columns.line_angle.fixed,
    },
  };
}

/** m/s that an error of the current takes off a reading. */
function currentOff(
  { current, undirected = 0 }: Off,
  block: string | null,
  pass: PassSign | null,
): number {
  if (pass === null) return 0;
  if (pass.sign === 0) return undirected;
  return current === undefined || current.block !== block
    ? 0
    : pass.sign * (current.fixed + current.slope * pass.time);
}
