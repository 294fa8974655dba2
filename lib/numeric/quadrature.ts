/**
 * The integral of a function, with an error estimate, to a stated tolerance or not at all.
 *
 * @module
 */
import type { Result } from "../base/quantity.ts";

// Nodes on (0, 1] of the half interval and weights of the 15-point Kronrod rule; every second node belongs to the
// 7-point Gauss rule. Source: Piessens and others, QUADPACK, 1983, routine QK15.
const NODES = [
  0.991455371120812639206854697526329,
  0.949107912342758524526189684047851,
  0.864864423359769072789712788640926,
  0.741531185599394439863864773280788,
  0.586087235467691130294144691693013,
  0.405845151377397166906606412076961,
  0.207784955007898467600689403773245,
  0,
] as const;
const KRONROD = [
  0.022935322010529224963732008058970,
  0.063092092629978553290700663189204,
  0.104790010322250183839876322541518,
  0.140653259715525918745189590510238,
  0.169004726639267902826583426598550,
  0.190350578064785409913256402421014,
  0.204432940075298892414161999234649,
  0.209482141084727828012999174891714,
] as const;
const GAUSS = [
  0.129484966168869693270611432679082,
  0.279705391489276667901467771423780,
  0.381830050505118944950369775488975,
  0.417959183673469387755102040816327,
] as const;

/** An integral. */
export interface Integral {
  readonly value: number;
  /** Estimated absolute error; usually far too large rather than too small. */
  readonly error: number;
  readonly evaluations: number;
}

/** When to be content, and when to give up. */
export interface QuadratureOptions {
  /** Default 1e-10. */
  readonly relativeTolerance?: number;
  /** Default 0. */
  readonly absoluteTolerance?: number;
  /** Most pieces the stretch is cut into (default 500). */
  readonly mostPieces?: number;
}

interface Piece {
  readonly low: number;
  readonly high: number;
  readonly value: number;
  readonly error: number;
  /** Integral of the absolute value: the scale of rounding. */
  readonly size: number;
}

function measure(f: (x: number) => number, low: number, high: number): Piece {
  const centre = (low + high) / 2;
  const half = (high - low) / 2;
  let kronrod = 0;
  let gauss = 0;
  let size = 0;
  NODES.forEach((node, i) => {
    const sides = node === 0 ? [centre] : [centre - half * node, centre + half * node];
    for (const x of sides) {
      const value = f(x);
      if (!Number.isFinite(value)) {
        throw new RangeError(`Cannot integrate as the function gives ${value} at ${x}`);
      }
      kronrod += KRONROD[i]! * value;
      size += KRONROD[i]! * Math.abs(value);
      if (i % 2 === 1) gauss += GAUSS[(i - 1) / 2]! * value;
    }
  });
  return {
    low,
    high,
    value: half * kronrod,
    // The plain difference, which belongs to the 7-point rule: cautious for the 15-point value that is returned.
    error: Math.abs(half * (kronrod - gauss)),
    size: half * size,
  };
}

/** Maps a stretch with an infinite end onto a finite one. */
function finite(f: (x: number) => number, low: number, high: number) {
  if (Number.isFinite(low) && Number.isFinite(high)) return { f, low, high };
  if (Number.isFinite(low)) {
    return { f: (t: number) => f(low + t / (1 - t)) / (1 - t) ** 2, low: 0, high: 1 };
  }
  if (Number.isFinite(high)) {
    return { f: (t: number) => f(high - t / (1 - t)) / (1 - t) ** 2, low: 0, high: 1 };
  }
  return {
    f: (t: number) => f(t / (1 - t * t)) * (1 + t * t) / (1 - t * t) ** 2,
    low: -1,
    high: 1,
  };
}

/**
 * Integrates a function between two limits, either of which may be infinite.
 *
 * The stretch is cut where the estimated error is largest until the sum of errors is within tolerance. The ends
 * themselves are never asked for, so a function may be infinite there, if its integral is not.
 *
 * Source: Piessens, de Doncker-Kapenga, Überhuber and Kahaner, QUADPACK, 1983.
 *
 * @param f function of one variable
 * @param limits from low to high, low first
 * @param options tolerances and the most pieces
 * @returns integral, error estimate and evaluations, or the reason why the tolerance was not reached
 * @throws RangeError when the limits are out of order, or `f` gives no finite number inside
 * @example
 * ```ts
 * import { integrate } from "lakeproof/numeric/quadrature.ts";
 * import { assertAlmostEqual } from "lakeproof/base/assert.ts";
 * const bell = integrate((x) => Math.exp(-x * x), { low: -Infinity, high: Infinity });
 * if (!bell.ok) throw new Error(bell.reason);
 * assertAlmostEqual(bell.value, Math.sqrt(Math.PI), 1e-10);
 * ```
 */
export function integrate(
  f: (x: number) => number,
  limits: { readonly low: number; readonly high: number },
  options: QuadratureOptions = {},
): Result<Integral> {
  if (!(limits.low <= limits.high)) {
    throw new RangeError(`Cannot integrate from ${limits.low} to ${limits.high}: low comes first`);
  }
  if (limits.low === limits.high) return { ok: true, value: 0, error: 0, evaluations: 0 };
  const relative = options.relativeTolerance ?? 1e-10;
  const absolute = options.absoluteTolerance ?? 0;
  const mostPieces = options.mostPieces ?? 500;
  const mapped = finite(f, limits.low, limits.high);
  const pieces = [measure(mapped.f, mapped.low, mapped.high)];
  let evaluations = 15;
  const total = (of: "value" | "error" | "size") => pieces.reduce((sum, one) => sum + one[of], 0);
  for (;;) {
    const value = total("value");
    const error = total("error");
    // Nothing can be better than the rounding of the values that are added up.
    const floor = 50 * Number.EPSILON * total("size");
    if (error <= Math.max(absolute, relative * Math.abs(value), floor)) {
      return { ok: true, value, error: Math.max(error, floor / 50), evaluations };
    }
    let worst = 0;
    pieces.forEach((one, i) => {
      if (one.error > pieces[worst]!.error) worst = i;
    });
    const { low, high } = pieces[worst]!;
    const middle = (low + high) / 2;
    if (pieces.length >= mostPieces || middle <= low || middle >= high) {
      return {
        ok: false,
        reason: `the integral is known to ${error} only, after ${evaluations} evaluations`,
      };
    }
    pieces.splice(worst, 1, measure(mapped.f, low, middle), measure(mapped.f, middle, high));
    evaluations += 30;
  }
}
