/**
 * Where the drag, the power or the wing's own drag over lift of a craft in steady flight is least.
 *
 * @module
 */
import { bracketedRoot } from "../numeric/roots.ts";
import { minimumBetween } from "../numeric/minimum.ts";
import type { SteadyFlight, SteadyState } from "./steady-craft.ts";
import { REACH } from "./steady-speeds.ts";

/** What may be least: drag of the whole craft in N, power in W, drag over lift of the wing alone. */
export type Least = "total" | "power" | "wingDragOverLift";

/** What stands in where there is no steady flight: more than anything that flies needs. */
const NEVER = Number.MAX_VALUE;

function valueOf(state: SteadyState | null, of: Least): number {
  if (state === null) return NEVER;
  return of === "wingDragOverLift" ? state.wing / state.lift : state[of];
}

/** A scan over speed, from the slowest up. */
export interface SpeedScan {
  readonly flight: SteadyFlight;
  /** m/s, rising; the first is the slowest speed. */
  readonly speeds: Float64Array;
  readonly values: Readonly<Record<Least, Float64Array>>;
}

/** A dip over speed. */
export interface Dip {
  /** m/s */
  readonly speed: number;
  /** N, W or 1. */
  readonly value: number;
  /** True where it is not a dip but the slowest speed itself: slower would need less, and does not fly. */
  readonly atStall: boolean;
}

/**
 * Looks at a craft from its slowest speed to six times that, at even shares.
 *
 * @param flight at one depth
 * @param slowest m/s, its stall speed
 * @param points how many speeds; 200 unless said otherwise
 * @returns what {@link dips} looks through
 */
export function scanSpeeds(flight: SteadyFlight, slowest: number, points = 200): SpeedScan {
  const speeds = new Float64Array(points);
  const values = {
    total: new Float64Array(points),
    power: new Float64Array(points),
    wingDragOverLift: new Float64Array(points),
  };
  for (let i = 0; i < points; i++) {
    speeds[i] = slowest * REACH ** (i / (points - 1));
    const state = flight.at(speeds[i]!);
    values.total[i] = valueOf(state, "total");
    values.power[i] = valueOf(state, "power");
    values.wingDragOverLift[i] = valueOf(state, "wingDragOverLift");
  }
  return { flight, speeds, values };
}

/** Share of the speed between the points of a central difference. */
const STEP = 1e-5;

/**
 * Every dip from the slowest speed up, the lowest first.
 *
 * A wide wing near the surface has a hump in its drag, so there may be two: each is found by a scan and refined. "At the slowest speed
 * itself" is a frequent and honest answer for power. Friction has a kink where it turns turbulent, at another speed on the wing than on
 * the struts; a search by slope alone can stick there.
 *
 * @param scan of a craft
 * @param of what should be least
 * @param tolerance of the speed, relative; 1e-12 unless said otherwise
 * @returns dips by value, at least one
 *
 * @example
 * ```ts
 * import { flightInWater } from "lakeproof/model/steady-craft.ts";
 * import { dips, scanSpeeds } from "lakeproof/model/steady-dips.ts";
 * import { USUAL_CRAFT } from "lakeproof/model/usual-craft.ts";
 * const [least] = dips(scanSpeeds(flightInWater(USUAL_CRAFT), 3.3), "total");
 * if (!(least!.speed > 4 && least!.speed < 6)) throw new Error(`${least!.speed} m/s`);
 * ```
 */
export function dips({ flight, speeds, values }: SpeedScan, of: Least, tolerance = 1e-12): Dip[] {
  const scanned = values[of];
  const last = scanned.length - 1;
  const at = (speed: number) => valueOf(flight.at(speed), of);
  const slope = (speed: number) => at(speed * (1 + STEP)) - at(speed * (1 - STEP));
  const found: Dip[] = [];
  if (scanned[0]! < scanned[1]!) {
    found.push({ speed: speeds[0]!, value: scanned[0]!, atStall: true });
  }
  for (let i = 1; i < last; i++) {
    if (!(scanned[i]! <= scanned[i - 1]! && scanned[i]! < scanned[i + 1]!)) continue;
    const bracket = { low: speeds[i - 1]!, high: speeds[i + 1]! };
    const speed = slope(bracket.low) < 0 && slope(bracket.high) > 0
      ? bracketedRoot(slope, bracket, { relativeTolerance: tolerance })
      : minimumBetween(at, bracket, { tolerance: Math.max(1e-9, tolerance) }).at;
    found.push({ speed, value: at(speed), atStall: false });
  }
  if (found.length === 0) {
    found.push({ speed: speeds[last]!, value: scanned[last]!, atStall: false });
  }
  return found.sort((a, b) => a.value - b.value);
}
