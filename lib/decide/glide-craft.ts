/**
 * A design at a carried mass and depth, turned into what the sums of a glide need.
 *
 * @module
 */
import type { Design } from "../base/session.ts";
import type { GlidingCraft } from "../fit/gliding-craft.ts";
import { phiTable } from "../fit/phi-table.ts";
import { planformPrior } from "../fit/planform-prior.ts";
import { weightInWater } from "../model/buoyancy.ts";
import { effectiveMass } from "../model/effective-mass.ts";
import type { Medium } from "./session-medium.ts";

/** What flies, and how. */
export interface CraftState {
  /** kg */
  readonly mass: number;
  /** m; `null` where nobody measured it: then a usual depth stands in. */
  readonly depth: number | null;
  readonly medium: Medium;
}

/** A craft, and how far its prior shape may be trusted. */
export interface PreparedCraft {
  readonly craft: GlidingCraft;
  /** Standard uncertainty of ln of the induced share. */
  readonly shapeUncertainty: number;
}

/** Thickness over chord of a hand-made wing where none is given. */
export const USUAL_THICKNESS_RATIO = 0.12;

/** Area of a four-digit symmetric section over chord times thickness. */
const SECTION_FULLNESS = 0.685;

/**
 * Wet volume of a design: as dunked, else estimated from its planform.
 *
 * @param design with or without a wet volume
 * @returns m3
 */
export function wetVolumeOf(design: Design): number {
  if (design.wetVolume !== null) return design.wetVolume;
  const ratio = design.thicknessRatio ?? USUAL_THICKNESS_RATIO;
  const chord = design.area / design.span;
  const strutChord = design.strutChord ?? 0.12;
  const strutThickness = design.strutThickness ?? 0.12 * strutChord;
  const wing = SECTION_FULLNESS * ratio * chord * design.area;
  const struts = (design.strutCount ?? 1) * SECTION_FULLNESS * strutChord * strutThickness * 0.4;
  return wing + struts;
}

const tables = new Map<string, (speed: number) => number>();

/**
 * Free-surface factor of a wing by speed. Tables are kept: every run of a design at one depth shares one.
 *
 * @param span m
 * @param depth m
 * @param gravity m/s2
 * @returns phi by speed in m/s
 */
export function phiOf(span: number, depth: number, gravity: number): (speed: number) => number {
  const key = `${span} ${depth} ${gravity}`;
  const kept = tables.get(key);
  if (kept !== undefined) return kept;
  if (tables.size > 500) tables.clear();
  const table = phiTable({ span, depth }, gravity);
  tables.set(key, table);
  return table;
}

/**
 * The craft of one run.
 *
 * @param design planform and struts
 * @param state carried mass, depth, water
 * @returns the craft, or `null` where it floats or the mass is none: then nothing can glide
 */
export function prepareCraft(design: Design, state: CraftState): PreparedCraft | null {
  const { mass, depth, medium } = state;
  const { density, gravity } = medium;
  if (!(mass > 0)) return null;
  const weight = weightInWater({ mass, wetVolume: wetVolumeOf(design), density, gravity });
  if (!(weight > 0)) return null;
  const prior = planformPrior(design, { lift: weight, density, depth });
  const moving = effectiveMass({
    mass,
    density,
    span: design.span,
    area: design.area,
    thicknessRatio: design.thicknessRatio ?? USUAL_THICKNESS_RATIO,
  });
  return {
    craft: {
      weight,
      inertia: moving * gravity / weight,
      ...prior.law,
      phi: phiOf(design.span, prior.depth, gravity),
    },
    shapeUncertainty: prior.inducedUncertainty,
  };
}
