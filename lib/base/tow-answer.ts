/**
 * The answer to "how much drag does each design have, at which speed?", as other programs read it.
 *
 * Part of the contract of `answers.ts`: SI units throughout, what can't be told is `null`.
 *
 * @module
 */
import type { AnswerBase } from "./answer-base.ts";
import type { Quantity } from "./quantity.ts";
import type { TowAgreement, TowFromTraces } from "./tow-traces.ts";
import type { TowDrawn, TowLiftCurve, TowRobust } from "./tow-views.ts";

/** A fitted law `D(v) = a v^2 + d + e phi(v)/v^2` of the whole craft: constants of the law over the speeds towed, not physics. */
export interface TowLaw {
  /** N s2/m2 */
  readonly a: number;
  /** N; neither camber nor a zero-lift drag. */
  readonly d: number;
  /** N m2/s2 */
  readonly e: number;
  /** Lift drag factor on the wing's area, 1; `null` where the depth is not known, as the surface then stands in it. */
  readonly K: number | null;
  /** Of a, d, e in this order, shared errors included. */
  readonly covariance: readonly (readonly number[])[];
  /** m/s: slowest and fastest reading; outside, the law leans on the planform. */
  readonly from: number;
  readonly to: number;
  /** N: lift that it holds at, weight less buoyancy at the mass of reference. */
  readonly lift: number;
}

/** Drag at one of the speeds towed. */
export interface SpeedDrag {
  /** m/s, mean of the readings. */
  readonly speed: number;
  /** N at the law's lift; as towed, with the line's share of the lift, where there is no law. */
  readonly drag: Quantity;
}

/** One source's share of a variance. */
export interface UncertaintyShare {
  readonly source: string;
  /** 0 to 1; the shares of a design add to 1. */
  readonly share: number;
}

/** What a reading was made of, where it is the mean of a logger's samples. */
export interface TowWindow {
  /** Rows of the point. */
  readonly samples: number;
  /** Of them, in the steady part that the means are of. */
  readonly used: number;
  /** s, of all whole samples. */
  readonly given: number;
  /** s, of the steady part. */
  readonly duration: number;
  /** m/s about the straight line through the speeds. */
  readonly speedScatter: number;
  /** s */
  readonly speedCorrelationTime: number;
  /** m/s2 */
  readonly speedChange: number;
  /** Standard, m/s2. */
  readonly speedChangeUncertainty: number;
  /** N about the straight line through the pulls. */
  readonly tensionScatter: number;
  /** s */
  readonly tensionCorrelationTime: number;
}

/** What a session tells of the current in its speeds over ground. */
export interface TowCurrent {
  readonly session: string;
  /** `null` where rows have no block. */
  readonly block: string | null;
  /** Direction whose passes a current above zero carries along; `null` where rows have none. */
  readonly towards: string | null;
  /** m/s in the middle of the passes; `null` where it is not known. */
  readonly speed: Quantity | null;
  /** m/s, by how much it changed from the first row of the block to the last; `null` where that is not known. */
  readonly change: Quantity | null;
  /** What tells it: passes both ways at equal speed through the water, a drifting float, or both. */
  readonly origin: "passes" | "float" | "both" | null;
  /** Passes at speeds that were towed both ways. */
  readonly passes: number;
}

/** One reading as a point to draw. */
export interface TowPointUse {
  readonly point: string;
  readonly row: number;
  readonly used: boolean;
  /** Why it was left out; `null` when it was used. */
  readonly reason: string | null;
  /** m/s */
  readonly speed: number | null;
  /** N, level part of the pull. */
  readonly drag: number | null;
  /** N, carried by the wing. */
  readonly lift: number | null;
  readonly liftCoefficient: number | null;
  readonly dragCoefficient: number | null;
  /** Of lift and drag coefficient, independent errors only; they share a speed, so the covariance is never zero. */
  readonly coefficientCovariance: readonly (readonly number[])[] | null;
  /** N off the law. */
  readonly residual: number | null;
  /** `null` for a row that is a mean already. */
  readonly window: TowWindow | null;
}

/** One part of a drag. */
export interface DragPart {
  /** For instance `struts`, `spray`, `struts and spray` (a tare holds both), `junction`, `rider in the air`, `wing`. */
  readonly part: string;
  /** `rest`: the whole less all others, hence with fittings that nobody stated; `stated`: from a size in designs.csv. */
  readonly how: "tare" | "formula" | "stated" | "rest";
  /** The readings, or the formula with its source and how far it is trusted. */
  readonly source: string;
  /** N */
  readonly drag: Quantity;
}

/** What formulas let expect of the wing, N, and what was measured beyond it. */
export interface WingExpectation {
  readonly frictionAndForm: Quantity;
  readonly viscousLift: Quantity;
  readonly inducedAndWave: Quantity;
  /** Measured less expected; may be below zero. */
  readonly excess: Quantity;
}

/** Drag by its parts at one speed; the parts add up to the total. */
export interface SpeedParts {
  /** Ends of the speeds towed, and the speed of the craft's best lift-to-drag where that was towed. */
  readonly at: "slowest" | "best" | "fastest";
  /** m/s */
  readonly speed: number;
  /** N of the whole craft at the law's lift. */
  readonly total: Quantity;
  /** What is taken off first, the rest last. */
  readonly parts: readonly DragPart[];
  /** `null` where the rest is not the wing alone. */
  readonly expectedOfWing: WingExpectation | null;
}

/** Lift over the drag of the wing alone, which is never that of a craft. */
export interface SpeedLiftToDrag {
  /** m/s */
  readonly speed: number;
  readonly liftToDrag: Quantity;
}

/** One design's drag in one session. */
export interface DesignTow {
  readonly design: string;
  /** The session it was towed in, or glided in where it was not towed. */
  readonly session: string;
  readonly law: TowLaw | null;
  /** Of the whole craft; `atLeast` where its speed was not towed. */
  readonly bestLiftToDrag: Quantity | null;
  /** m/s; `atLeast` or `atMost` where it was not towed. */
  readonly speedOfBestLiftToDrag: Quantity | null;
  /** m/s, likewise; `null` too where nobody can tell on which side it lies. */
  readonly leastPowerSpeed: Quantity | null;
  readonly dragAt: readonly SpeedDrag[];
  /** Empty without a law. */
  readonly parts: readonly SpeedParts[];
  /** Of the wing alone, at the same speeds; empty where the wing can't be told apart. */
  readonly wingLiftToDrag: readonly SpeedLiftToDrag[];
  readonly points: readonly TowPointUse[];
  /** Of the variance of the best lift-to-drag, or of the drag in the middle of the range where that is one-sided. */
  readonly uncertaintyShares: readonly UncertaintyShare[];
  /** `null` where too few pitches were measured for one. */
  readonly liftCurve: TowLiftCurve | null;
  /** `null` where no speed trace of its glides carries a law. */
  readonly fromTraces: TowFromTraces | null;
  /** `null` where not asked for, or where there is no law. */
  readonly robust: TowRobust | null;
  /** `null` where not asked for, or where the best speed was not towed. */
  readonly byDrawing: TowDrawn | null;
}

/** Whether two drags differ anywhere: F test at both ends and the middle of the common range. */
export interface TowJointTest {
  readonly f: number;
  readonly numerator: number;
  readonly degreesOfFreedom: number;
  readonly pValue: number;
}

/** One candidate against the baseline. */
export interface TowComparison {
  readonly baseline: string;
  readonly candidate: string;
  /** The session each was towed in. */
  readonly baselineSession: string;
  readonly candidateSession: string;
  /** Candidate over baseline; `null` where a best speed was not towed. */
  readonly bestLiftToDragRatio: Quantity | null;
  /** m/s: speeds at which the candidate drags less, judged together at 95 %. */
  readonly candidateLessDrag: readonly (readonly [from: number, to: number])[];
  readonly candidateMoreDrag: readonly (readonly [from: number, to: number])[];
  readonly jointTest: TowJointTest | null;
  /** `joint`: with several comparisons, all their ratios and stretches hold at once in 95 of 100 answers. */
  readonly family: "pointwise" | "joint";
}

/** The whole answer. */
export interface TowAnswer extends AnswerBase {
  readonly question: "tow";
  readonly designs: readonly DesignTow[];
  readonly comparisons: readonly TowComparison[];
  /** One a block whose speeds are over ground. */
  readonly current: readonly TowCurrent[];
  /** Tow and glides of one design side by side, where both carry a law. */
  readonly agreement: readonly TowAgreement[];
}
