/**
 * Invented: what alder and birch truly drag behind the tow boat of Quillwater, richer than the law that is fitted to it.
 *
 * @module
 */
import { weightInWater } from "lakeproof/model/buoyancy.ts";
import { ellipticLinePhi } from "lakeproof/model/free-surface.ts";
import { dragBuildUp, type Flight } from "lakeproof/model/planform-drag.ts";
import { strutDrag, strutVolume } from "lakeproof/model/strut-drag.ts";
import { minimumBetween } from "lakeproof/numeric/minimum.ts";
import {
  beyondFormula,
  DESIGNS,
  type Evening,
  pair,
  SURFACE,
  type TrueDesign,
  wingVolume,
} from "./quillwater-craft.ts";

/** The morning of the tows: one rider. */
export const MORNING: Evening = {
  block: "KT 28 June",
  date: "2031-06-28",
  rider: 77.3,
  airDragArea: 0.52,
  quicker: 0,
  waterTemperature: 18.2,
};

/** kg at which the truth is told: between the two carried masses. */
export const REFERENCE_MASS = 86;

/** m of the wing under the surface, as a rule. */
export const RUNNING_DEPTH = 0.38;

/** The two that were towed, alder first. */
export const TOWED: readonly TrueDesign[] = DESIGNS.filter((one) => one.name !== "cedar");

/** Growth of a wing section's lift with its incidence, 1/rad: thinner than theory, as boundary layers make it. */
const SECTION_SLOPE: Readonly<Record<string, number>> = { alder: 5.7, birch: 5.8 };

/** deg that the board's deck reads where the wing lifts nothing: camber, and how the wing sits on its mast. */
const NO_LIFT: Readonly<Record<string, number>> = { alder: -1.8, birch: -1.1 };

/** A steady pull, or nearly. */
export interface Pull {
  /** m/s through the water. */
  readonly speed: number;
  /** rad, line above the horizontal. */
  readonly lineAngle: number;
  /** m */
  readonly depth: number;
  /** m/s of wind from ahead. */
  readonly headwind: number;
  /** m/s2 */
  readonly speedChange: number;
  /** Drag of this moment over that of calm water: wake, ripples, trim; 1. */
  readonly moment: number;
}

/** A design with its rider on the line. */
export interface TowedCraft {
  readonly name: string;
  /** kg */
  readonly mass: number;
  /** N in the line. */
  readonly tension: (pull: Pull) => number;
  /** deg of the board, bow up, under a pull of so many N in the line. */
  readonly pitch: (pull: Pull, tension: number) => number;
  /** N at a speed without line or wind, at the mass of reference and the running depth. */
  readonly drag: (speed: number) => number;
  /** N of the wing with its fittings, likewise: without mast, junction and rider. */
  readonly wing: (speed: number) => number;
  /** N: weight in water, likewise. */
  readonly lift: number;
  /** Lift over drag at its best, of the whole craft, likewise. */
  readonly best: { readonly speed: number; readonly liftToDrag: number };
}

/** Puts the rider of the morning on a design, with a line ahead. */
export function towedCraft(design: TrueDesign): TowedCraft {
  const { flown, around } = pair(design, MORNING);
  const { craft } = flown;
  const weight = (mass: number, depth: number) =>
    weightInWater({
      mass,
      wetVolume: wingVolume(design) + strutVolume(craft.struts, depth),
      density: around.density,
      gravity: around.gravity,
    });
  const dragOf = (depth: number, of: "total" | "wing" = "total") => {
    const parts = dragBuildUp(craft, { ...around, depth });
    return (flight: Flight) => {
      const found = parts(flight);
      const formula = of === "total" ? found.total : found.wing + found.extra;
      return flown.dragFactor * (formula + beyondFormula(found));
    };
  };
  const calm = dragOf(RUNNING_DEPTH), calmWing = dragOf(RUNNING_DEPTH, "wing");
  const lift = weight(REFERENCE_MASS, RUNNING_DEPTH);
  const drag = (speed: number) => calm({ speed, weightInWater: lift });
  const least = minimumBetween(drag, { low: 3.4, high: 8 });
  return {
    name: design.name,
    mass: flown.mass,
    tension({ speed, lineAngle, depth, headwind, speedChange, moment }) {
      const here = dragOf(depth);
      const whole = weight(flown.mass, depth);
      // The line carries a part of the weight, and that changes the drag: twelve rounds settle far below a millinewton.
      let pulled = 0;
      for (let round = 0; round < 12; round++) {
        const carried = whole - pulled * Math.sin(lineAngle);
        const level = moment * here({ speed, weightInWater: carried, headwind }) +
          flown.effectiveMass * speedChange;
        pulled = level / Math.cos(lineAngle);
      }
      return pulled;
    },
    pitch({ speed, lineAngle, depth }, tension) {
      const { span, area } = craft;
      const lift = (weight(flown.mass, depth) - tension * Math.sin(lineAngle)) /
        (around.density / 2 * speed ** 2 * area);
      // Under a near surface a section lifts less for its incidence, and its wake turns the flow down more.
      const deep = 16 * (depth * span / area) ** 2;
      const section = SECTION_SLOPE[design.name]! * (1 + deep) / (2 + deep);
      const surface = 1 + SURFACE * (ellipticLinePhi({ span, depth })(speed, around.gravity) - 1);
      const turned = surface / (Math.PI * span ** 2 / area * 0.95);
      return NO_LIFT[design.name]! + lift * (1 / section + turned) * 180 / Math.PI;
    },
    drag,
    wing: (speed) => calmWing({ speed, weightInWater: lift }),
    lift,
    best: { speed: least.at, liftToDrag: lift / least.value },
  };
}

/**
 * What the mast drags by itself, hung from a beam over the boat's side: the mast of alder, whose twin birch has.
 *
 * @param speed m/s
 * @param depth m of mast under water
 * @returns N
 */
export function mastDrag(speed: number, depth: number): number {
  const { flown: { craft, dragFactor }, around } = pair(TOWED[0]!, MORNING);
  const { friction, spray } = strutDrag(craft.struts, {
    speed,
    depth,
    density: around.density,
    kinematicViscosity: around.kinematicViscosity,
    ...(craft.transitionReynolds === undefined
      ? {}
      : { transitionReynolds: craft.transitionReynolds }),
  });
  return dragFactor * (friction + spray);
}
