/**
 * How uncertain inputs make a computed result uncertain: the first-order law of propagation.
 *
 * @module
 */
import type { Quantity } from "../base/quantity.ts";
import { numericalJacobian } from "../numeric/numerical-jacobian.ts";
import { type IntervalOptions, studentInterval } from "./mean-interval.ts";

/** One input of a computation. */
export interface UncertainInput {
  readonly name: string;
  /** SI. */
  readonly value: number;
  /** SI. */
  readonly standardUncertainty: number;
  /** Of the uncertainty itself; without it the uncertainty counts as known. */
  readonly degreesOfFreedom?: number;
}

/** How two inputs move together. */
export interface Correlation {
  readonly between: readonly [string, string];
  /** Correlation coefficient, -1 to 1. */
  readonly coefficient: number;
}

/** What an input does to the result. */
export interface Contribution {
  readonly name: string;
  /** Change of the result for a unit change of the input. */
  readonly sensitivity: number;
  /** Sensitivity times standard uncertainty, with its sign, in the unit of the result. */
  readonly uncertainty: number;
}

/** A computed result with its uncertainty. */
export interface Propagated {
  readonly quantity: Quantity;
  readonly contributions: readonly Contribution[];
  /**
   * Inputs that bend the result more than they tilt it: at a flat spot the slope is zero, and so is the uncertainty that
   * it carries, though the input is doubtful. Where this is not empty, `propagateByDrawing` tells the truth.
   */
  readonly flat: readonly string[];
}

/** Options: level and unit of the interval, and correlations between inputs. */
export interface PropagateOptions extends IntervalOptions {
  readonly correlations?: readonly Correlation[];
}

/** Several results of the same inputs, and how they move together. */
export interface PropagatedResults {
  readonly values: readonly number[];
  readonly standardUncertainties: readonly number[];
  readonly covariance: readonly (readonly number[])[];
  /** One row a result, one column an input. */
  readonly sensitivities: readonly (readonly number[])[];
}

/**
 * The covariance matrix of inputs.
 *
 * @param inputs with their standard uncertainties
 * @param correlations between pairs of them, by name; pairs not named are independent
 * @returns covariances in the order of the inputs
 * @throws RangeError when a name is unknown or used twice, or a number makes no sense
 */
export function covarianceOfInputs(
  inputs: readonly UncertainInput[],
  correlations: readonly Correlation[] = [],
): number[][] {
  const place = new Map(inputs.map((input, i) => [input.name, i]));
  if (place.size < inputs.length) {
    throw new RangeError("Cannot propagate as each input needs a name of its own");
  }
  for (const { name, value, standardUncertainty } of inputs) {
    if (!Number.isFinite(value) || !(standardUncertainty >= 0 && standardUncertainty < Infinity)) {
      throw new RangeError(
        `Cannot propagate as ${name} needs a finite value and uncertainty: ${value}, ${standardUncertainty}`,
      );
    }
  }
  const covariance = inputs.map((one, i) =>
    inputs.map((_other, j) => (i === j ? one.standardUncertainty ** 2 : 0))
  );
  for (const { between: [one, other], coefficient } of correlations) {
    const [i, j] = [place.get(one), place.get(other)];
    if (i === undefined || j === undefined || i === j || !(Math.abs(coefficient) <= 1)) {
      throw new RangeError(
        `Cannot propagate as a correlation needs two inputs and a coefficient from -1 to 1: ${one}, ${other}, ${coefficient}`,
      );
    }
    covariance[i]![j] = coefficient * inputs[i]!.standardUncertainty *
      inputs[j]!.standardUncertainty;
    covariance[j]![i] = covariance[i]![j]!;
  }
  return covariance;
}

/**
 * Several results computed from the same uncertain inputs.
 *
 * Source: JCGM 102:2011, clause 6.2 (covariance of results = J U J').
 *
 * @param f results as a function of the inputs' values, in the order of the inputs
 * @param inputs values with standard uncertainties
 * @param correlations between pairs of inputs
 * @returns values, standard uncertainties and covariance of the results
 * @throws RangeError when a result is not a finite number, or the inputs make no sense
 */
export function propagateSeveral(
  f: (values: readonly number[]) => readonly number[],
  inputs: readonly UncertainInput[],
  correlations: readonly Correlation[] = [],
): PropagatedResults {
  const u = covarianceOfInputs(inputs, correlations);
  const at = inputs.map((input) => input.value);
  const values = f(at);
  if (!values.every(Number.isFinite)) {
    throw new RangeError(`Cannot propagate as the result is not a finite number: ${values}`);
  }
  const columns = numericalJacobian(f, at, {
    sizes: inputs.map((input) => input.standardUncertainty),
  });
  const sensitivities = values.map((_value, r) => columns.map((column) => column[r]!));
  const covariance = sensitivities.map((one) =>
    sensitivities.map((other) => {
      let sum = 0;
      for (let i = 0; i < at.length; i++) {
        for (let j = 0; j < at.length; j++) sum += one[i]! * u[i]![j]! * other[j]!;
      }
      return sum;
    })
  );
  return {
    values,
    // Rounding can leave a tiny negative variance where correlated inputs cancel.
    standardUncertainties: covariance.map((row, r) => Math.sqrt(Math.max(0, row[r]!))),
    covariance,
    sensitivities,
  };
}

/**
 * One result computed from uncertain inputs, first order.
 *
 * Good where the result is close to a straight line over the inputs' uncertainties; `propagateByDrawing` needs no such
 * thing. Degrees of freedom by Welch and Satterthwaite for independent inputs; where inputs are correlated, for which
 * that formula does not hold, the smallest of theirs (cautious).
 *
 * Source: JCGM 100:2008 (GUM), equations 13 and G.2b.
 *
 * @param f result as a function of the inputs' values, in the order of the inputs
 * @param inputs values with standard uncertainties
 * @param options correlations, level and unit
 * @returns the quantity and what each input contributes
 * @throws RangeError when the result is not a finite number, or the inputs make no sense
 * @example A speed from 20 m in 5 s
 * ```ts
 * import { propagate } from "lakeproof/infer/propagate.ts";
 * import { assertAlmostEqual } from "lakeproof/base/assert.ts";
 * const { quantity } = propagate(([length, time]) => length! / time!, [
 *   { name: "length", value: 20, standardUncertainty: 0.1 },
 *   { name: "time", value: 5, standardUncertainty: 0.05 },
 * ], { unit: "m/s" });
 * assertAlmostEqual(quantity.standardUncertainty!, 4 * Math.hypot(0.1 / 20, 0.05 / 5), 1e-10);
 * ```
 */
export function propagate(
  f: (values: readonly number[]) => number,
  inputs: readonly UncertainInput[],
  options: PropagateOptions = {},
): Propagated {
  const correlations = (options.correlations ?? []).filter((one) => one.coefficient !== 0);
  const { values, standardUncertainties, sensitivities } = propagateSeveral(
    (x) => [f(x)],
    inputs,
    correlations,
  );
  const contributions = inputs.map((input, i) => ({
    name: input.name,
    sensitivity: sensitivities[0]![i]!,
    uncertainty: sensitivities[0]![i]! * input.standardUncertainty,
  }));
  const standardUncertainty = standardUncertainties[0]!;
  const estimate = {
    value: values[0]!,
    standardUncertainty,
    degreesOfFreedom: effectiveDegrees(
      inputs,
      contributions.map((one) => one.uncertainty),
      { standardUncertainty, correlated: new Set(correlations.flatMap((one) => one.between)) },
    ),
  };
  return {
    quantity: studentInterval(estimate, options),
    contributions,
    flat: flatInputs(f, inputs),
  };
}

/** Share of the result below which bending is rounding. */
const BENDING = 1e-9;

/** Inputs by one standard uncertainty of which the result bends more than it tilts. */
function flatInputs(
  f: (values: readonly number[]) => number,
  inputs: readonly UncertainInput[],
): string[] {
  const at = inputs.map((input) => input.value);
  const middle = f(at);
  return inputs.filter(({ standardUncertainty: u }, i) => {
    if (u === 0) return false;
    const moved = (by: number) => f(at.map((value, j) => (j === i ? value + by : value)));
    const [above, below] = [moved(u), moved(-u)];
    // Beyond the edge of where the result is defined nothing can be said.
    if (!Number.isFinite(above) || !Number.isFinite(below)) return false;
    const bend = Math.abs(above + below - 2 * middle) / 2;
    return bend > Math.abs(above - below) / 2 && bend > BENDING * Math.abs(middle);
  }).map((input) => input.name);
}

function effectiveDegrees(
  inputs: readonly UncertainInput[],
  parts: readonly number[],
  result: { readonly standardUncertainty: number; readonly correlated: ReadonlySet<string> },
): number {
  if (result.standardUncertainty === 0) return Infinity;
  let fourthPowers = 0;
  let least = Infinity;
  inputs.forEach((input, i) => {
    const degrees = input.degreesOfFreedom ?? Infinity;
    if (!(degrees > 0)) {
      throw new RangeError(
        `Cannot propagate as ${input.name} needs positive degrees of freedom: ${degrees}`,
      );
    }
    if (result.correlated.has(input.name)) least = Math.min(least, degrees);
    fourthPowers += (parts[i]! / result.standardUncertainty) ** 4 / degrees;
  });
  // Opposed correlated parts can make the formula's figure smaller than any input's own; the smallest own is kept then.
  return result.correlated.size > 0 ? least : 1 / fourthPowers;
}
