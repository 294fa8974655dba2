/**
 * Mean drag over weight that the prior shape predicts for a glide between two speeds.
 *
 * @module
 */
import { gaussLegendre } from "../numeric/gauss-legendre.ts";
import type { GlidingCraft } from "./gliding-craft.ts";

/** Eight points on (0, 1). */
const RULE = gaussLegendre(8);
const NODES = RULE.nodes;
const WEIGHTS = RULE.weights;

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
 * Source: the decay `m v dv/dx = -D` integrated over u = v^2.
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
export function meanShape(craft: GlidingCraft, from: number, to: number, induced: number): number {
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
