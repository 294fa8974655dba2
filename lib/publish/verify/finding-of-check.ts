/**
 * What a check of a published folder has to tell.
 *
 * @module
 */

/** What was found wanting, by what it concerns. */
export type CheckKind =
  | "checksum"
  | "run"
  | "result"
  | "prose"
  | "page"
  | "figure"
  | "table"
  | "notebook"
  | "stamp"
  | "library"
  | "file";

/** One thing that is not as a fresh run makes it. */
export interface CheckFinding {
  readonly kind: CheckKind;
  /** Path from the published folder. */
  readonly file: string;
  /** What differs, for a person. */
  readonly what: string;
}

/** How a published result compares with that of a fresh run. */
export type Sameness = "same" | "within rounding" | "different";

/** A published result beside the same one from a fresh run. */
export interface CheckedResult {
  /** Answer's file, path from the published folder. */
  readonly file: string;
  /** Where in the answer, for instance `comparisons[birch]/ratio`. */
  readonly path: string;
  readonly published: number | null;
  readonly fresh: number | null;
  /** Standard uncertainty of the fresh result, in the same unit; `null` for a bare number. */
  readonly standardUncertainty: number | null;
  readonly unit: string;
  readonly sameness: Sameness;
  /** How far apart, in standard uncertainties; `null` where there is none or a side is missing. */
  readonly apart: number | null;
}
