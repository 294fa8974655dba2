/**
 * Invented: the true craft, riders and water behind the demo session of Quillwater, richer than anything that is fitted to it.
 *
 * @module
 */
import { effectiveMass } from "lakeproof/model/effective-mass.ts";
import {
  dragAtDepth,
  type FlightPlan,
  type FlownCraft,
  type FlownGlide,
  flyGlide,
} from "lakeproof/model/glide-flight.ts";
import { gravity } from "lakeproof/model/gravity.ts";
import {
  type Craft,
  dragBuildUp,
  type DragParts,
  type Flight,
} from "lakeproof/model/planform-drag.ts";
import { water } from "lakeproof/model/water.ts";
import { bracketedRoot } from "lakeproof/numeric/roots.ts";

/** Latitude in degrees and height in m of a reservoir that does not exist. */
export const PLACE = { latitude: 52, altitude: 210 };

/** What the builders wrote down, and what they could not know. */
export interface TrueDesign {
  readonly name: string;
  readonly span: number;
  readonly area: number;
  readonly thicknessRatio: number;
  /** Largest lift coefficient at a Reynolds number of 4e5. */
  readonly largestLiftCoefficient: number;
  /** Drag over build-up: finish and fit of the joints. */
  readonly finish: number;
  /** kg of wing, mast and board. */
  readonly mass: number;
  /** m/s that its riders reach off the jetty, and scatter. */
  readonly launch: readonly [number, number];
}

export const DESIGNS: readonly TrueDesign[] = [
  {
    name: "alder",
    span: 0.95,
    area: 0.15,
    thicknessRatio: 0.13,
    largestLiftCoefficient: 1.02,
    finish: 1.06,
    mass: 8.5,
    launch: [4.62, 0.2],
  },
  {
    name: "birch",
    span: 1.12,
    area: 0.162,
    thicknessRatio: 0.12,
    largestLiftCoefficient: 1.02,
    finish: 1.05,
    mass: 9,
    launch: [4.08, 0.2],
  },
  {
    name: "cedar",
    span: 0.97,
    area: 0.151,
    thicknessRatio: 0.125,
    largestLiftCoefficient: 1.02,
    finish: 1.05,
    mass: 8.5,
    launch: [4.45, 0.2],
  },
];

/** A rider on one evening: everything that is alike within a block. */
export interface Evening {
  readonly block: string;
  readonly date: string;
  /** kg of rider, wet. */
  readonly rider: number;
  /** m2 of rider and board in the air. */
  readonly airDragArea: number;
  /** m/s faster off the jetty than the mean. */
  readonly quicker: number;
  /** degC */
  readonly waterTemperature: number;
}

export const EVENINGS: readonly Evening[] = [
  {
    block: "KT 12 June",
    date: "2031-06-12",
    rider: 76,
    airDragArea: 0.5,
    quicker: 0.06,
    waterTemperature: 17.5,
  },
  {
    block: "MB 19 June",
    date: "2031-06-19",
    rider: 79,
    airDragArea: 0.55,
    quicker: -0.06,
    waterTemperature: 18.5,
  },
];

/** How much more the surface adds to induced drag than the formula says, over what the formula adds, 1: in glides and tows. */
export const SURFACE = 1.12;

const STRUT = { count: 1, chord: 0.115, thickness: 0.0145 };

/** m3: a section of 0.68 chord times thickness, a twentieth less for the thin tips. */
export function wingVolume({ span, area, thicknessRatio }: TrueDesign): number {
  return 0.95 * 0.68 * thicknessRatio * area * area / span;
}

/** A design, a rider and the water of an evening, ready to be flown. */
export interface Pairing {
  readonly flown: FlownCraft;
  readonly around: Parameters<typeof flyGlide>[2];
  readonly drag: ReturnType<typeof dragAtDepth>;
}

/**
 * What the surface adds to induced drag beyond the formula.
 *
 * @param parts of the formula
 * @returns N
 */
export function beyondFormula({ inducedAndWave, phi }: DragParts): number {
  return inducedAndWave * (phi - 1) / phi * (SURFACE - 1);
}

/** Drag at a depth that moves, with what the surface adds beyond the formula: that at the nearest centimetre. */
function nearSurface(craft: Craft, around: Pairing["around"]): Pairing["drag"] {
  const formula = dragAtDepth(craft, around);
  const known = new Map<number, (flight: Flight) => DragParts>();
  return (depth, flight) => {
    const centimetres = Math.round(100 * depth);
    const parts = known.get(centimetres) ??
      dragBuildUp(craft, { ...around, depth: centimetres / 100 });
    known.set(centimetres, parts);
    const plain = formula(depth, flight);
    return { ...plain, total: plain.total + beyondFormula(parts(flight)) };
  };
}

/** Puts a rider on a design. */
export function pair(design: TrueDesign, evening: Evening): Pairing {
  const medium = water({ temperature: 273.15 + evening.waterTemperature, salinity: 0 });
  const around = {
    density: medium.density,
    kinematicViscosity: medium.kinematicViscosity,
    gravity: gravity(PLACE.latitude * Math.PI / 180, PLACE.altitude),
    airDensity: 1.2,
  };
  const craft: Craft = {
    span: design.span,
    area: design.area,
    thicknessRatio: design.thicknessRatio,
    struts: STRUT,
    extraDragArea: 2e-4,
    airDragArea: evening.airDragArea,
    liftCoefficientOfLeastDrag: 0.2,
    transitionReynolds: 1.6e5,
  };
  const mass = evening.rider + design.mass;
  const flown = {
    craft,
    mass,
    effectiveMass: effectiveMass({ ...design, mass, density: medium.density }),
    wingVolume: wingVolume(design),
    largestLiftCoefficient: design.largestLiftCoefficient,
    dragFactor: design.finish,
  };
  return { flown, around, drag: nearSurface(craft, around) };
}

/** A plan without its steepness, which follows from the height to be used. */
export interface SinkPlan extends Omit<FlightPlan, "slope"> {
  /** m of height used by the time of the stall. */
  readonly dropAtStall: number;
  /** How much steeper the rider lets it sink at the end than at the launch, over the mean slope. */
  readonly steepening: number;
}

/** Flies a glide whose sink path would use a given height by the time of the stall. */
export function flySink(pairing: Pairing, plan: SinkPlan): FlownGlide {
  const { flown, around, drag } = pairing;
  const slow = 3.2;
  const path = (mean: number) => (speed: number) =>
    mean * (1 + plan.steepening * (0.5 - (speed - slow) / (plan.launchSpeed - slow)));
  // A metre is more than any path here uses; it ends those so steep that they hold their speed.
  const calm = { launchSpeed: plan.launchSpeed, launchDepth: plan.launchDepth, mostDrop: 1 };
  const mean = bracketedRoot(
    (slope) =>
      flyGlide(flown, { ...calm, slope: path(slope) }, around, drag).drop - plan.dropAtStall,
    { low: 1e-4, high: 0.07 },
    { relativeTolerance: 1e-9 },
  );
  return flyGlide(flown, { ...plan, slope: path(mean) }, around, drag);
}
