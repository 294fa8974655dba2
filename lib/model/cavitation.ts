/**
 * How far water is from boiling off a wing: a warning, not a method of design.
 *
 * @module
 */

/** Where the wing flies. */
export interface CavitationTask {
  /** m/s */
  readonly speed: number;
  /** m under the surface. */
  readonly depth: number;
  /** kg/m3 */
  readonly density: number;
  /** m/s2 */
  readonly gravity: number;
  /** Pa, from `water`. */
  readonly vapourPressure: number;
  /** Pa of the air above; 101325 unless said otherwise. */
  readonly airPressure?: number;
}

function margin(
  { depth, density, gravity, vapourPressure, airPressure = 101_325 }: CavitationTask,
) {
  return airPressure + density * gravity * depth - vapourPressure;
}

/**
 * Cavitation number `(p_air + rho g h - p_v)/(rho V^2/2)`.
 *
 * Water boils where the wing's lowest pressure coefficient reaches minus this number. A smooth section well inside its range has -0.5 to
 * -1.5, near stall -3 to -6 at its nose (common practice, no source). Air drawn down from the surface comes earlier, and has no number.
 *
 * Source: definition, in any text on hydrofoils.
 *
 * @param task speed in m/s, depth in m, water, pressure of the air in Pa
 * @returns 1
 * @throws RangeError when speed or density is not above zero
 *
 * @example
 * ```ts
 * import { cavitationNumber } from "lakeproof/model/cavitation.ts";
 * const number = cavitationNumber({
 *   speed: 10,
 *   depth: 0.5,
 *   density: 1026.021,
 *   gravity: 9.80665,
 *   vapourPressure: 1670.9,
 * });
 * if (Math.abs(number - 2.0406) > 1e-4) throw new Error(`${number}`);
 * ```
 */
export function cavitationNumber(task: CavitationTask): number {
  if (!(task.speed > 0 && task.density > 0 && Number.isFinite(margin(task)))) {
    throw new RangeError(
      `Cannot give a cavitation number as speed and density must be above zero: ${task.speed}, ${task.density}`,
    );
  }
  return margin(task) / (task.density * task.speed * task.speed / 2);
}

/**
 * Speed at which the cavitation number has fallen to a value.
 *
 * @param task as for {@link cavitationNumber}, without the speed
 * @param number that the wing's lowest pressure calls for, 1; 1 for a smooth section well inside its range
 * @returns m/s
 * @throws RangeError when the number or the density is not above zero
 *
 * @example
 * ```ts
 * import { cavitationSpeed } from "lakeproof/model/cavitation.ts";
 * const speed = cavitationSpeed({ depth: 0.5, density: 1026.021, gravity: 9.80665, vapourPressure: 1670.9 }, 1);
 * if (Math.abs(speed - 14.285) > 5e-4) throw new Error(`${speed}`);
 * ```
 */
export function cavitationSpeed(task: Omit<CavitationTask, "speed">, number: number): number {
  if (!(number > 0 && task.density > 0)) {
    throw new RangeError(
      `Cannot give a speed of cavitation as number and density must be above zero: ${number}, ${task.density}`,
    );
  }
  return Math.sqrt(2 * margin({ ...task, speed: 1 }) / (task.density * number));
}
