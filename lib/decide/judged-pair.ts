/**
 * A pair of designs with its verdict and the runs behind it: what the findings on a pair look at.
 *
 * @module
 */
import type { DesignRuns } from "./glide-pair.ts";
import type { PairVerdict } from "./glide-verdict.ts";

/** A pair with its verdict. */
export interface JudgedPair extends PairVerdict {
  readonly baselineRuns: DesignRuns;
  readonly candidateRuns: DesignRuns;
}
