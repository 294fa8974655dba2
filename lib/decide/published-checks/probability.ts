/**
 * Published checks of distributions and of tests built on them.
 *
 * @module
 */
import { meanInterval } from "../../infer/mean-interval.ts";
import { pairedPermutationTest } from "../../infer/permutation.ts";
import {
  chiSquareQuantile,
  fisherFQuantile,
  normalQuantile,
  studentTLowerTail,
  studentTQuantile,
  studentTUpperTail,
} from "../../numeric/distributions.ts";
import {
  type CheckInputs,
  type PublishedCheck,
  quantityOf,
  unknownQuantity,
} from "../published-check.ts";

/** "97.5 % point" as a probability. */
function pointOf(check: string, quantity: string): number {
  const percent = /^([\d.]+) % point$/.exec(quantity);
  return percent === null ? unknownQuantity(check, quantity) : Number(percent[1]) / 100;
}

/** Pairs: the mean difference by Student's t. */
function pairedT(inputs: CheckInputs, quantity: string): number {
  const first = inputs.list("first");
  const differences = inputs.list("second").map((value, i) => value - first[i]!);
  const mean = meanInterval(differences);
  const t = mean.value / mean.standardUncertainty!;
  const degrees = mean.degreesOfFreedom!;
  return quantityOf({
    "mean difference": mean.value,
    "t": t,
    "two-sided probability": 2 * studentTUpperTail(Math.abs(t), degrees),
    "probability that the second is better": studentTLowerTail(t, degrees),
    "low end of 95 %": mean.low!,
    "high end of 95 %": mean.high!,
  }, quantity);
}

/** Pairs: every way of swapping within pairs. */
function pairedPermutation(inputs: CheckInputs, quantity: string): number {
  const result = pairedPermutationTest(inputs.list("differences"));
  if (result.how !== "exact") throw new RangeError("The published count is of all arrangements");
  return quantityOf({
    "mean difference": result.difference,
    "arrangements": result.arrangements,
    "arrangements as extreme": result.asExtreme,
    "two-sided probability": result.pValue,
  }, quantity);
}

/** Checks by name. */
export const PROBABILITY_CHECKS: Readonly<Record<string, PublishedCheck>> = {
  "normal": (_inputs, quantity) => normalQuantile(pointOf("normal", quantity)),
  "student-t": (inputs, quantity) =>
    studentTQuantile(pointOf("student-t", quantity), inputs.number("degrees_of_freedom")),
  "chi-square": (inputs, quantity) =>
    chiSquareQuantile(pointOf("chi-square", quantity), inputs.number("degrees_of_freedom")),
  "fisher-f": (inputs, quantity) =>
    fisherFQuantile(pointOf("fisher-f", quantity), {
      numerator: inputs.number("numerator"),
      denominator: inputs.number("denominator"),
    }),
  "paired-t": pairedT,
  "paired-permutation": pairedPermutation,
};
