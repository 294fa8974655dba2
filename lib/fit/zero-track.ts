/**
 * An instrument's zero over a session in which it was looked at several times.
 *
 * @module
 */
import { meanOf } from "../infer/sample.ts";
import { type ZeroDrift, zeroDrift } from "./zero-drift.ts";

/** What an instrument showed with nothing applied. */
export interface ZeroReading {
  /** On any scale that grows with time. */
  readonly time: number;
  /** In the instrument's unit. */
  readonly value: number;
}

/** The zero from one look at it to the next. */
export interface ZeroStretch extends ZeroDrift {
  readonly from: number;
  readonly to: number;
}

/** A zero followed through a session. */
export interface ZeroTrack {
  readonly stretches: readonly ZeroStretch[];
  /** In the instrument's unit; before the first and after the last look the zero counts as standing still. */
  readonly zeroAt: (time: number) => number;
  /** Place of the stretch that a time lies in; `null` outside all of them. */
  readonly stretchAt: (time: number) => number | null;
}

/**
 * A zero taken as wandering evenly from each look at it to the next.
 *
 * Each stretch carries its own doubt (see `zeroDrift`), common to the readings in it and to no others. Looks at one time are
 * averaged. With a single look the zero counts as constant.
 *
 * Source: JCGM 100:2008 (GUM), 4.3.7, for the doubt; even drift: common practice, no source.
 *
 * @param readings one or more
 * @returns stretches in the order of time, and the zero at any time
 * @throws RangeError when there is no reading, or a number is not finite
 *
 * @example
 * ```ts
 * import { zeroTrack } from "lakeproof/fit/zero-track.ts";
 * const track = zeroTrack([{ time: 0, value: 0.2 }, { time: 10, value: 0.8 }, { time: 20, value: 0.8 }]);
 * if (Math.abs(track.zeroAt(5) - 0.5) > 1e-12) throw new Error("half way");
 * if (track.stretches[1]!.standardUncertainty !== 0) throw new Error("it stood still");
 * ```
 */
export function zeroTrack(readings: readonly ZeroReading[]): ZeroTrack {
  if (readings.length === 0 || !readings.every((one) => Number.isFinite(one.time))) {
    throw new RangeError("Cannot follow a zero as it must have been read, at finite times");
  }
  const times = [...new Set(readings.map((one) => one.time))].sort((a, b) => a - b);
  const looks = times.map((time) => ({
    time,
    value: meanOf(readings.filter((one) => one.time === time).map((one) => one.value)),
  }));
  const stretches = looks.slice(1).map((look, i): ZeroStretch => ({
    from: looks[i]!.time,
    to: look.time,
    ...zeroDrift({ before: looks[i]!.value, after: look.value }),
  }));
  const stretchAt = (time: number) => {
    const place = stretches.findIndex((one) => one.from <= time && time <= one.to);
    return place < 0 ? null : place;
  };
  return {
    stretches,
    stretchAt,
    zeroAt(time) {
      const place = stretchAt(time);
      if (place === null) return (time < times[0]! ? looks[0] : looks.at(-1))!.value;
      const { from, to, zeroAt } = stretches[place]!;
      return zeroAt((time - from) / (to - from));
    },
  };
}
