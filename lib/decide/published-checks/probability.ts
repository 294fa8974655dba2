/**
 * Published checks of distributions and of tests built on them.
 *
 * @module
 */
import {
  chiSquareQuantile,
  fisherFQuantile,
  normalQuantile,
  studentTQuantile,
} from "../../numeric/distributions.ts";
import { type PublishedCheck, unknownQuantity } from "../published-check.ts";

/** "97.5 % point" as a probability. */
function pointOf(check: string, quantity: string): number {
  const percent = /^([\d.]+) % point$/.exec(quantity);
  return percent === null ? unknownQuantity(check, quantity) : Number(percent[1]) / 100;
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
};
