/**
 * What a nonlinear fit is given and what it gives back.
 *
 * @module
 */
import { factorise } from "./householder.ts";
import type { CovarianceScale } from "./linear-least-squares.ts";

/** Limits of one parameter; both optional. */
export interface Bounds {
  readonly low?: number;
  readonly high?: number;
}

/** What is to be fitted. */
export interface NonlinearProblem {
  /** The curve at all points. */
  readonly model: (parameters: readonly number[]) => readonly number[];
  readonly observed: readonly number[];
  readonly start: readonly number[];
  /** Standard uncertainty of each observation; without them all count the same. */
  readonly uncertainties?: readonly number[];
  /** Exact slopes, one column a parameter; without them differences are taken. */
  readonly derivatives?: (parameters: readonly number[]) => readonly ArrayLike<number>[];
  /** One a parameter, in order. Differences look a little beyond a bound: give exact slopes where the curve ends there. */
  readonly bounds?: readonly Bounds[];
  /** A typical size of each parameter; needed only for one that starts at zero and is not about 1. */
  readonly sizes?: readonly number[];
}

/** When to stop, and where the scale of the covariance comes from. */
export interface NonlinearOptions {
  /** Most steps tried (default 2000). */
  readonly mostSteps?: number;
  /** Stop when a step changes no parameter by more than this share (default 1e-13). */
  readonly tolerance?: number;
  /** `scatter` (default) takes the size of the errors from the residuals, `stated` from the uncertainties. */
  readonly covariance?: CovarianceScale;
}

/** A finished fit. */
export interface NonlinearFit {
  readonly parameters: readonly number[];
  readonly start: readonly number[];
  /** `null` for a parameter whose uncertainty can't be had: at a bound, or not told apart from others. */
  readonly standardErrors: readonly (number | null)[];
  /** Of the free parameters; rows and columns of the others are `null`. */
  readonly covariance: readonly (readonly (number | null)[])[];
  readonly atBound: readonly boolean[];
  /** Observed less fitted, in the unit of the observations. */
  readonly residuals: readonly number[];
  /** Sum of squared residuals, each over its variance where that is stated. */
  readonly chiSquare: number;
  readonly degreesOfFreedom: number;
  /** Where the size of the errors comes from. */
  readonly covarianceScale: CovarianceScale;
  /** Steps tried. */
  readonly steps: number;
  readonly derivatives: "exact" | "differences";
}

/**
 * Checks a problem before any work is done on it.
 *
 * @param problem what is to be fitted
 * @param options of the search
 * @throws RangeError when lengths differ or numbers make no sense
 */
export function checkProblem(problem: NonlinearProblem, options: NonlinearOptions): void {
  const { observed, start, uncertainties, bounds, sizes } = problem;
  if (!observed.every(Number.isFinite) || !start.every(Number.isFinite) || start.length === 0) {
    throw new RangeError("Cannot fit as observations and start values must be finite numbers");
  }
  if (uncertainties !== undefined) {
    if (
      uncertainties.length !== observed.length ||
      uncertainties.some((u) => !(u > 0 && u < Infinity))
    ) {
      throw new RangeError("Cannot fit as each observation needs a positive, finite uncertainty");
    }
  } else if (options.covariance === "stated") {
    throw new RangeError("Cannot take stated uncertainties as none are given");
  }
  if (sizes !== undefined && (sizes.length !== start.length || sizes.some((size) => !(size > 0)))) {
    throw new RangeError("Cannot fit as there must be one positive size a parameter");
  }
  if (bounds !== undefined && bounds.length !== start.length) {
    throw new RangeError("Cannot fit as there must be one pair of bounds a parameter");
  }
  bounds?.forEach(({ low, high }, j) => {
    if (!(start[j]! >= (low ?? -Infinity) && start[j]! <= (high ?? Infinity))) {
      throw new RangeError(`Cannot fit as the start of parameter ${j + 1} is outside its bounds`);
    }
  });
}

/**
 * Covariance of the parameters that are off their bounds, from the slopes at the minimum.
 *
 * @param slopes weighted slopes, one column a parameter
 * @param chiSquare sum of squared, weighted residuals at the minimum
 * @param parameters at the minimum
 * @param rules bounds and where the scale comes from
 * @returns standard errors and covariance in the parameters' own units, `null` for one at a bound or not determined; degrees
 *   of freedom; which are at a bound
 */
export function uncertaintyOf(
  slopes: readonly Float64Array[],
  chiSquare: number,
  parameters: readonly number[],
  rules: {
    readonly lows: readonly number[];
    readonly highs: readonly number[];
    readonly scale: CovarianceScale;
  },
) {
  const n = parameters.length;
  const atBound = parameters.map((value, j) => value <= rules.lows[j]! || value >= rules.highs[j]!);
  const free = atBound.flatMap((bound, j) => (bound ? [] : [j]));
  const degreesOfFreedom = slopes[0]!.length - free.length;
  const covariance: (number | null)[][] = parameters.map(() => new Array(n).fill(null));
  const standardErrors: (number | null)[] = new Array(n).fill(null);
  if (free.length > 0 && (degreesOfFreedom > 0 || rules.scale === "stated")) {
    const factors = factorise(free.map((j) => slopes[j]!));
    if (factors.rank === free.length) {
      const factor = rules.scale === "stated" ? 1 : chiSquare / degreesOfFreedom;
      const inverse = factors.inverseNormal();
      free.forEach((j, a) => {
        free.forEach((k, b) => covariance[j]![k] = inverse[a]![b]! * factor);
        standardErrors[j] = Math.sqrt(inverse[a]![a]! * factor);
      });
    }
  }
  return { standardErrors, covariance, atBound, degreesOfFreedom, covarianceScale: rules.scale };
}
