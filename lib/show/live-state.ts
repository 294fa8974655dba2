/**
 * What the library computes for each design at a setting: its speeds, and tow force and power over speed.
 *
 * @module
 */
import { printable } from "../base/printable.ts";
import { weightInWater } from "../model/buoyancy.ts";
import { dragBuildUp, type DragParts } from "../model/planform-drag.ts";
import { stallSpeed } from "../model/stall.ts";
import { strutVolume } from "../model/strut-drag.ts";
import { water } from "../model/water.ts";
import { minimumBetween } from "../numeric/minimum.ts";
import type { LiveDesign, LiveSetting, LiveTask } from "./live-task.ts";

/** A value, with the ends of its first-order interval where there is one. */
export interface LiveQuantity {
  readonly value: number;
  readonly low: number | null;
  readonly high: number | null;
}

/** One speed of a curve. */
export interface LivePoint {
  /** m/s */
  readonly speed: number;
  /** N along the line. */
  readonly force: LiveQuantity;
  /** W */
  readonly power: LiveQuantity;
}

/** The least of something over speed. */
export interface LiveLeast {
  /** m/s */
  readonly speed: LiveQuantity;
  /** N or W */
  readonly value: LiveQuantity;
  /** True where it falls right up to the slowest speed that carries the load. */
  readonly atStall: boolean;
}

/** A design that flies. */
export interface LiveFlight {
  readonly flies: true;
  /** m/s at running depth. */
  readonly stallSpeed: LiveQuantity;
  /** m/s with the board just clear. */
  readonly takeoffSpeed: LiveQuantity;
  /** N */
  readonly forceAtTakeoff: LiveQuantity;
  readonly leastDrag: LiveLeast;
  readonly leastPower: LiveLeast;
  /** From the stall speed up. */
  readonly curve: readonly LivePoint[];
}

/** A design at a setting. */
export type LiveState =
  & { readonly design: string; readonly place: number }
  & (LiveFlight | { readonly flies: false; readonly reason: string });

const exactly = (value: number): LiveQuantity => ({ value, low: null, high: null });

/** Speeds of a curve. */
const STEPS = 80;

/** How far a curve goes, in stall speeds. */
const REACH = 2.2;

/** How far the least is looked for, in stall speeds. */
const FAR = 6;

function leastOf(
  of: (speed: number) => number,
  stall: number,
): LiveLeast {
  const at = (i: number) => stall * FAR ** (i / 100);
  let low = 0;
  for (let i = 1; i <= 100; i++) if (of(at(i)) < of(at(low))) low = i;
  if (low === 0) return { speed: exactly(stall), value: exactly(of(stall)), atStall: true };
  const found = minimumBetween(of, { low: at(low - 1), high: at(low + 1) });
  return { speed: exactly(found.at), value: exactly(found.value), atStall: false };
}

function flightOf(design: LiveDesign, area: number, task: LiveTask, setting: LiveSetting) {
  const { gravity } = task;
  const { density, kinematicViscosity } = water(setting);
  const craft = { ...design.craft, area };
  // Span and thickness ratio stay: the wing's volume goes with chord times area.
  const atPublished = strutVolume(craft.struts, task.published.depth);
  const wing = (design.wetVolume - atPublished) * (area / design.craft.area) ** 2;
  const at = (depth: number) => {
    const wetVolume = wing + strutVolume(craft.struts, depth);
    const weight = weightInWater({ mass: setting.mass, wetVolume, density, gravity });
    const drag = dragBuildUp(craft, { density, kinematicViscosity, gravity, depth });
    return {
      weight,
      flight: (speed: number): DragParts => drag({ speed, weightInWater: weight }),
      slowest: (usableShare: number) =>
        stallSpeed(
          {
            weightInWater: weight,
            density,
            area,
            largestLiftCoefficient: design.largestLiftCoefficient,
            usableShare,
          },
          { kinematicViscosity, chord: area / craft.span, reference: 4e5, exponent: 0.1 },
        ),
    };
  };
  return { running: at(setting.depth), rising: at(design.takeoffDepth) };
}

function stateOf(
  design: LiveDesign,
  area: number,
  task: LiveTask,
  setting: LiveSetting,
): LiveState {
  const named = { design: printable(design.design), place: design.place };
  const { running, rising } = flightOf(design, area, task, setting);
  if (!(running.weight > 0 && rising.weight > 0)) {
    return { ...named, flies: false, reason: "it floats: the water carries the whole load" };
  }
  const stall = running.slowest(1);
  const takeoff = rising.slowest(0.85);
  const force = (speed: number) => running.flight(speed).total;
  return {
    ...named,
    flies: true,
    stallSpeed: exactly(stall),
    takeoffSpeed: exactly(takeoff),
    forceAtTakeoff: exactly(rising.flight(takeoff).total),
    leastDrag: leastOf(force, stall),
    leastPower: leastOf((speed) => force(speed) * speed, stall),
    curve: Array.from({ length: STEPS + 1 }, (_, i) => {
      const speed = stall * REACH ** (i / STEPS);
      const drag = force(speed);
      return { speed, force: exactly(drag), power: exactly(drag * speed) };
    }),
  };
}

/**
 * Every design at a setting.
 *
 * @param task designs as published
 * @param setting load, water, depth, areas
 * @returns one state a design, in their order
 */
export function liveStates(task: LiveTask, setting: LiveSetting): LiveState[] {
  return task.designs.map((design, at) => {
    try {
      return stateOf(design, setting.areas[at]!, task, setting);
    } catch (cause) {
      if (!(cause instanceof RangeError)) throw cause;
      const reason = cause.message.replace(/^Cannot .*? as /, "");
      return { design: printable(design.design), place: design.place, flies: false, reason };
    }
  });
}
