/**
 * How a craft flies steadily in water and in air.
 *
 * @module
 */
import { air } from "./air.ts";
import { weightInWater } from "./buoyancy.ts";
import { type DragParts, steadyBuildUp } from "./planform-drag.ts";
import type { SteadyCraft } from "./steady-craft-numbers.ts";
import { strutVolume } from "./strut-drag.ts";
import { water } from "./water.ts";

export type { SteadyCraft };

/** One steady state. */
export interface SteadyState extends DragParts {
  /** m/s */
  readonly speed: number;
  /** N along the line. */
  readonly tension: number;
  /** W that the pull gives to the craft: drag times speed. */
  readonly power: number;
}

/** A craft in one medium at one depth. */
export interface SteadyFlight {
  readonly craft: SteadyCraft;
  readonly medium: "water" | "air";
  /** N, the whole weight. */
  readonly weight: number;
  /** N */
  readonly buoyancy: number;
  /** N: weight less buoyancy. */
  readonly load: number;
  /** m; `Infinity` in air. */
  readonly depth: number;
  /** kg/m3 */
  readonly density: number;
  /** m2/s */
  readonly kinematicViscosity: number;
  /** rad; 0 in air. */
  readonly lineAngle: number;
  /** Forces at a speed in m/s; `null` where the line pulls down more than the wing can lift. */
  at(speed: number): SteadyState | null;
  /** Largest lift coefficient at a speed in m/s. */
  largestLift(speed: number): number;
}

interface MediumNumbers {
  readonly medium: "water" | "air";
  readonly density: number;
  readonly kinematicViscosity: number;
  readonly depth: number;
  readonly airDensity: number;
  readonly lineAngle: number;
  readonly headwind: number;
  readonly strutCount: number;
  readonly airDragArea: number;
  readonly extraDragArea: number;
  readonly phi?: (speed: number) => number;
}

function flightIn(craft: SteadyCraft, numbers: MediumNumbers): SteadyFlight {
  const { density, kinematicViscosity, depth, lineAngle, headwind } = numbers;
  const { gravity } = craft;
  const struts = {
    count: numbers.strutCount,
    chord: craft.strutChord,
    thickness: craft.strutThickness,
  };
  const volume = craft.wingVolume + (struts.count === 0 ? 0 : strutVolume(struts, depth));
  const load = weightInWater({ mass: craft.mass, wetVolume: volume, density, gravity });
  const chord = craft.area / craft.span;
  const build = steadyBuildUp({
    span: craft.span,
    area: craft.area,
    thicknessRatio: craft.thicknessRatio,
    struts,
    extraDragArea: numbers.extraDragArea,
    airDragArea: numbers.airDragArea,
    spanEfficiency: craft.spanEfficiency,
    viscousLiftFactor: craft.viscousLiftFactor,
    liftCoefficientOfLeastDrag: craft.liftCoefficientOfLeastDrag,
    transitionReynolds: craft.transitionReynolds,
    roughness: craft.roughness,
    departures: craft,
  }, {
    density,
    kinematicViscosity,
    gravity,
    depth,
    airDensity: numbers.airDensity,
    ...(numbers.phi === undefined ? {} : { phi: numbers.phi }),
  });
  const level = Math.cos(lineAngle);
  return {
    craft,
    medium: numbers.medium,
    weight: craft.mass * gravity,
    buoyancy: craft.mass * gravity - load,
    load,
    depth,
    density,
    kinematicViscosity,
    lineAngle,
    at(speed) {
      const parts = build({ speed, weightInWater: load, lineAngle, headwind });
      if (parts === null) return null;
      const { total } = parts;
      return { ...parts, speed, tension: total / level, power: total * speed };
    },
    largestLift(speed) {
      const reynolds = speed * chord / kinematicViscosity;
      return craft.largestLiftCoefficient * (reynolds / craft.liftReference) ** craft.liftExponent;
    },
  };
}

/**
 * A craft flying in water at one depth.
 *
 * Lift carries what the water and the line do not: `L = W - B - D tan(theta)`. Not in it: the board while it touches the water, fuselage
 * and stabiliser (give an extra drag area), air drawn down, waves of the lake, a near bottom, a wing that bends.
 *
 * Source: balance of forces; parts of the drag as in `planform-drag.ts`, water and air as in `water.ts` and `air.ts`.
 *
 * @param craft all numbers
 * @param depth m of the wing under the surface; the running depth unless said otherwise
 * @param phi free-surface factor of this span and depth by speed, where someone holds a faster table of it
 * @returns the flight
 * @throws RangeError where a number is outside what its formula knows
 *
 * @example
 * ```ts
 * import { flightInWater } from "lakeproof/model/steady-craft.ts";
 * import { USUAL_CRAFT } from "lakeproof/model/usual-craft.ts";
 * const flight = flightInWater({ ...USUAL_CRAFT, mass: 88, span: 0.9, area: 0.15, wingVolume: 0.0016 });
 * const { tension } = flight.at(4.5)!;
 * if (!(tension > 60 && tension < 68)) throw new Error(`${tension} N`);
 * ```
 */
export function flightInWater(
  craft: SteadyCraft,
  depth = craft.runningDepth,
  phi?: (speed: number) => number,
): SteadyFlight {
  const { temperature, salinity, densityFactor } = craft;
  const own = water({ temperature, salinity });
  const density = own.density * densityFactor;
  return flightIn(craft, {
    medium: "water",
    density,
    kinematicViscosity: own.viscosity / density,
    depth,
    airDensity: craft.airDragArea === 0 ? 0 : air(craft.altitude).density,
    lineAngle: craft.lineAngle,
    headwind: craft.headwind,
    strutCount: craft.strutCount,
    airDragArea: craft.airDragArea,
    extraDragArea: craft.extraDragArea,
    ...(phi === undefined ? {} : { phi }),
  });
}

/**
 * The same wing with the same load in air: no surface, no struts, spray, junction or rider in the wind; buoyancy is that of air.
 *
 * A bare wing under a standing rider's weight, to compare with, not an aircraft: gravity stays that of the water.
 *
 * Source: as for {@link flightInWater}, with phi = 1.
 *
 * @param craft all numbers
 * @param altitude m above the sea, -2 to 11 km
 * @returns the flight
 * @throws RangeError where a number is outside what its formula knows
 */
export function flightInAir(craft: SteadyCraft, altitude: number): SteadyFlight {
  const { density, kinematicViscosity } = air(altitude);
  return flightIn(craft, {
    medium: "air",
    density,
    kinematicViscosity,
    depth: Infinity,
    airDensity: 0,
    lineAngle: 0,
    headwind: 0,
    strutCount: 0,
    airDragArea: 0,
    extraDragArea: 0,
  });
}
