/**
 * Where a function of one variable crosses zero.
 *
 * @module
 */

/** The stretch in which to look. */
export interface Bracket {
  readonly low: number;
  readonly high: number;
}

/** When to stop looking. */
export interface RootOptions {
  /** Width of the final bracket relative to the root (default 4e-16: as close as doubles allow). */
  readonly relativeTolerance?: number;
  /** Absolute width of the final bracket (default 0). */
  readonly absoluteTolerance?: number;
}

function finiteValue(f: (x: number) => number, x: number): number {
  const value = f(x);
  if (Number.isNaN(value)) {
    throw new RangeError(`Cannot look for a root as the function has no value at ${x}`);
  }
  return value;
}

/**
 * The root between two points where a function has opposite signs.
 *
 * Brent's method: inverse quadratic or secant steps while they help, halving when they don't, so it can't leave the
 * bracket and can't be slower than halving by more than a constant factor. Of several roots it finds one; `allRoots`
 * looks for them all.
 *
 * Source: Brent, Algorithms for Minimization without Derivatives, 1973, chapter 4 (the algorithm from memory).
 *
 * @param f function of one variable, any unit
 * @param bracket two points at which `f` differs in sign (or is zero)
 * @param options tolerances, in the unit of the argument
 * @returns the argument at which `f` is zero
 * @throws RangeError when the ends have the same sign, or `f` is not a number somewhere on the way
 * @example The speed at which two drags are equal
 * ```ts
 * import { bracketedRoot } from "lakeproof/numeric/roots.ts";
 * import { assertAlmostEqual } from "lakeproof/base/assert.ts";
 * const speed = bracketedRoot((v) => 1.2 * v ** 2 - 480 / v ** 2, { low: 1, high: 20 });
 * assertAlmostEqual(speed, 4.4721, 1e-4);
 * ```
 */
export function bracketedRoot(
  f: (x: number) => number,
  bracket: Bracket,
  options: RootOptions = {},
): number {
  const relative = Math.max(options.relativeTolerance ?? 0, 2 * Number.EPSILON);
  const absolute = options.absoluteTolerance ?? 0;
  let a = bracket.low;
  let b = bracket.high;
  let fa = finiteValue(f, a);
  let fb = finiteValue(f, b);
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (fa > 0 === fb > 0) {
    throw new RangeError(
      `Cannot find a root between ${a} and ${b} as the function has one sign at both: ${fa} and ${fb}`,
    );
  }
  // b is the best point so far, c the other end of the bracket, a the point before b.
  let c = a;
  let fc = fa;
  let step = b - a;
  let previous = step;
  for (let iteration = 0; iteration < 400; iteration++) {
    if (Math.abs(fc) < Math.abs(fb)) {
      [a, b, c] = [b, c, b];
      [fa, fb, fc] = [fb, fc, fb];
    }
    const tolerance = Math.max(relative * Math.abs(b), absolute) / 2;
    const half = (c - b) / 2;
    if (fb === 0 || Math.abs(half) <= tolerance || b + half === b || b + half === c) return b;
    let accepted = false;
    if (Math.abs(previous) >= tolerance && Math.abs(fa) > Math.abs(fb)) {
      const s = fb / fa;
      let p: number;
      let q: number;
      if (a === c) {
        p = 2 * half * s;
        q = 1 - s;
      } else {
        const r = fb / fc;
        const t = fa / fc;
        p = s * (2 * half * t * (t - r) - (b - a) * (r - 1));
        q = (t - 1) * (r - 1) * (s - 1);
      }
      if (p > 0) q = -q;
      p = Math.abs(p);
      if (
        2 * p < 3 * half * q - Math.abs(tolerance * q) && p < Math.abs(0.5 * previous * q)
      ) {
        previous = step;
        step = p / q;
        accepted = true;
      }
    }
    if (!accepted) {
      step = half;
      previous = half;
    }
    a = b;
    fa = fb;
    const least = tolerance > 0 ? tolerance : Math.abs(b) * Number.EPSILON;
    b += Math.abs(step) > least ? step : Math.sign(half) * least;
    fb = finiteValue(f, b);
    if (fb > 0 === fc > 0) {
      c = a;
      fc = fa;
      step = b - a;
      previous = step;
    }
  }
  return b;
}

/**
 * All roots that a scan of equal steps can see.
 *
 * Each step over which the sign changes is refined to one root; two roots within one step stay unseen, and so does a
 * touch without crossing, unless a scan point falls on it. More `steps` see finer.
 *
 * @param f function of one variable
 * @param bracket where to look
 * @param options number of scan steps (default 200) and tolerances
 * @returns roots in increasing order, none twice
 * @throws RangeError when `f` is not a number somewhere in the bracket
 * @example
 * ```ts
 * import { allRoots } from "lakeproof/numeric/roots.ts";
 * import { assertAlmostEqual } from "lakeproof/base/assert.ts";
 * const roots = allRoots((x) => (x - 1) * (x - 2), { low: 0, high: 5.03 });
 * assertAlmostEqual(roots[0]!, 1, 1e-12);
 * assertAlmostEqual(roots[1]!, 2, 1e-12);
 * ```
 */
export function allRoots(
  f: (x: number) => number,
  bracket: Bracket,
  options: RootOptions & { readonly steps?: number } = {},
): number[] {
  const steps = options.steps ?? 200;
  const roots: number[] = [];
  let left = bracket.low;
  let atLeft = finiteValue(f, left);
  if (atLeft === 0) roots.push(left);
  for (let step = 1; step <= steps; step++) {
    const right = step === steps
      ? bracket.high
      : bracket.low + (bracket.high - bracket.low) * step / steps;
    const atRight = finiteValue(f, right);
    if (atRight === 0) roots.push(right);
    else if (atLeft !== 0 && atLeft > 0 !== atRight > 0) {
      roots.push(bracketedRoot(f, { low: left, high: right }, options));
    }
    left = right;
    atLeft = atRight;
  }
  return roots;
}
