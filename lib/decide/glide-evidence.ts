/**
 * Everything behind a glide verdict, as plain data: what figures, tables and reports are drawn from.
 *
 * @module
 */
import type { GlideAnswer } from "../base/answers.ts";
import type { Quantity } from "../base/quantity.ts";
import type { RunEnd } from "../base/session.ts";

/** One run, with what the method made of it. */
export interface RunEvidence {
  readonly session: string;
  /** Row in glides.csv; the header is 1. */
  readonly row: number;
  readonly run: string;
  readonly design: string;
  readonly block: string | null;
  /** m/s */
  readonly launchSpeed: number | null;
  /** m/s */
  readonly endSpeed: number | null;
  /** m */
  readonly drop: number | null;
  /** m */
  readonly distance: number | null;
  readonly ended: RunEnd | null;
  readonly used: boolean;
  /** Why the run was left out; `null` when it was used. */
  readonly reason: string | null;
  /** What is odd about a run that was used all the same (pumped, stands out); `null` when nothing is. */
  readonly flag: string | null;
  /** m of height spent: drop plus the height that the lost speed was worth. */
  readonly energyHeight: number | null;
  /** Distance over energy height of this run. */
  readonly glideRatio: Quantity | null;
  /** m: this run's share of its design's result, moved to the common launch (exp of the jackknife pseudo-value). */
  readonly movedDistance: number | null;
}

/** A point of a design's curve of distance against launch speed, at the common drop and mass. */
export interface CurvePoint {
  /** m/s */
  readonly launchSpeed: number;
  /** m */
  readonly distance: number;
  /** m, 95 % pointwise. */
  readonly low: number;
  /** m, 95 % pointwise. */
  readonly high: number;
}

/** A drag law `D(v) = a v^2 + d + e/v^2` in newtons; `phi` of the free surface multiplies the last term where depth is known. */
export interface DragLawValues {
  /** N s2/m2 */
  readonly a: number;
  /** N */
  readonly d: number;
  /** N m2/s2 */
  readonly e: number;
}

/** One design's fit. */
export interface DesignEvidence {
  readonly design: string;
  /** Place in designs.csv, from 1: fixes its colour and mark. */
  readonly place: number;
  /** Prior shape times the fitted level. */
  readonly law: DragLawValues;
  /** Fitted drag over predicted drag; 1 when the planform's build-up was right. */
  readonly level: number;
  readonly runsUsed: number;
  /** ln of the distance from the common launch. */
  readonly logDistance: number;
  /** Variance of it from the scatter of runs, floor applied. */
  readonly scatterVariance: number;
  /** Variance of it that the stated measurement uncertainties alone would cause. */
  readonly measurementVariance: number;
  /** Change of it for one standard uncertainty of the prior shape. */
  readonly shapeSensitivity: number;
  readonly curve: readonly CurvePoint[];
  readonly runs: readonly RunEvidence[];
}

/** The mistake this tool exists to prevent, shown beside the answer: raw distances compared as they are. */
export interface NaiveComparison {
  readonly candidate: string;
  readonly ratio: number;
  readonly low: number;
  readonly high: number;
  /** Two-sided. */
  readonly pValue: number;
}

/** An answer with everything behind it. */
export interface GlideEvidence {
  /** The contract's object; `versions` is empty here and filled where the software is known. */
  readonly answer: GlideAnswer;
  readonly designs: readonly DesignEvidence[];
  readonly naive: readonly NaiveComparison[];
  /** What was assumed, as sentences for the reader: launch, drop, mass, water, uncertainties and where each came from. */
  readonly assumptions: readonly string[];
  /** The fit reports, one text a design. */
  readonly reports: readonly string[];
}
