/**
 * Mean drag over weight that the prior shape predicts for a glide between two speeds.
 *
 * @module
 */
import type { Craft } from "./craft.ts";

/** Nodes on (0, 1) and weights of the 8-point Gauss-Legendre rule. */
const NODES = [
  0.019855071751231884,
  0.10166676129318664,
  0.2372337950418355,
  0.4082826787521751,
  0.5917173212478249,
  0.7627662049581645,
  0.8983332387068134,
  0.9801449282487681,
] as const;
const WEIGHTS = [
  0.05061426814518813,
  0.11119051722668724,
  0.15685332293894363,
  0.18134189168918100,
  0.18134189168918100,
  0.15685332293894363,
  0.11119051722668724,
  0.05061426814518813,
] as const;

/** m/s: two readings closer than this count as this far apart, so that the mean stays defined for a pumped run. */
const LEAST_STEP = 0.02;

/**
 * Mean of drag over weight along the path, as the prior shape has it, for a glide that slows from one speed to another.
 *
 * While height pays a constant share of the drag, the path spent at each speed goes as `u/D` with `u = v^2`, so the mean
 * along the path is the harmonic mean of `f = D/W` over u: `(u0 - u1) / integral du/f`. It is not the mean over time nor
 * the drag at the mean speed. Closed form for two terms without a free surface, else 8-point Gauss-Legendre in u, good to
 * about 1e-9 for the speeds of a glide.
 *
 * Source: the decay `m v dv/dx = -D` integrated over u = v^2; Abramowitz and Stegun 1964, 25.4.30 (nodes).
 *
 * @param craft weight and prior law
 * @param from launch speed, m/s
 * @param to end speed, m/s; at most `from - 0.02` is used
 * @param induced factor on the induced term, 1 for the prior itself
 * @returns drag over weight, 1
 *
 * @example
 * ```ts
 * import { meanShape } from "lakeproof/fit/mean-shape.ts";
 *
 * const craft = { weight: 804.16, inertia: 1.055, a: 1.55, d: 0, e: 512, phi: null };
 * const mean = meanShape(craft, 4.1, 3.087, 1);
 * if (Math.abs(mean - 0.0747917) > 1e-5) throw new Error(`unexpected ${mean}`);
 * ```
 */
export function meanShape(craft: Craft, from: number, to: number, induced: number): number {
  const end = Math.min(to, from - LEAST_STEP);
  const u0 = from * from, u1 = end * end;
  const { a, d, weight, phi } = craft;
  const e = craft.e * induced;
  if (phi === null && d === 0) {
    return 2 * a * (u0 - u1) / (weight * Math.log((a * u0 * u0 + e) / (a * u1 * u1 + e)));
  }
  let sum = 0;
  for (let i = 0; i < 8; i++) {
    const u = u1 + (u0 - u1) * NODES[i]!;
    const lift = phi === null ? e : e * phi(Math.sqrt(u));
    sum += WEIGHTS[i]! * u / (a * u * u + d * u + lift);
  }
  return 1 / (weight * sum);
}
