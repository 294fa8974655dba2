/**
 * Published checks of uncertainty propagation: the worked examples of the guide that laboratories use.
 *
 * @module
 */
import { calibratedValue, calibrationLine, lineAbout } from "../../fit/calibration-line.ts";
import { propagate, propagateSeveral, type UncertainInput } from "../../infer/propagate.ts";
import { type DrawnInput, propagateByDrawing } from "../../infer/propagate-by-drawing.ts";
import { covarianceOf, meanOf, varianceOf } from "../../infer/sample.ts";
import { seededRandom } from "../../numeric/random.ts";
import { type CheckInputs, type PublishedCheck, quantityOf } from "../published-check.ts";

/** A calibration line through a thermometer's corrections, and its prediction elsewhere. */
function thermometer(inputs: CheckInputs, quantity: string): number {
  const corrections = inputs.list("corrections");
  const line = calibrationLine(
    inputs.list("readings").map((reading, i) => ({ reading, applied: corrections[i]! })),
  );
  if (!line.ok) throw new RangeError(line.reason);
  const about = lineAbout(line, inputs.number("origin"));
  const predicted = calibratedValue(line, inputs.number("predict_at"));
  return quantityOf({
    "intercept": about.intercept,
    "uncertainty of intercept": about.interceptUncertainty,
    "slope": about.slope,
    "uncertainty of slope": about.slopeUncertainty,
    "correlation": about.covariance / (about.interceptUncertainty * about.slopeUncertainty),
    "residual standard deviation": line.residualStandardDeviation,
    "prediction": predicted.value,
    "uncertainty of prediction": predicted.standardUncertainty,
  }, quantity);
}

/** Resistance, reactance and impedance from voltage, current and phase, read together and so correlated. */
function impedance(inputs: CheckInputs, quantity: string): number {
  const readings = {
    voltage: inputs.list("voltage"),
    current: inputs.list("current"),
    phase: inputs.list("phase"),
  };
  const names = ["voltage", "current", "phase"] as const;
  const means: UncertainInput[] = names.map((name) => ({
    name,
    value: meanOf(readings[name]),
    standardUncertainty: Math.sqrt(varianceOf(readings[name]) / readings[name].length),
  }));
  const together = (one: typeof names[number], other: typeof names[number]) =>
    covarianceOf(readings[one], readings[other]) /
    Math.sqrt(varianceOf(readings[one]) * varianceOf(readings[other]));
  const pairs = [["voltage", "current"], ["voltage", "phase"], ["current", "phase"]] as const;
  const { values, standardUncertainties: u, covariance } = propagateSeveral(
    ([v, i, phase]) => [v! / i! * Math.cos(phase!), v! / i! * Math.sin(phase!), v! / i!],
    means,
    pairs.map((between) => ({ between, coefficient: together(between[0], between[1]) })),
  );
  return quantityOf({
    "uncertainty of voltage": means[0]!.standardUncertainty,
    "uncertainty of current": means[1]!.standardUncertainty,
    "uncertainty of phase": means[2]!.standardUncertainty,
    "correlation of voltage and current": together("voltage", "current"),
    "correlation of voltage and phase": together("voltage", "phase"),
    "correlation of current and phase": together("current", "phase"),
    "resistance": values[0]!,
    "uncertainty of resistance": u[0]!,
    "reactance": values[1]!,
    "uncertainty of reactance": u[1]!,
    "impedance": values[2]!,
    "uncertainty of impedance": u[2]!,
    "correlation of resistance and reactance": covariance[0]![1]! / (u[0]! * u[1]!),
    "correlation of resistance and impedance": covariance[0]![2]! / (u[0]! * u[2]!),
    "correlation of reactance and impedance": covariance[1]![2]! / (u[1]! * u[2]!),
  }, quantity);
}

/** A sum of independent inputs around zero, by drawing and by the first-order law. */
function sum(inputs: CheckInputs, quantity: string): number {
  const shape = inputs.text("shape");
  if (shape !== "normal" && shape !== "rectangular") {
    throw new RangeError(`Cannot draw from a shape called ${shape}`);
  }
  const terms: DrawnInput[] = inputs.list("standard_uncertainties").map((
    standardUncertainty,
    i,
  ) => ({
    name: `term ${i + 1}`,
    value: 0,
    standardUncertainty,
    shape,
  }));
  const add = (x: readonly number[]) => x.reduce((total, one) => total + one, 0);
  if (quantity === "half width of 95 % by first order") return propagate(add, terms).quantity.high!;
  const random = seededRandom(`sum of ${shape} terms ${inputs.text("standard_uncertainties")}`);
  const drawn = propagateByDrawing(add, terms, { random, draws: 200_000 });
  return quantityOf({
    "half width of 95 % by drawing": (drawn.high! - drawn.low!) / 2,
    "standard uncertainty by drawing": drawn.standardUncertainty!,
  }, quantity);
}

/** Checks by name. */
export const UNCERTAINTY_CHECKS: Readonly<Record<string, PublishedCheck>> = {
  "calibration-line": thermometer,
  "correlated-impedance": impedance,
  "uncertain-sum": sum,
};
