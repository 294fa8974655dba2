/**
 * Towed points in flat arrays, each moved along the law as far as its own doubt about its speed allows.
 *
 * @module
 */
import type { SymmetricThree, Three } from "./symmetric-three.ts";
import { type TowData, towedDrag, towedLift } from "./tow-data.ts";

/** m/s over which the slope of phi is taken. */
const PHI_STEP = 0.02;

/** What a least-squares step needs of the points where they stand. */
export interface NormalEquations {
  readonly normal: SymmetricThree;
  readonly right: Three;
}

/**
 * Points of one design on their way to a law of three terms, `(v/v0)^2`, `l` and `phi(v) (l v0/v)^2` with `l` the share of the
 * lift that the line left to the wing.
 *
 * The arrays are changed in place at each step: a simulation asks for millions of them.
 *
 * Source: York et al., American Journal of Physics 72 (2004) 367, adjusted points, on a curve instead of a line.
 */
export class AdjustedPoints {
  /** m/s: where on the law each point belongs. */
  readonly speeds: Float64Array;
  /** N: drag less what the law changes between the speed read and the adjusted one. */
  readonly observed: Float64Array;
  /** One over the stated variance across the law, 1/N2. */
  readonly weights: Float64Array;
  readonly #data: TowData;
  readonly #referenceSpeed: number;
  readonly #read: Float64Array;
  readonly #drag: Float64Array;
  readonly #lift: Float64Array;
  readonly #cosine: Float64Array;
  readonly #speedVariance: Float64Array;
  /** First and third term, and their slopes, at the adjusted speeds. */
  readonly #first: Float64Array;
  readonly #third: Float64Array;
  readonly #firstSlope: Float64Array;
  readonly #thirdSlope: Float64Array;

  /**
   * Starts every point at the speed read, all weighing the same.
   *
   * @param data readings and craft
   * @param referenceSpeed v0 in m/s
   */
  constructor(data: TowData, referenceSpeed: number) {
    const { readings, craft } = data;
    const array = (value: (i: number) => number) => Float64Array.from(readings, (_, i) => value(i));
    this.#data = data;
    this.#referenceSpeed = referenceSpeed;
    this.#read = array((i) => readings[i]!.speed);
    this.#drag = array((i) => towedDrag(readings[i]!));
    this.#lift = array((i) => towedLift(readings[i]!) / craft.lift);
    this.#cosine = array((i) => Math.cos(readings[i]!.angle));
    this.#speedVariance = array((i) => {
      const { speed, uncertainty: { speed: u } } = readings[i]!;
      return Math.hypot(u.fixed, u.share * speed) ** 2;
    });
    this.speeds = this.#read.slice();
    this.observed = this.#drag.slice();
    const typical = this.#drag.reduce((sum, one) => sum + Math.abs(one), 0) / readings.length;
    // To begin with; replaced as soon as there is a law.
    this.weights = array(() => (0.015 * typical) ** -2);
    this.#first = array(() => 0);
    this.#third = array(() => 0);
    this.#firstSlope = array(() => 0);
    this.#thirdSlope = array(() => 0);
    for (let i = 0; i < readings.length; i++) this.#settle(i, this.speeds[i]!);
  }

  /** Terms and slopes of one point at a speed. */
  #settle(i: number, speed: number): void {
    const { phi } = this.#data.craft;
    const v0 = this.#referenceSpeed;
    const here = phi(speed);
    const phiSlope = (phi(speed + PHI_STEP) - phi(speed - PHI_STEP)) / (2 * PHI_STEP);
    const ray = this.#lift[i]! * v0 / speed;
    this.speeds[i] = speed;
    this.#first[i] = speed / v0 * (speed / v0);
    this.#third[i] = here * (ray * ray);
    this.#firstSlope[i] = 2 * speed / (v0 * v0);
    this.#thirdSlope[i] = ray * ray * (phiSlope - 2 * here / speed);
  }

  /** The law's value at one point. */
  #valueAt(i: number, p: Three): number {
    return this.#first[i]! * p[0] + this.#lift[i]! * p[1] + this.#third[i]! * p[2];
  }

  /** The law's slope at one point, N per m/s. */
  #slopeAt(i: number, p: Three): number {
    return this.#firstSlope[i]! * p[0] + this.#thirdSlope[i]! * p[2];
  }

  /** Moves one point; false where it runs off. */
  #move(i: number, p: Three): boolean {
    const { angle, inertia, uncertainty: u } = this.#data.readings[i]!;
    const fitted = this.#valueAt(i, p);
    const steep = this.#slopeAt(i, p);
    const pulled = (fitted + inertia) / this.#cosine[i]!;
    const tensionVariance = u.tension.fixed ** 2 + (u.tension.share * pulled) ** 2;
    const dragVariance = this.#cosine[i]! ** 2 * tensionVariance +
      (pulled * Math.sin(angle) * u.angle) ** 2;
    const speedVariance = this.#speedVariance[i]!;
    const gap = this.#drag[i]! - fitted - steep * (this.#read[i]! - this.speeds[i]!);
    const speed = this.#read[i]! +
      speedVariance * steep * gap / (dragVariance + steep * steep * speedVariance);
    if (!(speed > PHI_STEP)) return false;
    this.#settle(i, speed);
    const steepThere = this.#slopeAt(i, p);
    this.weights[i] = 1 / (dragVariance + steepThere * steepThere * speedVariance);
    this.observed[i] = this.#drag[i]! - steepThere * (this.#read[i]! - speed);
    return this.weights[i]! > 0 && Number.isFinite(this.observed[i]!);
  }

  /**
   * Moves every point along a law.
   *
   * @param parameters of the law, N
   * @returns false where a point runs off to where no speed is
   */
  adjust(parameters: Three): boolean {
    for (let i = 0; i < this.speeds.length; i++) if (!this.#move(i, parameters)) return false;
    return true;
  }

  /**
   * Weighted sums of products of the terms, and of the terms with what was observed.
   *
   * @param factors on the weights, one a point; none where left out
   */
  equations(factors?: readonly number[]): NormalEquations {
    let n00 = 0, n01 = 0, n02 = 0, n11 = 0, n12 = 0, n22 = 0, r0 = 0, r1 = 0, r2 = 0;
    for (let i = 0; i < this.speeds.length; i++) {
      const weight = this.weights[i]! * (factors?.[i] ?? 1), y = this.observed[i]!;
      const x0 = this.#first[i]!, x1 = this.#lift[i]!, x2 = this.#third[i]!;
      n00 += weight * x0 * x0;
      n01 += weight * x0 * x1;
      n02 += weight * x0 * x2;
      n11 += weight * x1 * x1;
      n12 += weight * x1 * x2;
      n22 += weight * x2 * x2;
      r0 += weight * x0 * y;
      r1 += weight * x1 * y;
      r2 += weight * x2 * y;
    }
    return {
      normal: [[n00, n01, n02], [n01, n11, n12], [n02, n12, n22]],
      right: [r0, r1, r2],
    };
  }

  /**
   * What was observed less the law.
   *
   * @param parameters of the law, N
   * @returns N, one a point
   */
  residuals(parameters: Three): number[] {
    return Array.from(this.observed, (one, i) => one - this.#valueAt(i, parameters));
  }
}
