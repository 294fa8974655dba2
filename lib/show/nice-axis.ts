/**
 * Ticks of an axis at round numbers.
 *
 * @module
 */

/** An axis that begins and ends at a tick. */
export interface NiceAxis {
  readonly from: number;
  readonly to: number;
  readonly ticks: readonly number[];
  /** After the point, the same for all ticks. */
  readonly decimals: number;
}

/**
 * The axis about a range with steps of 1, 2 or 5 times a power of ten.
 *
 * @param from least value drawn
 * @param to greatest value drawn, above `from`
 * @param most the greatest number of steps
 * @returns ends at or just outside the range, and the ticks
 * @throws RangeError when the range is empty or not finite
 *
 * @example
 * ```ts
 * import { niceAxis } from "lakeproof/show/nice-axis.ts";
 * const { ticks } = niceAxis(0, 87, 6);
 * if (ticks.join() !== "0,20,40,60,80,100") throw new Error(ticks.join());
 * ```
 */
export function niceAxis(from: number, to: number, most: number): NiceAxis {
  if (!(to > from && Number.isFinite(to - from))) {
    throw new RangeError(`Cannot draw an axis as it must go upwards: ${from} to ${to}`);
  }
  let power = Math.floor(Math.log10((to - from) / most));
  for (;; power++) {
    for (const lead of [1, 2, 5]) {
      // Powers of ten below one are divided by, so that 0.3 is 3/10 and not 3 times 0.1.
      const at = (n: number) => power < 0 ? n * lead / 10 ** -power : n * lead * 10 ** power;
      const first = Math.floor(from / at(1) + 1e-9);
      const last = Math.ceil(to / at(1) - 1e-9);
      if (last - first > most) continue;
      const ticks = Array.from({ length: last - first + 1 }, (_, i) => at(first + i));
      return { from: at(first), to: at(last), ticks, decimals: Math.max(0, -power) };
    }
  }
}
