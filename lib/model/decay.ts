/**
 * How far and how long a craft glides while it slows down under the three-term drag law: closed form.
 *
 * @module
 */
import type { DragLaw } from "./drag-law.ts";

/** A glide from one speed to a lower one. */
export interface Decay {
  /** m/s */
  readonly launchSpeed: number;
  /** m/s, at most the launch speed. */
  readonly endSpeed: number;
  /** kg, carried mass plus the water that moves along. */
  readonly effectiveMass: number;
  /** N of thrust that a steady sink gives: weight in water times height lost over distance; 0 for level. */
  readonly sinkThrust?: number;
}

/** Distance and time of a glide. */
export interface GlideLength {
  /** m */
  readonly distance: number;
  /** s */
  readonly duration: number;
}

/**
 * `atan(k y/x)/k` with k^2 of either sign or zero, the angle running on past a right angle: the one function that all
 * three branches of the discriminant share, free of cancellation between them.
 */
function arc(kSquared: number, y: number, x: number): number {
  if (kSquared > 0) {
    const k = Math.sqrt(kSquared);
    return Math.atan2(k * y, x) / k;
  }
  if (kSquared < 0) {
    const k = Math.sqrt(-kSquared);
    return Math.atanh(k * y / x) / k;
  }
  return y / x;
}

function requireDecay(law: DragLaw, glide: Decay): void {
  const { launchSpeed, endSpeed, effectiveMass, sinkThrust = 0 } = glide;
  if (!(endSpeed > 0 && launchSpeed >= endSpeed && launchSpeed < Infinity)) {
    throw new RangeError(
      `Cannot glide as the end speed must be above zero and at most the launch speed: from ${launchSpeed} to ${endSpeed} m/s`,
    );
  }
  if (!(effectiveMass > 0 && effectiveMass < Infinity)) {
    throw new RangeError(
      `Cannot glide as the effective mass must be above zero: ${effectiveMass} kg`,
    );
  }
  if (!(law.a > 0 && law.e >= 0 && Number.isFinite(law.a + law.d + law.e + sinkThrust))) {
    throw new RangeError(
      `Cannot glide as the drag law needs a above zero and e of zero or more: a ${law.a}, d ${law.d}, e ${law.e}`,
    );
  }
}

/** Whether drag less thrust stays above zero all the way, so that the end speed is reached at all. */
function slowsDown(law: DragLaw, middle: number, low: number, high: number): boolean {
  const net = (u: number) => (law.a * u + middle) * u + law.e;
  const lowest = -middle / (2 * law.a);
  return net(low) > 0 && net(high) > 0 && (lowest <= low || lowest >= high || net(lowest) > 0);
}

/**
 * Distance and time in which a craft slows from launch to end speed under `D(v) = a v^2 + d + e/v^2`.
 *
 * With `u = v^2`: `x = (m_e/2) int u du/(a u^2 + B u + e)`, `B = d - thrust of the sink`. Height lost at a steady slope only shifts
 * d. Closed in all three cases of the discriminant, and without loss of digits where they meet. Distance is along the path; for the
 * slopes of a glide that is the distance over the water to a part in a thousand. The free surface is not in it: with phi that varies along
 * the glide use `decay-by-quadrature.ts`.
 *
 * Source: integrals of rational functions, Gradshteyn and Ryzhik 2.103 and 2.161 (from memory), brought to differences of one
 * arctangent each; the parent of the check values is adaptive quadrature.
 *
 * @param law the three constants in SI
 * @param glide speeds in m/s, effective mass in kg, thrust of a steady sink in N
 * @returns distance in m and duration in s
 * @throws RangeError when the speeds, mass or law make no glide, or when drag less thrust falls to zero on the way: then the
 *   craft never slows to its end speed
 *
 * @example
 * ```ts
 * import { decay } from "lakeproof/model/decay.ts";
 * const glide = decay({ a: 0.6, d: 10, e: 2000 }, { launchSpeed: 9, endSpeed: 5, effectiveMass: 100 });
 * if (Math.abs(glide.distance - 33.574103062) > 1e-8) throw new Error(`${glide.distance} m`);
 * if (Math.abs(glide.duration - 4.752128539) > 1e-8) throw new Error(`${glide.duration} s`);
 * ```
 */
export function decay(law: DragLaw, glide: Decay): GlideLength {
  requireDecay(law, glide);
  const { launchSpeed: fast, endSpeed: slow, effectiveMass } = glide;
  const { a, e } = law;
  const middle = law.d - (glide.sinkThrust ?? 0);
  const high = fast * fast, low = slow * slow;
  if (!slowsDown(law, middle, low, high)) {
    throw new RangeError(
      `Cannot glide down to ${slow} m/s as the thrust of the sink reaches the drag on the way`,
    );
  }
  const net = (u: number) => (a * u + middle) * u + e;
  const span = high - low;
  const reciprocal = 2 * arc(
    4 * a * e - middle * middle,
    span,
    2 * e + 2 * a * low * high + middle * (low + high),
  );
  const distance = effectiveMass / (4 * a) *
    (Math.log(net(high) / net(low)) - middle * reciprocal);

  // a v^4 + B v^2 + e = a ((v^2 - r)^2 + plus v^2) = a ((v^2 + r)^2 - minus v^2), with r = sqrt(e/a).
  const r = Math.sqrt(e / a);
  const plus = 2 * r + middle / a, minus = 2 * r - middle / a;
  const product = fast * slow;
  const duration = effectiveMass / (2 * a) * (
    arc(plus, (fast - slow) * (r + product), (r - high) * (r - low) + plus * product) -
    arc(-minus, (fast - slow) * (r - product), (r + high) * (r + low) - minus * product)
  );
  return { distance, duration };
}
