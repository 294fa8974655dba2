/**
 * The steady part of a window behind the boat.
 *
 * @module
 */
import { type Sample, windowMean } from "./window-mean.ts";

/** What counts as steady. */
export interface Steadiness {
  /** Largest slope, unit of the signal a second. */
  readonly slope: number;
  /** Shortest part, s. */
  readonly duration: number;
}

/** A part of a window: places of its first sample and of the one after its last. */
export interface WindowPart {
  readonly from: number;
  readonly to: number;
}

/** Places at either end that are tried. */
const CUTS = 16;

/**
 * The longest part of a window that does not drift.
 *
 * The whole window where its slope is small. Else the longest stretch with a small slope that is long enough,
 * cut from the start, the end or both; where there is none, the whole window again, to be judged as it is.
 *
 * @param samples three or more, in the order of time
 * @param steady what counts as steady
 * @returns the part
 * @throws RangeError from `windowMean`
 *
 * @example A boat that speeds up for four seconds and then holds its speed
 * ```ts
 * import { steadyPart } from "lakeproof/infer/steady-part.ts";
 * const speed = (t: number) => 5 - 0.1 * Math.max(0, 4 - t) + 0.002 * Math.sin(9 * t);
 * const samples = Array.from({ length: 160 }, (_, i) => ({ time: i / 10, value: speed(i / 10) }));
 * const { from, to } = steadyPart(samples, { slope: 0.01, duration: 5 });
 * if (!(from >= 20 && from <= 50 && to === 160)) throw new Error(`${from} to ${to}`);
 * ```
 */
export function steadyPart(samples: readonly Sample[], steady: Steadiness): WindowPart {
  const whole = { from: 0, to: samples.length };
  if (Math.abs(windowMean(samples).slope) <= steady.slope) return whole;
  const place = (cut: number) => Math.round(samples.length * cut / CUTS);
  for (let length = CUTS - 1; length > 0; length--) {
    const fits = [];
    for (let cut = 0; cut + length <= CUTS; cut++) {
      const part = { from: place(cut), to: place(cut + length) };
      if (part.to - part.from < 3) continue;
      const found = windowMean(samples.slice(part.from, part.to));
      if (found.duration < steady.duration) continue;
      if (Math.abs(found.slope) <= steady.slope) fits.push({ part, slope: Math.abs(found.slope) });
    }
    if (fits.length > 0) return fits.reduce((a, b) => b.slope < a.slope ? b : a).part;
  }
  return whole;
}
