/**
 * What a tow answer says of the glides of a design: the law from their speed traces, and whether the tow agrees.
 *
 * Part of the contract of `answers.ts`: SI units throughout, what can't be told is `null`.
 *
 * @module
 */
import type { Quantity } from "./quantity.ts";
import type { SpeedDrag, TowLaw, UncertaintyShare } from "./tow-answer.ts";

/** One trace, used or not. */
export interface TraceUse {
  readonly run: string;
  readonly file: string;
  readonly used: boolean;
  /** Why it was left out; `null` when it was used. */
  readonly reason: string | null;
  readonly samples: number;
  /** m/s at the first sample, as fitted. */
  readonly launchSpeed: number | null;
  /** N of drag that is this run's alone: its sink's doubt, trim, ripples. */
  readonly offset: number | null;
}

/** The law of one design from the speeds of its glides. */
export interface TowFromTraces {
  /** The session whose glides they are. */
  readonly session: string;
  /** As that of a tow, over the speeds glided through. */
  readonly law: TowLaw;
  /** Of the whole craft; `atLeast` where its speed was not glided through. */
  readonly bestLiftToDrag: Quantity | null;
  readonly speedOfBestLiftToDrag: Quantity | null;
  /** At the ends and the middle of the speeds. */
  readonly dragAt: readonly SpeedDrag[];
  readonly traces: readonly TraceUse[];
  /** m/s, of one sample. */
  readonly noise: number;
  /** s in which the correlation of the noise falls to 1/e; 0 where samples are independent. */
  readonly noiseMemory: number;
  readonly uncertaintyShares: readonly UncertaintyShare[];
}

/** Tow and glides of one design, asked the same. */
export interface TowAgreement {
  readonly design: string;
  /** The session of the tow. */
  readonly session: string;
  /** What the glides were told by: speed traces, or launch, end, height and distance alone. */
  readonly kind: "traces" | "glides";
  /** The session of the glides. */
  readonly glideSession: string;
  readonly quantity: "bestLiftToDrag" | "drag";
  /** m/s for a drag. */
  readonly speed: number | null;
  readonly tow: Quantity;
  /** What the glides say, of either kind, at the tow's lift and depth. */
  readonly traces: Quantity;
  /** Difference of the logarithms, tow less glides, over the 95 % uncertainty of that difference; agrees up to 1. */
  readonly en: number;
  /** Both together; `null` where they do not agree in this or another quantity. */
  readonly combined: Quantity | null;
}
