/**
 * Where a function of one variable is least.
 *
 * @module
 */
import type { Bracket } from "./roots.ts";

/** The lowest point found. */
export interface Minimum {
  readonly at: number;
  readonly value: number;
  /** True when it is an end of the stretch, so that the function may fall further beyond. */
  readonly atEnd: boolean;
}

const GOLDEN = (3 - Math.sqrt(5)) / 2;

/**
 * The least value of a function with a single dip between two points.
 *
 * Brent's method: golden section with parabolic steps. A minimum is flat, so its place is known to about eight digits
 * only, while its value is known to nearly all. With several dips one of them is found.
 *
 * Source: Brent, Algorithms for Minimization without Derivatives, 1973, chapter 5 (the algorithm from memory).
 *
 * @param f function of one variable
 * @param bracket where to look
 * @param options `tolerance` of the place, relative to the larger end (default 1e-9)
 * @returns place and value of the minimum
 * @throws RangeError when the stretch is empty or `f` is not a number somewhere in it
 * @example The speed of least drag of 1.2 v^2 + 480 / v^2
 * ```ts
 * import { minimumBetween } from "lakeproof/numeric/minimum.ts";
 * import { assertAlmostEqual } from "lakeproof/base/assert.ts";
 * const { at, value } = minimumBetween((v) => 1.2 * v ** 2 + 480 / v ** 2, { low: 1, high: 20 });
 * assertAlmostEqual(at, 400 ** 0.25, 1e-7);
 * assertAlmostEqual(value, 48, 1e-12);
 * ```
 */
export function minimumBetween(
  f: (x: number) => number,
  bracket: Bracket,
  options: { readonly tolerance?: number } = {},
): Minimum {
  let { low: a, high: b } = bracket;
  if (!(a < b && Number.isFinite(a) && Number.isFinite(b))) {
    throw new RangeError(`Cannot look for a minimum from ${a} to ${b}: low must come first`);
  }
  const evaluate = (at: number) => {
    const value = f(at);
    if (Number.isNaN(value)) {
      throw new RangeError(`Cannot look for a minimum as the function has no value at ${at}`);
    }
    return { at, value };
  };
  const tolerance = (options.tolerance ?? 1e-9) * Math.max(Math.abs(a), Math.abs(b));
  // x is the lowest point, w the second, v the third.
  let x = evaluate(a + GOLDEN * (b - a));
  let w = x;
  let v = x;
  let step = 0;
  let before = 0;
  for (let iteration = 0; iteration < 300; iteration++) {
    const middle = (a + b) / 2;
    if (Math.abs(x.at - middle) <= 2 * tolerance - (b - a) / 2) break;
    const r = (x.at - w.at) * (x.value - v.value);
    const q = (x.at - v.at) * (x.value - w.value);
    let p = (x.at - v.at) * q - (x.at - w.at) * r;
    let bottom = 2 * (q - r);
    if (bottom > 0) p = -p;
    bottom = Math.abs(bottom);
    const parabola = Math.abs(before) > tolerance &&
      Math.abs(p) < Math.abs(0.5 * bottom * before) &&
      p > bottom * (a - x.at) && p < bottom * (b - x.at);
    if (parabola) {
      before = step;
      step = p / bottom;
      const u = x.at + step;
      if (u - a < 2 * tolerance || b - u < 2 * tolerance) {
        step = x.at < middle ? tolerance : -tolerance;
      }
    } else {
      before = (x.at < middle ? b : a) - x.at;
      step = GOLDEN * before;
    }
    const u = evaluate(
      x.at + (Math.abs(step) >= tolerance ? step : Math.sign(step) * tolerance),
    );
    if (u.value <= x.value) {
      if (u.at < x.at) b = x.at;
      else a = x.at;
      [v, w, x] = [w, x, u];
    } else {
      if (u.at < x.at) a = u.at;
      else b = u.at;
      if (u.value <= w.value || w === x) [v, w] = [w, u];
      else if (u.value <= v.value || v === x || v === w) v = u;
    }
  }
  for (const end of [evaluate(bracket.low), evaluate(bracket.high)]) {
    if (end.value < x.value) x = end;
  }
  return { ...x, atEnd: x.at === bracket.low || x.at === bracket.high };
}
