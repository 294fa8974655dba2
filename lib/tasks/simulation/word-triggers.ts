/**
 * What sets off each word about a towed design, in short.
 *
 * @module
 */

/** Trigger by code of the words that chance can set off; without commas, as they stand in a table. Others are not counted. */
export const WORD_TRIGGERS: Readonly<Record<string, string>> = {
  "unit-slip": "lift drag of a law of two terms outside 0.4 to 1.8 of the planform's",
  "not-steady-flight": "lift over drag of a reading outside 3 to 45 or a lift coefficient over 1.3",
  "no-law": "fewer than 3 speeds or 5 readings or fastest over slowest under 1.1",
  "leans-on-planform": "no least drag without the planform",
  "no-best-speed": "no least drag anywhere near the speeds towed",
  "best-outside": "best speed outside the readings with its whole interval",
  "best-near-edge": "interval of the best speed over the edge of the readings",
  "slowest-drag-more": "slowest speed above the law of the others at 1 % one-sided",
  "repeats-agree-better": "misfit against the scatter of repeats at 5 %",
  "stands-out": "largest deleted residual at 5 % over all readings",
  "rules-the-law": "Cook's distance over 1 (2 under 15 readings) or leverage over a half",
  "wild-scatter": "scatter over twice what was stated",
  "tame-scatter": "scatter under 0.55 of what was stated with 15 readings or more",
  "pulls-from-planform": "lift term 30 % or constant 1.8 % of the lift off the planform",
  "more-points-no-help": "over 60 % of the variance shared by all readings",
};
