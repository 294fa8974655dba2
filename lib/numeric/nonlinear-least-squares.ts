/**
 * Nonlinear least squares: the parameters of a curve that leave the smallest sum of squared, weighted residuals.
 *
 * Levenberg and Marquardt's damped steps, each solved by QR on the stacked system (never by normal equations), bent along
 * the curve by its second derivative in the step's own direction. Damping counts in units of each parameter's own size:
 * of the rules tried on the NIST sets only this one, with the bend, reaches the minimum from all 54 starts (damping by
 * slopes, the usual rule, loses one of them, and another without the bend). Own code, since the kept package for it
 * reaches 4 digits from 1 of the 54 starts and misuses weights; ours is measured in
 * `lib/decide/published-checks/certified-digits.ts`.
 *
 * Source: Madsen, Nielsen and Tingleff, Methods for Non-Linear Least Squares Problems, 2004, algorithm 3.16 (damping);
 * Transtrum and Sethna 2012, arXiv 1201.5885 (bend, "geodesic acceleration"; both from memory).
 *
 * @module
 */
import type { Result } from "../base/quantity.ts";
import { factorise } from "./householder.ts";
import {
  checkProblem,
  type NonlinearFit,
  type NonlinearOptions,
  type NonlinearProblem,
  uncertaintyOf,
} from "./nonlinear-problem.ts";
import { numericalJacobian } from "./numerical-jacobian.ts";

export type {
  Bounds,
  NonlinearFit,
  NonlinearOptions,
  NonlinearProblem,
} from "./nonlinear-problem.ts";

/** Largest doubled bend beside a step; the usual choice of the source. */
const MOST_BEND = 0.75;

/** Share of a step at which its bend is measured. */
const PEEK = 0.1;

/** Where the search stands. */
interface Point {
  readonly parameters: readonly number[];
  /** Weighted. */
  readonly residuals: Float64Array;
  /** Infinite where the curve gives no numbers. */
  readonly chiSquare: number;
}

interface Trial {
  readonly next: readonly number[];
  /** False where the bend is so large beside the step that the straight-line picture can't be trusted. */
  readonly trusted: boolean;
  /** Fall of chi-square that the straight-line picture promises. */
  readonly promised: number;
}

function squares(values: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i]! * values[i]!;
  return sum;
}

/** The sum of some columns, each times its coefficient. */
function combine(columns: readonly Float64Array[], coefficients: ArrayLike<number>): Float64Array {
  const sum = new Float64Array(columns[0]!.length);
  columns.forEach((column, k) => {
    for (let i = 0; i < sum.length; i++) sum[i]! += coefficients[k]! * column[i]!;
  });
  return sum;
}

/**
 * Fits the parameters of a curve.
 *
 * Finds a minimum near the start, not every minimum there is: try other starts where that matters.
 *
 * @param problem curve, observations, start, and where there are any: uncertainties, exact slopes, bounds
 * @param options tolerances and scale of the covariance
 * @returns the fit, or the reason why there is none
 * @throws RangeError when lengths differ or numbers make no sense
 * @example A decay through four points
 * ```ts
 * import { nonlinearLeastSquares } from "lakeproof/numeric/nonlinear-least-squares.ts";
 * import { assertAlmostEqual } from "lakeproof/base/assert.ts";
 * const times = [0, 1, 2, 3];
 * const fit = nonlinearLeastSquares({
 *   model: ([size, rate]) => times.map((t) => size! * Math.exp(-rate! * t)),
 *   observed: [8, 4, 2, 1],
 *   start: [5, 0.3],
 * });
 * if (!fit.ok) throw new Error(fit.reason);
 * assertAlmostEqual(fit.parameters[1]!, Math.LN2, 1e-10);
 * ```
 */
export function nonlinearLeastSquares(
  problem: NonlinearProblem,
  options: NonlinearOptions = {},
): Result<NonlinearFit> {
  checkProblem(problem, options);
  const { model, observed, start, uncertainties, bounds } = problem;
  const m = observed.length;
  const n = start.length;
  const failed = (reason: string) => ({ ok: false as const, reason });
  if (m < n) return failed(`${n} parameters need ${n} observations; there are ${m}`);
  const tolerance = options.tolerance ?? 1e-13;
  const mostSteps = options.mostSteps ?? 2000;
  const weight = (i: number) => 1 / (uncertainties?.[i] ?? 1);
  const lows = start.map((_value, j) => bounds?.[j]?.low ?? -Infinity);
  const highs = start.map((_value, j) => bounds?.[j]?.high ?? Infinity);
  const within = (value: number, j: number) => Math.min(highs[j]!, Math.max(lows[j]!, value));
  const sizes = start.map((value, j) => problem.sizes?.[j] ?? 1e-3 * Math.abs(value));

  const pointAt = (parameters: readonly number[]): Point => {
    const fitted = model(parameters);
    if (fitted.length !== m) {
      throw new RangeError(`Cannot fit as the curve must give ${m} values: ${fitted.length}`);
    }
    const residuals = Float64Array.from(observed, (value, i) => (value - fitted[i]!) * weight(i));
    const chiSquare = squares(residuals);
    return { parameters, residuals, chiSquare: Number.isFinite(chiSquare) ? chiSquare : Infinity };
  };
  /** Weighted slopes, or `null` where there are none. */
  const slopesAt = (parameters: readonly number[]): Float64Array[] | null => {
    try {
      const columns = problem.derivatives?.(parameters) ??
        numericalJacobian(model, parameters, { sizes });
      const weighted = columns.map((column) =>
        Float64Array.from(column, (slope, i) => slope * weight(i))
      );
      return weighted.every((column) => column.every(Number.isFinite)) ? weighted : null;
    } catch (error) {
      if (error instanceof RangeError && problem.derivatives === undefined) return null;
      throw error;
    }
  };
  const noSlopes = "the curve has no finite slopes at the values reached";

  let here = pointAt([...start]);
  if (here.chiSquare === Infinity) {
    return failed("the curve gives no finite numbers at the start values");
  }
  let slopes = slopesAt(start);
  if (slopes === null) return failed(noSlopes);
  const norms = slopes.map((column) => Math.sqrt(squares(column)));
  // One that starts at zero gets the size that would move the curve by its present misfit.
  const least = sizes.map((size, j) => size || Math.sqrt(here.chiSquare) / (norms[j]! || 1) || 1);
  let damping = 1e-3 *
    Math.max(...norms.map((norm, j) => norm * Math.max(Math.abs(start[j]!), least[j]!))) ** 2;
  let growth = 2;

  const tryStep = (columns: readonly Float64Array[], free: readonly number[]): Trial => {
    const scales = free.map((j) => 1 / Math.max(Math.abs(here.parameters[j]!), least[j]!));
    const moved = (share: number, steps: ArrayLike<number>) => {
      const next = [...here.parameters];
      free.forEach((j, k) => next[j] = within(next[j]! + share * steps[k]!, j));
      return next;
    };
    const padded = (top: Float64Array) => {
      const column = new Float64Array(m + free.length);
      column.set(top);
      return column;
    };
    const factors = factorise(free.map((j, k) => {
      const column = padded(columns[j]!);
      column[m + k] = Math.sqrt(damping) * scales[k]!;
      return column;
    }));
    const own = free.map((j) => columns[j]!);
    const step = factors.solve(padded(here.residuals));
    const peek = pointAt(moved(PEEK, step)).residuals;
    // Residuals fall as the curve rises, hence the sign.
    const second = combine(own, step).map((rise, i) =>
      2 / PEEK * ((peek[i]! - here.residuals[i]!) / PEEK + rise)
    );
    let trusted = second.every(Number.isFinite);
    if (trusted) {
      const bend = factors.solve(padded(second));
      const inUnits = (values: Float64Array) => squares(values.map((v, k) => v * scales[k]!));
      trusted = 4 * inUnits(bend) <= MOST_BEND ** 2 * inUnits(step);
      bend.forEach((half, k) => step[k]! += half / 2);
    }
    const next = moved(1, step);
    const change = combine(own, free.map((j) => next[j]! - here.parameters[j]!));
    const promised = change.reduce((sum, c, i) => sum + c * (2 * here.residuals[i]! - c), 0);
    return { next, trusted, promised };
  };

  let steps = 0;
  let settled = false;
  while (!settled) {
    const columns: readonly Float64Array[] = slopes;
    const { parameters, residuals } = here;
    // Parameters at a bound that want to leave it are held for this step.
    const free = parameters.flatMap((value, j) => {
      const pull = columns[j]!.reduce((sum, slope, i) => sum + slope * residuals[i]!, 0);
      const held = (value <= lows[j]! && pull < 0) || (value >= highs[j]! && pull > 0);
      return held ? [] : [j];
    });
    if (free.length === 0) break;
    let accepted = false;
    while (!accepted && !settled) {
      if (++steps > mostSteps) return failed(`no minimum was reached within ${mostSteps} steps`);
      const { next, trusted, promised } = tryStep(columns, free);
      const small = free.every((j) =>
        Math.abs(next[j]! - parameters[j]!) <= tolerance * Math.abs(parameters[j]!)
      );
      const there = pointAt(next);
      const gain = here.chiSquare - there.chiSquare;
      if (trusted && gain >= 0) {
        const ratio = promised > 0 ? gain / promised : 1;
        accepted = gain > 0;
        settled = small || !accepted;
        damping = Math.max(1e-300, damping * Math.max(1 / 3, 1 - (2 * ratio - 1) ** 3));
        growth = 2;
        here = there;
      } else {
        damping *= growth;
        growth *= 2;
        settled = small || damping === Infinity;
      }
    }
    if (accepted) {
      slopes = slopesAt(here.parameters);
      if (slopes === null) return failed(noSlopes);
    }
  }
  return {
    ok: true,
    ...uncertaintyOf(slopes, here.chiSquare, here.parameters, {
      lows,
      highs,
      scale: options.covariance ?? "scatter",
    }),
    parameters: here.parameters,
    start: [...start],
    residuals: [...here.residuals].map((r, i) => r / weight(i)),
    chiSquare: here.chiSquare,
    steps,
    derivatives: problem.derivatives === undefined ? "differences" : "exact",
  };
}
