/**
 * Forces of a steady flight over many speeds at once.
 *
 * @module
 */
import type { SteadyFlight, SteadyState } from "./steady-craft.ts";

/** What a curve holds at each speed, all in SI. */
const CURVE_PARTS = [
  "wingFriction",
  "viscousLift",
  "inducedAndWave",
  "struts",
  "spray",
  "junction",
  "extra",
  "air",
  "wing",
  "total",
  "tension",
  "power",
  "liftCoefficient",
  "reynolds",
  "phi",
] as const satisfies readonly (keyof SteadyState)[];

/** One of them. */
export type CurvePart = typeof CURVE_PARTS[number];

/** One array a part, all of the same length. */
export type SteadyCurve =
  & Readonly<Record<CurvePart, Float64Array>>
  & { readonly speed: Float64Array };

/**
 * Forces at many speeds.
 *
 * Speeds at which there is no steady flight (a line that pulls down more than the wing lifts) are left out, so no number in it is a
 * blank.
 *
 * @param flight at one depth
 * @param speeds m/s
 * @returns the speeds that fly, and the forces there
 *
 * @example
 * ```ts
 * import { flightInWater } from "lakeproof/model/steady-craft.ts";
 * import { evenSpeeds, steadyCurve } from "lakeproof/model/steady-curve.ts";
 * import { USUAL_CRAFT } from "lakeproof/model/usual-craft.ts";
 * const curve = steadyCurve(flightInWater(USUAL_CRAFT), evenSpeeds(3.3, 8, 200));
 * if (curve.total.length !== 200) throw new Error("one force a speed");
 * ```
 */
export function steadyCurve(flight: SteadyFlight, speeds: ArrayLike<number>): SteadyCurve {
  const curve = Object.fromEntries(
    ["speed", ...CURVE_PARTS].map((part) => [part, new Float64Array(speeds.length)]),
  ) as Record<CurvePart | "speed", Float64Array>;
  let count = 0;
  for (let i = 0; i < speeds.length; i++) {
    const state = flight.at(speeds[i]!);
    if (state === null) continue;
    curve.speed[count] = state.speed;
    for (const part of CURVE_PARTS) curve[part][count] = state[part];
    count += 1;
  }
  if (count === speeds.length) return curve;
  return Object.fromEntries(
    Object.entries(curve).map(([part, values]) => [part, values.slice(0, count)]),
  ) as unknown as SteadyCurve;
}

/**
 * Speeds at even distances.
 *
 * @param from m/s
 * @param to m/s
 * @param count 2 or more
 * @returns m/s, both ends included
 */
export function evenSpeeds(from: number, to: number, count: number): Float64Array {
  return Float64Array.from({ length: count }, (_, i) => from + (to - from) * i / (count - 1));
}
