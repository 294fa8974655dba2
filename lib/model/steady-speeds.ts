/**
 * Speeds of a craft in steady flight: the slowest, and those that a pull can hold.
 *
 * @module
 */
import { allRoots } from "../numeric/roots.ts";
import { stallSpeed } from "./stall.ts";
import type { SteadyFlight } from "./steady-craft.ts";

/** The slowest speed, or why there is none. */
export type SlowestSpeed =
  | { readonly kind: "speed"; readonly speed: number }
  /** The water carries it all. */
  | { readonly kind: "floats" }
  /** No speed lifts it: the line pulls down more than the wing lifts. */
  | { readonly kind: "none" }
  /** The line carries it at any speed. */
  | { readonly kind: "hangs" };

/** Points of the scan for the slowest speed on a sloping line. */
const SLOWEST_SCAN = 120;

/** Stands in for the logarithm of a lift that is not to be had; any number far from zero does. */
const FAR = 50;

/**
 * The slowest speed of steady flight with the board clear of the water, at a share of the largest lift coefficient.
 *
 * With share 1 at running depth it is the stall speed: what a launch from a jetty must exceed. With the usable share at takeoff depth it
 * is the takeoff speed. On a level line it has a closed form; on a sloping one the line carries or presses, and the balance is solved
 * numerically. The needed lift coefficient falls with speed, so there is one root or none.
 *
 * Source: `2 (W - B - D tan(theta))/(rho S v^2) = share C_Lmax (Re/Re_ref)^p`.
 *
 * @param flight in water or air, at one depth
 * @param share of the largest lift coefficient, 1
 * @returns speed in m/s, or why there is none
 *
 * @example
 * ```ts
 * import { flightInWater } from "lakeproof/model/steady-craft.ts";
 * import { slowestSpeed } from "lakeproof/model/steady-speeds.ts";
 * import { USUAL_CRAFT } from "lakeproof/model/usual-craft.ts";
 * const stall = slowestSpeed(flightInWater(USUAL_CRAFT));
 * if (!(stall.kind === "speed" && stall.speed > 3 && stall.speed < 3.6)) throw new Error(JSON.stringify(stall));
 * ```
 */
export function slowestSpeed(flight: SteadyFlight, share = 1): SlowestSpeed {
  const { craft, load, density, kinematicViscosity, lineAngle } = flight;
  if (!(load > 0)) return { kind: "floats" };
  const level = stallSpeed({
    weightInWater: load,
    density,
    area: craft.area,
    largestLiftCoefficient: craft.largestLiftCoefficient,
    usableShare: share,
  }, {
    kinematicViscosity,
    chord: craft.area / craft.span,
    reference: craft.liftReference,
    exponent: craft.liftExponent,
  });
  if (lineAngle === 0) return { kind: "speed", speed: level };
  const excess = (logSpeed: number) => {
    const speed = Math.exp(logSpeed);
    const state = flight.at(speed);
    if (state === null) return FAR;
    if (!(state.liftCoefficient > 0)) return -FAR;
    return Math.log(state.liftCoefficient / (share * flight.largestLift(speed)));
  };
  const [low, high] = [Math.log(level / 4), Math.log(level * 6)];
  const roots = allRoots(excess, { low, high }, { steps: SLOWEST_SCAN });
  const slowest = roots.find((root) => Math.abs(excess(root)) < 1);
  if (slowest !== undefined) return { kind: "speed", speed: Math.exp(slowest) };
  return { kind: excess(high) > 0 ? "none" : "hangs" };
}

/** Over how many times the slowest speed is looked. */
export const REACH = 6;

/**
 * The speeds that a pull or a power can hold: every stretch at which it is enough.
 *
 * A hump makes two stretches of one. Faster than six times the slowest speed is not looked at.
 *
 * @param flight at one depth
 * @param slowest m/s, its stall speed
 * @param available `tension` in N along the line, or `power` in W
 * @param options `points` of the scan; 400 unless said otherwise
 * @returns stretches in m/s from slow to fast; none where it is never enough
 *
 * @example
 * ```ts
 * import { flightInWater } from "lakeproof/model/steady-craft.ts";
 * import { speedsHeld } from "lakeproof/model/steady-speeds.ts";
 * import { USUAL_CRAFT } from "lakeproof/model/usual-craft.ts";
 * const held = speedsHeld(flightInWater(USUAL_CRAFT), 3.3, { tension: 70 });
 * if (held.length !== 1) throw new Error(JSON.stringify(held));
 * ```
 */
export function speedsHeld(
  flight: SteadyFlight,
  slowest: number,
  available: { readonly tension: number } | { readonly power: number },
  options: { readonly points?: number } = {},
): [from: number, to: number][] {
  const excess = (logSpeed: number) => {
    const state = flight.at(Math.exp(logSpeed));
    if (state === null) return Number.MAX_VALUE;
    return "tension" in available
      ? state.tension - available.tension
      : state.power - available.power;
  };
  const bracket = { low: Math.log(slowest), high: Math.log(slowest * REACH) };
  const roots = allRoots(excess, bracket, { steps: options.points ?? 400 });
  const ends = [bracket.low, ...roots.filter((one) => one > bracket.low), bracket.high];
  const held: [number, number][] = [];
  for (let i = 0; i + 1 < ends.length; i++) {
    const [from, to] = [ends[i]!, ends[i + 1]!];
    if (!(to > from) || !(excess((from + to) / 2) <= 0)) continue;
    held.push([Math.exp(from), Math.exp(to)]);
  }
  return held;
}
