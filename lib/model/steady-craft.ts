/**
 * A craft, its load and the water around it as one record of numbers, and how it flies steadily in water and in air.
 *
 * One record, because everything that is asked of it (a moved control, a drawn doubt, a rougher finish) is the same record with one
 * number changed.
 *
 * @module
 */
import { air } from "./air.ts";
import { weightInWater } from "./buoyancy.ts";
import { type DragParts, steadyBuildUp } from "./planform-drag.ts";
import { strutVolume } from "./strut-drag.ts";
import { water } from "./water.ts";

/** All numbers of a steady flight, SI. */
export interface SteadyCraft {
  /** kg, all that flies. */
  readonly mass: number;
  /** m, tip to tip. */
  readonly span: number;
  /** m2, projected. */
  readonly area: number;
  /** m3 of the wing alone; struts come on top by their depth. */
  readonly wingVolume: number;
  /** Thickness over chord of the wing, 1. */
  readonly thicknessRatio: number;
  /** Largest lift coefficient of the wing (about nine tenths of its section's) at the Reynolds number beside it, 1. */
  readonly largestLiftCoefficient: number;
  /** Reynolds number at which it is stated, 1. */
  readonly liftReference: number;
  /** Power of the Reynolds number that it grows with, 1. */
  readonly liftExponent: number;
  /** Share of it that a takeoff uses, 1. */
  readonly usableShare: number;
  readonly strutCount: number;
  /** m */
  readonly strutChord: number;
  /** m */
  readonly strutThickness: number;
  /** m of the wing under the surface when running. */
  readonly runningDepth: number;
  /** m of it when the board has just come clear: the deepest that the wing ever flies. */
  readonly takeoffDepth: number;
  /** Span efficiency of the loading, 1. */
  readonly spanEfficiency: number;
  /** Growth of section drag with lift, 1. */
  readonly viscousLiftFactor: number;
  /** Lift coefficient of least section drag, 1. */
  readonly liftCoefficientOfLeastDrag: number;
  /** Reynolds number at which the flow turns turbulent, 1. */
  readonly transitionReynolds: number;
  /** m: grains of a rough finish; 0 for a smooth one. */
  readonly roughness: number;
  /** m2 of rider and board in the air. */
  readonly airDragArea: number;
  /** m2: drag area of anything else under water. */
  readonly extraDragArea: number;
  /** Factors on what the formulas add, 1 each at best knowledge: see `Departures`. */
  readonly wingForm: number;
  readonly strutForm: number;
  readonly spray: number;
  readonly junction: number;
  readonly surface: number;
  /** K */
  readonly temperature: number;
  /** kg/kg */
  readonly salinity: number;
  /** Density over what temperature and salinity say, 1. */
  readonly densityFactor: number;
  /** m/s2 */
  readonly gravity: number;
  /** m above the sea, of the water. */
  readonly altitude: number;
  /** rad of a tow line above the horizontal. */
  readonly lineAngle: number;
  /** m/s of wind from ahead. */
  readonly headwind: number;
}

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
