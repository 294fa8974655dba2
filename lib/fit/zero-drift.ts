/**
 * An instrument's zero that wandered between two looks at it.
 *
 * @module
 */

/** What it read with nothing applied, before and after. */
export interface ZeroReadings {
  readonly before: number;
  readonly after: number;
}

/** The zero over the time between. */
export interface ZeroDrift {
  /** After less before. */
  readonly drift: number;
  /** Of the zero at any time between, common to all readings in it. */
  readonly standardUncertainty: number;
  /** The zero at a share of the time between, 0 (before) to 1 (after). */
  readonly zeroAt: (share: number) => number;
}

/**
 * A zero taken as wandering evenly from one reading to the other.
 *
 * It may have done so at any time instead, hence a rectangular doubt as wide as the drift: drift/sqrt(12). A drift of
 * nothing leaves no doubt of this kind; the zero's own reading error comes on top.
 *
 * Source: JCGM 100:2008 (GUM), 4.3.7, for the rectangular doubt; even drift: common practice, no source.
 *
 * @param readings with nothing applied, in the instrument's unit
 * @returns drift, its standard uncertainty, and the zero over time, in the same unit
 * @throws RangeError when a reading is not finite, or later when a share is outside 0 to 1
 *
 * @example
 * ```ts
 * import { zeroDrift } from "lakeproof/fit/zero-drift.ts";
 * const zero = zeroDrift({ before: 0.2, after: 0.8 });
 * if (Math.abs(zero.zeroAt(0.5) - 0.5) > 1e-12) throw new Error("half way");
 * if (Math.abs(zero.standardUncertainty - 0.1732) > 5e-5) throw new Error("rectangular");
 * ```
 */
export function zeroDrift({ before, after }: ZeroReadings): ZeroDrift {
  const drift = after - before;
  if (!Number.isFinite(drift)) {
    throw new RangeError(
      `Cannot follow a zero as both readings must be finite: ${before}, ${after}`,
    );
  }
  return {
    drift,
    standardUncertainty: Math.abs(drift) / Math.sqrt(12),
    zeroAt(share) {
      if (!(share >= 0 && share <= 1)) {
        throw new RangeError(`Cannot give a zero as the share of time must be 0 to 1: ${share}`);
      }
      return before + share * drift;
    },
  };
}
