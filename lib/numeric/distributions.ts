/**
 * Tail probabilities and quantiles of the distributions that a comparison of runs needs.
 *
 * @module
 */
export {
  normalDensity,
  normalLowerTail,
  normalQuantile,
  normalUpperTail,
} from "./normal-distribution.ts";
export { studentTLowerTail, studentTQuantile, studentTUpperTail } from "./student-t.ts";
export { chiSquareLowerTail, chiSquareQuantile, chiSquareUpperTail } from "./chi-square.ts";
export {
  type FisherFDegrees,
  fisherFLowerTail,
  fisherFQuantile,
  fisherFUpperTail,
} from "./fisher-f.ts";
export {
  noncentralTLowerTail,
  type NoncentralTParameters,
  noncentralTUpperTail,
} from "./noncentral-t.ts";
