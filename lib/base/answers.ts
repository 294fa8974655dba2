/**
 * What an answer looks like: the contract that other programs read as JSON.
 *
 * SI units throughout. What can't be told is `null`, with a finding that says why.
 *
 * @module
 */
import type { AnswerBase } from "./answer-base.ts";
import type { Quantity } from "./quantity.ts";

/** The common launch that all designs are compared from. */
export interface CommonLaunch {
  /** m/s */
  readonly speed: number;
  /** m of height used. */
  readonly drop: number;
  /** kg */
  readonly mass: number;
}

/** One design's own result. */
export interface DesignGlide {
  readonly design: string;
  /** Mean lift-to-drag of the whole craft over the common launch to its own end. */
  readonly glideRatio: Quantity | null;
  /** m from the common launch. */
  readonly distance: Quantity | null;
  /** m/s */
  readonly endSpeed: Quantity | null;
  readonly runsUsed: number;
}

/** `refused`: the data can't carry a comparison, whatever the numbers say. */
export type Verdict = "candidate-better" | "baseline-better" | "cannot-tell-yet" | "refused";

/** How the raw ratio of distances splits: raw = launch effect x design effect, design effect = drag effect x energy effect. */
export interface RawRatio {
  readonly ratio: number;
  readonly launchEffect: number;
  readonly designEffect: number;
  readonly dragEffect: number;
  readonly energyEffect: number;
}

/** Where the variance of the log ratio comes from, as shares that add to 1. */
export interface VarianceShares {
  readonly baselineScatter: number;
  readonly candidateScatter: number;
  readonly launchDifference: number;
  readonly commonErrors: number;
}

/** How many more runs a side would settle the smallest ratio of interest. */
export interface MoreRuns {
  /** More runs a side at the launches as they are; 0 when there are enough; `null` when no number would do. */
  readonly now: number | null;
  /** More runs a side with both designs launched alike. */
  readonly matchedLaunches: number | null;
  /** True when no number of runs at these launches will tell. */
  readonly never: boolean;
}

/** One candidate against the baseline. */
export interface GlideComparison {
  readonly baseline: string;
  readonly candidate: string;
  readonly verdict: Verdict;
  /** Candidate's distance over baseline's from the same launch; `null` when refused. */
  readonly ratio: Quantity | null;
  readonly probabilityCandidateBetter: number | null;
  readonly raw: RawRatio | null;
  /** Whether each design glides to its own end speed or both to a common one. */
  readonly end: "own" | "common";
  readonly varianceShares: VarianceShares | null;
  /** True when leaving out a single run changes the verdict. */
  readonly fragile: boolean;
  /** The runs whose absence would change the verdict. */
  readonly restsOn: readonly string[];
  readonly moreRuns: MoreRuns | null;
  readonly family: "pointwise" | "joint";
}

/** What became of one run. */
export interface RunUse {
  readonly run: string;
  readonly design: string;
  readonly used: boolean;
  /** Why it was left out or flagged; `null` when there is nothing to say. */
  readonly reason: string | null;
  /** Energy-corrected glide ratio of this run. */
  readonly glideRatio: Quantity | null;
}

/** The answer to "which design glides better?". */
export interface GlideAnswer extends AnswerBase {
  readonly question: "glide";
  readonly launch: CommonLaunch | null;
  readonly designs: readonly DesignGlide[];
  readonly comparisons: readonly GlideComparison[];
  readonly runs: readonly RunUse[];
}

export type * from "./takeoff-answer.ts";
export type * from "./tow-answer.ts";
export * from "./answer-base.ts";
