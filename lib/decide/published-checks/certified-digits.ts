/**
 * How many digits our fits keep of answers that NIST has certified: the measure by which the solvers were chosen.
 *
 * Source: NIST Statistical Reference Datasets (11 linear sets certified to 15 digits, 27 nonlinear ones to 11).
 *
 * @module
 */
import type {
  CertifiedSet,
  LinearCertifiedSet,
  NonlinearCertifiedSet,
} from "../../base/certified-set.ts";
import { gradientOf, PLAIN } from "../../numeric/dual.ts";
import { parseFormula } from "../../numeric/formula.ts";
import { linearLeastSquares } from "../../numeric/linear-least-squares.ts";
import { nonlinearLeastSquares } from "../../numeric/nonlinear-least-squares.ts";

/** Digits kept on one set from one start. */
export interface CertifiedDigits {
  readonly set: string;
  /** NIST's own level of difficulty; `linear` for the linear sets. */
  readonly level: string;
  /** 1 far, 2 near; `null` for linear sets, which need none. */
  readonly start: 1 | 2 | null;
  /** Of the worst coefficient, 0 when the fit failed. */
  readonly parameterDigits: number;
  /** Of the worst standard error, 0 when the fit failed. */
  readonly standardErrorDigits: number;
  /** Steps of the search; `null` for linear sets. */
  readonly steps: number | null;
  /** Why there was no fit; `null` when there was one. */
  readonly reason: string | null;
}

/**
 * Correct digits: minus the decimal logarithm of the relative error, of the absolute one where the certified value is 0.
 *
 * @param ours our value
 * @param certified the certified value
 * @param most digits to which it is certified
 * @returns digits, 0 to `most`
 * @example
 * ```ts
 * import { correctDigits } from "lakeproof/decide/published-checks/certified-digits.ts";
 * import { assertAlmostEqual } from "lakeproof/base/assert.ts";
 * assertAlmostEqual(correctDigits(1.001, 1, 11), 3, 1e-9);
 * ```
 */
export function correctDigits(ours: number | null, certified: number, most: number): number {
  if (ours === null || !Number.isFinite(ours)) return 0;
  const error = certified === 0 ? Math.abs(ours) : Math.abs(ours / certified - 1);
  return Math.max(0, Math.min(most, -Math.log10(error)));
}

function digitsOf(
  set: CertifiedSet,
  fit: {
    readonly parameters: readonly number[];
    readonly standardErrors: readonly (number | null)[];
  },
  most: number,
) {
  return {
    parameterDigits: Math.min(
      ...set.parameters.map((one, j) => correctDigits(fit.parameters[j]!, one.value, most)),
    ),
    standardErrorDigits: Math.min(
      ...set.parameters.map((one, j) =>
        correctDigits(fit.standardErrors[j]!, one.standardError, most)
      ),
    ),
  };
}

const NOTHING = { parameterDigits: 0, standardErrorDigits: 0, steps: null };

/** The columns of a linear set's design. */
function columnsOf(set: LinearCertifiedSet): number[][] {
  const { form, predictors, parameters } = set;
  if (form === "polynomial") {
    return parameters.map((_one, power) => predictors.map((row) => row[0]! ** power));
  }
  const columns = predictors[0]!.map((_x, j) => predictors.map((row) => row[j]!));
  return form === "plane" ? [predictors.map(() => 1), ...columns] : columns;
}

/**
 * Digits kept on linear sets.
 *
 * @param sets from `readLinearCertifiedSets`
 * @returns one row a set
 */
export function linearDigits(sets: readonly LinearCertifiedSet[]): CertifiedDigits[] {
  return sets.map((set) => {
    const fit = linearLeastSquares({ columns: columnsOf(set), observed: set.observed });
    const about = { set: set.set, level: "linear", start: null, steps: null };
    return fit.ok
      ? { ...about, ...digitsOf(set, fit, 15), reason: null }
      : { ...about, ...NOTHING, reason: fit.reason };
  });
}

/**
 * Digits kept on nonlinear sets from both published starts.
 *
 * @param sets from `readNonlinearCertifiedSets`
 * @param options `derivatives`: `exact` (by dual numbers) or `differences` (as a fit of a computed curve must do)
 * @returns two rows a set, far start first
 */
export function nonlinearDigits(
  sets: readonly NonlinearCertifiedSet[],
  options: { readonly derivatives: "exact" | "differences" },
): CertifiedDigits[] {
  return sets.flatMap((set) => {
    const names = set.parameters.map((one) => one.name);
    const several = set.predictors[0]!.length > 1;
    const variables = set.predictors[0]!.map((_x, j) => (several ? `x${j + 1}` : "x"));
    const formula = parseFormula(set.model, [...names, ...variables]);
    const model = (parameters: readonly number[]) =>
      set.predictors.map((row) => formula(PLAIN, parameters.concat(row)));
    const derivatives = (parameters: readonly number[]) => {
      const rows = set.predictors.map((row) =>
        gradientOf((n, b) => formula(n, b.concat(row.map(n.constant))), parameters).slopes
      );
      return parameters.map((_value, j) => rows.map((slopes) => slopes[j]!));
    };
    const observed = set.response === "ln(y)" ? set.observed.map(Math.log) : set.observed;
    return ([1, 2] as const).map((start) => {
      const fit = nonlinearLeastSquares({
        model,
        observed,
        start: set.starts[start - 1]!,
        ...(options.derivatives === "exact" ? { derivatives } : {}),
      });
      const about = { set: set.set, level: set.level, start };
      return fit.ok
        ? { ...about, ...digitsOf(set, fit, 11), steps: fit.steps, reason: null }
        : { ...about, ...NOTHING, reason: fit.reason };
    });
  });
}

/** How many rows keep at least so many digits. */
export interface DigitCounts {
  readonly rows: number;
  readonly parametersWith4: number;
  readonly parametersWith6: number;
  readonly standardErrorsWith4: number;
}

/**
 * Counts rows by digits kept.
 *
 * @param rows from `linearDigits` or `nonlinearDigits`
 * @returns counts
 */
export function countDigits(rows: readonly CertifiedDigits[]): DigitCounts {
  const count = (which: "parameterDigits" | "standardErrorDigits", least: number) =>
    rows.filter((row) => row[which] >= least).length;
  return {
    rows: rows.length,
    parametersWith4: count("parameterDigits", 4),
    parametersWith6: count("parameterDigits", 6),
    standardErrorsWith4: count("standardErrorDigits", 4),
  };
}
