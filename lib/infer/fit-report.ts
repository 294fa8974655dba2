/**
 * What a fit owes its reader: method, points, degrees of freedom, each value with its error, and plainly what went wrong.
 *
 * The formula, the fit and this report are three things: any fit can be reported, whatever its formula.
 *
 * @module
 */
import type { Quantity } from "../base/quantity.ts";
import { quantityWithoutInterval } from "../base/quantity-without-interval.ts";
import { formatNumber, formatPlusMinus } from "../base/rounding.ts";
import { chiSquareUpperTail } from "../numeric/distributions.ts";
import { studentInterval } from "./mean-interval.ts";

/** The parts of a fit that a report needs; linear and nonlinear fits both have them. */
export interface ReportableFit {
  readonly parameters: readonly number[];
  readonly standardErrors: readonly (number | null)[];
  readonly covariance: readonly (readonly (number | null)[])[];
  readonly residuals: readonly number[];
  readonly chiSquare: number;
  readonly degreesOfFreedom: number;
  /** `stated`: the size of the errors counts as known, so intervals are normal ones; `scatter`: t intervals. */
  readonly covarianceScale: "scatter" | "stated";
  /** Where the search began; only searches have it. */
  readonly start?: readonly number[];
  readonly atBound?: readonly boolean[];
}

/** A point that was not used. */
export interface LeftOutPoint {
  readonly point: string;
  readonly reason: string;
}

/** What is known about the fit besides its numbers. */
export interface FitDescription {
  /** In words, such as "weighted linear least squares (Householder QR)". */
  readonly method: string;
  /** Name and SI unit of each parameter, in order. */
  readonly parameters: readonly { readonly name: string; readonly unit: string }[];
  readonly leftOut?: readonly LeftOutPoint[];
  /** True when residuals were weighed by stated uncertainties, so that chi-square can be judged (default false). */
  readonly weighted?: boolean;
  /** Correlations at least this large in size are listed (default 0.5). */
  readonly correlationsFrom?: number;
}

/** What is odd about a parameter. */
export type ParameterRemark = "at bound" | "did not move" | "no uncertainty could be had";

/** One parameter of a report. */
export interface ReportedParameter {
  readonly name: string;
  /** With an interval at 95 %, where there is an uncertainty. */
  readonly quantity: Quantity;
  /** `null` for a fit that needs no start. */
  readonly start: number | null;
  readonly remarks: readonly ParameterRemark[];
}

/** A fit, reported. */
export interface FitReport {
  readonly method: string;
  readonly pointsUsed: number;
  readonly leftOut: readonly LeftOutPoint[];
  readonly degreesOfFreedom: number;
  readonly chiSquare: number;
  /** Chi-square over degrees of freedom; `null` without degrees of freedom. */
  readonly reducedChiSquare: number | null;
  /** How often stated errors alone would give a larger chi-square; `null` for unweighted fits. */
  readonly chanceOfLarger: number | null;
  readonly parameters: readonly ReportedParameter[];
  readonly correlationsFrom: number;
  /** Largest first. */
  readonly correlations: readonly {
    readonly between: readonly [string, string];
    readonly coefficient: number;
  }[];
}

/**
 * Reports a fit.
 *
 * @param fit a linear or nonlinear fit
 * @param description method, names and units of the parameters, points left out
 * @returns the report as data; `formatFitReport` makes text of it
 * @throws RangeError when there is not one name for each parameter
 * @example
 * ```ts
 * import { fitReport, formatFitReport } from "lakeproof/infer/fit-report.ts";
 * import { linearLeastSquares } from "lakeproof/numeric/linear-least-squares.ts";
 * const fit = linearLeastSquares({
 *   columns: [[1, 1, 1, 1], [0, 10, 20, 30]],
 *   observed: [0.1, 10.3, 20.2, 30.6],
 * });
 * if (!fit.ok) throw new Error(fit.reason);
 * const report = fitReport(fit, {
 *   method: "linear least squares",
 *   parameters: [{ name: "offset", unit: "N" }, { name: "slope", unit: "1" }],
 * });
 * if (!formatFitReport(report).includes("4 points used")) throw new Error("no count");
 * ```
 */
export function fitReport(fit: ReportableFit, description: FitDescription): FitReport {
  const { degreesOfFreedom, chiSquare } = fit;
  const known = fit.covarianceScale === "stated" ? Infinity : degreesOfFreedom;
  if (description.parameters.length !== fit.parameters.length) {
    throw new RangeError(
      `Cannot report the fit as it has ${fit.parameters.length} parameters and ${description.parameters.length} names`,
    );
  }
  const parameters = description.parameters.map(({ name, unit }, j): ReportedParameter => {
    const value = fit.parameters[j]!;
    const standardUncertainty = fit.standardErrors[j]!;
    const start = fit.start?.[j] ?? null;
    const remarks: ParameterRemark[] = [];
    if (fit.atBound?.[j] === true) remarks.push("at bound");
    else if (start === value) remarks.push("did not move");
    if (standardUncertainty === null) remarks.push("no uncertainty could be had");
    const quantity: Quantity = standardUncertainty === null || known < 1
      ? { ...quantityWithoutInterval(value, unit), standardUncertainty }
      : studentInterval({ value, standardUncertainty, degreesOfFreedom: known }, { unit });
    return { name, quantity, start, remarks };
  });
  const correlationsFrom = description.correlationsFrom ?? 0.5;
  const correlations = fit.parameters.flatMap((_value, j) =>
    fit.parameters.slice(0, j).flatMap((_other, k) => {
      const [one, other] = [fit.standardErrors[k]!, fit.standardErrors[j]!];
      const together = fit.covariance[k]![j]!;
      if (one === null || other === null || together === null || one * other === 0) return [];
      const coefficient = Math.max(-1, Math.min(1, together / (one * other)));
      const between = [description.parameters[k]!.name, description.parameters[j]!.name] as const;
      return Math.abs(coefficient) >= correlationsFrom ? [{ between, coefficient }] : [];
    })
  ).sort((one, other) => Math.abs(other.coefficient) - Math.abs(one.coefficient));
  return {
    method: description.method,
    pointsUsed: fit.residuals.length,
    leftOut: description.leftOut ?? [],
    degreesOfFreedom,
    chiSquare,
    reducedChiSquare: degreesOfFreedom > 0 ? chiSquare / degreesOfFreedom : null,
    chanceOfLarger: description.weighted === true && degreesOfFreedom > 0
      ? chiSquareUpperTail(chiSquare, degreesOfFreedom)
      : null,
    parameters,
    correlationsFrom,
    correlations,
  };
}

function significant(value: number): string {
  if (value === 0) return "0";
  const decimals = 2 - Math.floor(Math.log10(Math.abs(value)));
  return decimals > 8 || decimals < -6 ? value.toExponential(2) : formatNumber(value, decimals);
}

/**
 * A report as plain text, one fact a line.
 *
 * @param report from `fitReport`
 * @returns text without a newline at its end
 */
export function formatFitReport(report: FitReport): string {
  const lines = [
    `Method: ${report.method}`,
    `${report.pointsUsed} points used, ${report.leftOut.length} left out, ${report.degreesOfFreedom} degrees of freedom`,
    ...report.leftOut.map((one) => `  left out: ${one.point} (${one.reason})`),
    `Chi-square ${significant(report.chiSquare)}` +
    (report.reducedChiSquare === null
      ? "; the scatter can't be told without degrees of freedom"
      : `, reduced ${significant(report.reducedChiSquare)}`) +
    (report.chanceOfLarger === null
      ? ""
      : `; stated errors alone would give more in ${significant(100 * report.chanceOfLarger)} %`),
    ...report.parameters.map(({ name, quantity, start, remarks }) => {
      const value = quantity.standardUncertainty === null
        ? `${significant(quantity.value)}${quantity.unit === "1" ? "" : ` ${quantity.unit}`}`
        : formatPlusMinus(quantity);
      const from = start === null ? "" : `, from ${significant(start)}`;
      return `  ${name}: ${value}${from}${remarks.map((remark) => ` [${remark}]`).join("")}`;
    }),
    ...report.correlations.map(({ between, coefficient }) =>
      `  correlation of ${between[0]} and ${between[1]}: ${formatNumber(coefficient, 2)}`
    ),
  ];
  if (report.correlations.length === 0 && report.parameters.length > 1) {
    lines.push(`  no correlation of ${report.correlationsFrom} or more`);
  }
  return lines.join("\n");
}
