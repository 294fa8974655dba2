/**
 * How well two marks and a camera give a speed.
 *
 * @module
 */

/** Two marks beside the course, filmed square to it. */
export interface TimedMarks {
  /** m between the marks, along the course. */
  readonly spacing: number;
  /** m, standard uncertainty of the spacing as seen on the course (parallax and placing). */
  readonly spacingUncertainty: number;
  /** Pictures per second. */
  readonly frameRate: number;
  /** m/s */
  readonly speed: number;
}

/**
 * Standard uncertainty of a speed taken from the time between two marks on a film.
 *
 * Each passing is read to the nearest picture, so its time is uniform within half a picture either side, and the
 * difference of two has `u(t) = sqrt(2) / (rate sqrt(12))`. The spacing's own uncertainty adds in quadrature as a share.
 * The speed is the mean between the marks: that of the moment halfway.
 *
 * Source: JCGM 100:2008 (GUM), 4.3.7 (rectangular distribution) and 5.1.2 (law of propagation).
 *
 * @param marks spacing, its uncertainty, frame rate and speed
 * @returns standard uncertainty, m/s
 * @throws RangeError when spacing, frame rate or speed is not positive
 * @example
 * ```ts
 * import { timedSpeedUncertainty } from "lakeproof/model/timed-speed.ts";
 * const u = timedSpeedUncertainty({ spacing: 3, spacingUncertainty: 0.03, frameRate: 30, speed: 4 });
 * if (Math.abs(u - 0.083) > 0.001) throw new Error(String(u));
 * ```
 */
export function timedSpeedUncertainty(marks: TimedMarks): number {
  const { spacing, spacingUncertainty, frameRate, speed } = marks;
  if (!(spacing > 0 && frameRate > 0 && speed > 0)) {
    throw new RangeError(
      "Cannot time a speed as spacing, frame rate and speed must be positive: " +
        `found ${spacing} m, ${frameRate} a second, ${speed} m/s`,
    );
  }
  const timeUncertainty = Math.SQRT2 / (frameRate * Math.sqrt(12));
  return speed * Math.hypot(timeUncertainty * speed / spacing, spacingUncertainty / spacing);
}
