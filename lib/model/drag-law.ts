/**
 * Drag against speed at constant lift: three terms, and what follows from them in closed form.
 *
 * @module
 */

/**
 * The constants of `D(v) = a v^2 + d + e/v^2`.
 *
 * It is what a polar `C_D = C_D0 + K (C_L - C_Lm)^2` with its minimum anywhere becomes at constant lift. Fitted to points,
 * the three are those of the law over the range of the points, not physics: `d` in particular is neither camber nor a
 * zero-lift drag.
 */
export interface DragLaw {
  /** N s2/m2: friction and form. */
  readonly a: number;
  /** N */
  readonly d: number;
  /** N m2/s2: drag due to lift, in unbounded water. */
  readonly e: number;
}

/** A polar `C_D = C_D0 + K (C_L - C_Lm)^2` on the wing's projected area. */
export interface QuadraticPolar {
  /** C_D0, the least drag coefficient, 1. */
  readonly leastDragCoefficient: number;
  /** K, 1. */
  readonly liftDragFactor: number;
  /** C_Lm, the lift coefficient of least drag coefficient, 1. */
  readonly liftCoefficientOfLeastDrag: number;
}

/** What a wing must carry, and in what. */
export interface LiftTask {
  /** N */
  readonly lift: number;
  /** kg/m3 */
  readonly density: number;
  /** m2, projected. */
  readonly area: number;
}

/**
 * The drag law of a polar at constant lift.
 *
 * Source: `a = rho S (C_D0 + K C_Lm^2)/2`, `d = -2 K C_Lm L`, `e = 2 K L^2/(rho S)`, from the polar with
 * `C_L = 2 L/(rho S v^2)`; textbook form, common practice.
 *
 * @param polar coefficients on the wing's projected area, 1
 * @param task lift in N, density in kg/m3, area in m2
 * @returns the law
 * @throws RangeError when density or area is not above zero
 *
 * @example
 * ```ts
 * import { bestLiftToDrag, dragLawOfPolar } from "lakeproof/model/drag-law.ts";
 * const polar = { leastDragCoefficient: 0.025, liftDragFactor: 1 / (Math.PI * 7.37 * 0.8), liftCoefficientOfLeastDrag: 0 };
 * const law = dragLawOfPolar(polar, { lift: 800, density: 999.1, area: 0.15 });
 * if (Math.abs(bestLiftToDrag(law, 800) - 13.6099) > 5e-5) throw new Error("textbook value");
 * ```
 */
export function dragLawOfPolar(polar: QuadraticPolar, task: LiftTask): DragLaw {
  const { leastDragCoefficient, liftDragFactor, liftCoefficientOfLeastDrag } = polar;
  const { lift, density, area } = task;
  if (!(density > 0 && area > 0)) {
    throw new RangeError(
      `Cannot make a drag law as density and area must be above zero: ${density}, ${area}`,
    );
  }
  return {
    a: density * area * (leastDragCoefficient + liftDragFactor * liftCoefficientOfLeastDrag ** 2) /
      2,
    d: -2 * liftDragFactor * liftCoefficientOfLeastDrag * lift,
    e: 2 * liftDragFactor * lift ** 2 / (density * area),
  };
}

/**
 * Drag at a speed.
 *
 * @param law the three constants
 * @param speed m/s through the water
 * @param phi free-surface factor on the last term at this speed, 1 (1 is unbounded water)
 * @returns N
 * @throws RangeError when the speed is not above zero
 *
 * @example
 * ```ts
 * import { dragForce } from "lakeproof/model/drag-law.ts";
 * const newtons = dragForce({ a: 1.5, d: 2, e: 500 }, 4);
 * if (newtons !== 57.25) throw new Error(`${newtons}`);
 * ```
 */
export function dragForce(law: DragLaw, speed: number, phi = 1): number {
  if (!(speed > 0 && speed < Infinity)) {
    throw new RangeError(`Cannot give drag as the speed must be above zero: ${speed}`);
  }
  const squared = speed * speed;
  return law.a * squared + law.d + phi * law.e / squared;
}

function requireMinimum(law: DragLaw): void {
  if (!(law.a > 0 && law.e > 0 && Number.isFinite(law.d))) {
    throw new RangeError(
      `Cannot find the least drag as a and e must be above zero: a ${law.a}, d ${law.d}, e ${law.e}`,
    );
  }
}

/**
 * Speed of least drag, hence of best lift-to-drag and of the farthest glide per metre of height: `(e/a)^(1/4)`.
 *
 * It is that of the craft whose law it is: a wing alone has another one.
 *
 * @param law the three constants, phi counted as 1
 * @returns m/s
 * @throws RangeError when a or e is not above zero, so that there is no minimum
 *
 * @example
 * ```ts
 * import { leastDragSpeed } from "lakeproof/model/drag-law.ts";
 * const speed = leastDragSpeed({ a: 0.6, d: 10, e: 2000 });
 * if (Math.abs(speed - 7.598357) > 5e-7) throw new Error(`${speed}`);
 * ```
 */
export function leastDragSpeed(law: DragLaw): number {
  requireMinimum(law);
  return Math.sqrt(Math.sqrt(law.e / law.a));
}

/**
 * Least drag `d + 2 sqrt(a e)`.
 *
 * @param law the three constants, phi counted as 1
 * @returns N
 * @throws RangeError when a or e is not above zero, so that there is no minimum
 *
 * @example
 * ```ts
 * import { leastDrag } from "lakeproof/model/drag-law.ts";
 * const newtons = leastDrag({ a: 0.6, d: 10, e: 2000 });
 * if (Math.abs(newtons - 79.282032) > 5e-7) throw new Error(`${newtons}`);
 * ```
 */
export function leastDrag(law: DragLaw): number {
  requireMinimum(law);
  return law.d + 2 * Math.sqrt(law.a * law.e);
}

/**
 * Best lift-to-drag ratio `L/(d + 2 sqrt(a e))` of the craft whose law it is.
 *
 * @param law the three constants, phi counted as 1
 * @param lift N
 * @returns 1
 * @throws RangeError when there is no minimum, or the least drag is not above zero
 *
 * @example
 * ```ts
 * import { bestLiftToDrag } from "lakeproof/model/drag-law.ts";
 * const ratio = bestLiftToDrag({ a: 1.55, d: 4, e: 512 }, 804);
 * if (Math.abs(ratio - 13.32) > 0.005) throw new Error(`${ratio}`);
 * ```
 */
export function bestLiftToDrag(law: DragLaw, lift: number): number {
  const drag = leastDrag(law);
  if (!(drag > 0)) {
    throw new RangeError(
      `Cannot give the best lift-to-drag as the least drag must be above zero: ${drag} N`,
    );
  }
  return lift / drag;
}

/**
 * Speed of least power, hence of the longest time aloft: the root of `3 a v^4 + d v^2 - e = 0`.
 *
 * Without `d` it is the least-drag speed divided by 3^(1/4).
 *
 * @param law the three constants, phi counted as 1
 * @returns m/s
 * @throws RangeError when a or e is not above zero, so that there is no minimum
 *
 * @example
 * ```ts
 * import { leastPowerSpeed } from "lakeproof/model/drag-law.ts";
 * const speed = leastPowerSpeed({ a: 0.6, d: 10, e: 2000 });
 * if (Math.abs(speed - 5.538149) > 5e-7) throw new Error(`${speed}`);
 * ```
 */
export function leastPowerSpeed(law: DragLaw): number {
  requireMinimum(law);
  const root = Math.sqrt(law.d * law.d + 12 * law.a * law.e);
  // The form that does not subtract nearly equal numbers.
  const squared = law.d > 0 ? 2 * law.e / (law.d + root) : (root - law.d) / (6 * law.a);
  return Math.sqrt(squared);
}
