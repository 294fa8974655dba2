/**
 * Published checks of straight lines through points that are uncertain in both coordinates.
 *
 * @module
 */
import { lineWithErrors } from "../../infer/line-with-errors.ts";
import { type CheckInputs, type PublishedCheck, quantityOf } from "../published-check.ts";

/** Standard uncertainties from weights `1/u^2`; `exact` stands for no uncertainty at all. */
function uncertaintiesOf(inputs: CheckInputs, name: string, count: number): readonly number[] {
  if (inputs.text(name) === "exact") return new Array<number>(count).fill(0);
  return inputs.list(name).map((weight) => 1 / Math.sqrt(weight));
}

function line(inputs: CheckInputs, quantity: string): number {
  const x = inputs.list("x");
  const y = inputs.list("y");
  const ux = uncertaintiesOf(inputs, "x_weights", x.length);
  const uy = uncertaintiesOf(inputs, "y_weights", x.length);
  const fit = lineWithErrors(
    x.map((one, i) => ({ x: one, y: y[i]!, xUncertainty: ux[i]!, yUncertainty: uy[i]! })),
  );
  if (!fit.ok) throw new RangeError(fit.reason);
  const scatter = fit.weightedSquares / fit.degreesOfFreedom;
  return quantityOf({
    "slope": fit.slope,
    "intercept": fit.intercept,
    "uncertainty of slope": fit.slopeUncertainty,
    "uncertainty of intercept": fit.interceptUncertainty,
    "covariance": fit.covariance,
    "weighted squares": fit.weightedSquares,
    "weighted squares by degrees of freedom": scatter,
    "uncertainty of slope times root of scatter": fit.slopeUncertainty * Math.sqrt(scatter),
    "uncertainty of intercept times root of scatter": fit.interceptUncertainty *
      Math.sqrt(scatter),
  }, quantity);
}

/** Checks by name. */
export const LINE_CHECKS: Readonly<Record<string, PublishedCheck>> = { "line-with-errors": line };
