/**
 * Further views of a towed design, part of the answer as other programs read it: lift against pitch, the robust view, uncertainty by
 * two ways.
 *
 * @module
 */
import type { Quantity } from "./quantity.ts";

/** A reading with a pitch as a point of the lift curve. */
export interface TowLiftPoint {
  readonly point: string;
  readonly row: number;
  /** rad, bow up. */
  readonly pitch: number;
  /** Standard, of this reading alone. */
  readonly pitchUncertainty: number;
  readonly liftCoefficient: number;
  readonly liftCoefficientUncertainty: number;
}

/** Lift coefficient of the whole craft, on the wing's area, against pitch. */
export interface TowLiftCurve {
  /** 1/rad */
  readonly slope: Quantity;
  /** The same, 1/deg. */
  readonly slopePerDegree: Quantity;
  /** rad on the scale of the pitches read, where the line carried on meets no lift: camber and how the wing sits, not one of them. */
  readonly zeroLiftPitch: Quantity;
  /** 1/rad: what the planform lets expect, by a textbook formula at the speeds and depth towed. */
  readonly expectedSlope: Quantity;
  /** rad: least and greatest pitch. */
  readonly from: number;
  readonly to: number;
  /** Rows of the greatest pitch where these lift less than the line of the others says; `null` where they don't. */
  readonly fallsOff:
    | { readonly rows: readonly number[]; readonly deficit: number; readonly pValue: number }
    | null;
  readonly points: readonly TowLiftPoint[];
}

/** A reading that the robust view counts for little. */
export interface TowWeightedDown {
  readonly point: string;
  readonly row: number;
  /** Factor on its weight, under 0.5; a reading on the law has 1.25. */
  readonly weight: number;
}

/** The answer where readings far off the law count for little, beside the one where all count as stated. */
export interface TowRobust {
  readonly bestLiftToDrag: Quantity | null;
  readonly speedOfBestLiftToDrag: Quantity | null;
  readonly weightedDown: readonly TowWeightedDown[];
}

/** One quantity by both ways of carrying uncertainty. Neither holds what single sweeps had of their own, which nobody can draw. */
export interface TowBothWays {
  readonly firstOrder: Quantity;
  readonly drawn: Quantity;
  /** Width of the drawn interval over the first-order one, on the logarithm. */
  readonly widthRatio: number;
  readonly agree: boolean;
}

/** Uncertainty by first order (GUM) and by drawing every input (JCGM 101), side by side. */
export interface TowDrawn {
  readonly draws: number;
  /** Share by which widths may differ and still agree. */
  readonly tolerance: number;
  readonly bestLiftToDrag: TowBothWays;
  readonly speedOfBestLiftToDrag: TowBothWays;
}
