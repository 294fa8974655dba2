/**
 * A current from passes up and down it at equal speed through the water.
 *
 * @module
 */
import type { Result } from "../base/quantity.ts";
import { meanOf } from "../infer/sample.ts";
import { fisherFUpperTail } from "../numeric/distributions.ts";

/** One pass behind the boat. */
export interface Pass {
  /** Passes of one group ran at one speed through the water, whatever it was. */
  readonly group: string;
  /** 1 with the current, -1 against it. */
  readonly sign: 1 | -1;
  /** On any scale that grows with time. */
  readonly time: number;
  /** m/s over ground. */
  readonly speed: number;
}

/** A current that changes evenly: `value + slope (time - centre)`, whose two numbers are independent. */
export interface CurrentByPasses {
  /** m/s at the centre. */
  readonly value: number;
  readonly standardUncertainty: number;
  readonly centre: number;
  /** m/s a unit of time; 0 where there are too few passes to tell. */
  readonly slope: number;
  readonly slopeUncertainty: number;
  readonly degreesOfFreedom: number;
  /** Passes in groups that ran both ways. */
  readonly passes: number;
  /** m/s, scatter of a pass. */
  readonly standardDeviation: number;
  /** Of no current at all, by these passes. */
  readonly pValue: number;
}

/**
 * Current and its even change over time by least squares.
 *
 * Each group has a speed through the water of its own, which nobody needs to know; ground speed is that plus the current with
 * its sign. Passes in the order A B B A within a group leave an even tide out of its mean by themselves. If the driver held the
 * speed over **ground**, both ways read alike and this finds no current whatever there is: the caller must know or look.
 * Never from the drag: near its least it hardly changes with speed.
 *
 * Source: two-column least squares with group means taken out (Frisch and Waugh, Econometrica 1 (1933) 387, from memory).
 *
 * @param passes in any order
 * @returns the current, or why there is none
 * @throws RangeError when a number is not finite
 *
 * @example 0.1 m/s, by two speeds both ways
 * ```ts
 * import { currentFromPasses } from "lakeproof/fit/current-from-passes.ts";
 * const found = currentFromPasses([
 *   { group: "4", sign: 1, time: 0, speed: 4.12 }, { group: "4", sign: -1, time: 1, speed: 3.9 },
 *   { group: "5", sign: -1, time: 2, speed: 4.88 }, { group: "5", sign: 1, time: 3, speed: 5.1 },
 * ]);
 * if (!found.ok || Math.abs(found.value - 0.11) > 1e-9) throw new Error();
 * ```
 */
export function currentFromPasses(passes: readonly Pass[]): Result<CurrentByPasses> {
  if (!passes.every((one) => Number.isFinite(one.speed) && Number.isFinite(one.time))) {
    throw new RangeError("Cannot find a current as times and speeds must be finite numbers");
  }
  const groups = Map.groupBy(passes, (one) => one.group);
  const bothWays = [...groups.values()].filter((group) =>
    new Set(group.map((one) => one.sign)).size === 2
  );
  const used = bothWays.flat();
  const free = used.length - bothWays.length - 1;
  if (used.length === 0) return { ok: false, reason: "no speed was towed both ways" };
  if (free < 1) return { ok: false, reason: "one speed towed both ways once tells no scatter" };
  const within = (of: (one: Pass) => number) =>
    bothWays.flatMap((group) => {
      const mean = meanOf(group.map(of));
      return group.map((one) => of(one) - mean);
    });
  const dot = (a: readonly number[], b: readonly number[]) =>
    a.reduce((sum, value, i) => sum + value * b[i]!, 0);
  const speeds = within((one) => one.speed);
  const level = within((one) => one.sign);
  const square = dot(level, level);
  // About this time level and slope are independent.
  const centre = dot(level, within((one) => one.sign * one.time)) / square;
  const tide = within((one) => one.sign * (one.time - centre));
  const value = dot(level, speeds) / square;
  const spread = dot(tide, tide);
  const times = used.map((one) => one.time);
  const scale = (Math.max(...times) - Math.min(...times)) ** 2 * square;
  const sloped = free >= 2 && spread > 1e-6 * scale;
  const slope = sloped ? dot(tide, speeds) / spread : 0;
  const degreesOfFreedom = sloped ? free - 1 : free;
  const rest = speeds.reduce(
    (sum, one, i) => sum + (one - value * level[i]! - slope * tide[i]!) ** 2,
    0,
  );
  const variance = rest / degreesOfFreedom;
  const explained = value ** 2 * square + slope ** 2 * spread;
  const numerator = sloped ? 2 : 1;
  return {
    ok: true,
    value,
    standardUncertainty: Math.sqrt(variance / square),
    centre,
    slope,
    slopeUncertainty: sloped ? Math.sqrt(variance / spread) : 0,
    degreesOfFreedom,
    passes: used.length,
    standardDeviation: Math.sqrt(variance),
    pValue: !(variance > 0) ? 0 : fisherFUpperTail(explained / numerator / variance, {
      numerator,
      denominator: degreesOfFreedom,
    }),
  };
}
