/**
 * How far and how long a craft glides while it slows down under any law of drag over speed: adaptive quadrature.
 *
 * @module
 */
import { gaussLegendre } from "../numeric/gauss-legendre.ts";
import type { Decay, GlideLength } from "./decay.ts";

/** Halvings after which a stretch of speeds counts as impossible to integrate. */
const MOST_HALVINGS = 40;

/**
 * Distance and time in which a craft slows from launch to end speed under a drag that depends on speed in any smooth way.
 *
 * For wide wings at low speed, where the free-surface factor moves along the glide and the three-term law does not hold. Where it
 * does, `decay` gives the same in closed form.
 *
 * Source: equation of motion `m_e v dv/dx = -(D - T)`; Gauss-Legendre with 10 points on stretches that are halved until the halves
 * agree with the whole.
 *
 * @param drag N from speed in m/s, the free surface included
 * @param glide speeds in m/s, effective mass in kg, thrust of a steady sink in N
 * @param tolerance largest relative difference between whole and halves, 1
 * @returns distance in m and duration in s
 * @throws RangeError when speeds or mass make no glide, when drag less thrust is not above zero somewhere on the way, or when the
 *   integrals don't settle
 *
 * @example
 * ```ts
 * import { decayByQuadrature } from "lakeproof/model/decay-by-quadrature.ts";
 * import { ellipticLinePhi } from "lakeproof/model/free-surface.ts";
 * const phi = ellipticLinePhi({ span: 1.2, depth: 0.35 });
 * const drag = (v: number) => 1.6 * v * v + 380 * phi(v, 9.81) / (v * v);
 * const { distance } = decayByQuadrature(drag, { launchSpeed: 4.2, endSpeed: 3.1, effectiveMass: 86, sinkThrust: 18 });
 * if (Math.abs(distance - 7.93) > 0.005) throw new Error(`${distance} m`);
 * ```
 */
export function decayByQuadrature(
  drag: (speed: number) => number,
  glide: Decay,
  tolerance = 1e-12,
): GlideLength {
  const { launchSpeed, endSpeed, effectiveMass, sinkThrust = 0 } = glide;
  if (
    !(endSpeed > 0 && launchSpeed >= endSpeed && launchSpeed < Infinity && effectiveMass > 0 &&
      Number.isFinite(effectiveMass + sinkThrust))
  ) {
    throw new RangeError(
      `Cannot glide as speeds must fall and stay above zero and the mass too: from ${launchSpeed} to ${endSpeed} m/s, ${effectiveMass} kg`,
    );
  }
  const { nodes, weights } = gaussLegendre(10);
  const stretch = (from: number, to: number): GlideLength => {
    let distance = 0, duration = 0;
    for (let i = 0; i < nodes.length; i++) {
      const v = from + (to - from) * nodes[i]!;
      const net = drag(v) - sinkThrust;
      if (!(net > 0 && net < Infinity)) {
        throw new RangeError(
          `Cannot glide down to ${endSpeed} m/s as drag less the thrust of the sink is ${net} N at ${v} m/s`,
        );
      }
      const time = weights[i]! * effectiveMass / net;
      duration += time;
      distance += time * v;
    }
    return { distance: distance * (to - from), duration: duration * (to - from) };
  };
  const refine = (from: number, to: number, whole: GlideLength, left: number): GlideLength => {
    const middle = (from + to) / 2;
    const low = stretch(from, middle), high = stretch(middle, to);
    const sum = {
      distance: low.distance + high.distance,
      duration: low.duration + high.duration,
    };
    if (Math.abs(sum.distance - whole.distance) <= tolerance * sum.distance) return sum;
    if (left === 0) {
      throw new RangeError(
        `Cannot glide from ${to} to ${from} m/s as drag less thrust is too close to zero there`,
      );
    }
    const one = refine(from, middle, low, left - 1);
    const two = refine(middle, to, high, left - 1);
    return { distance: one.distance + two.distance, duration: one.duration + two.duration };
  };
  if (launchSpeed === endSpeed) return { distance: 0, duration: 0 };
  return refine(endSpeed, launchSpeed, stretch(endSpeed, launchSpeed), MOST_HALVINGS);
}
