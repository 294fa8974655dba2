/**
 * One glide flown in full: the equation of motion from launch to stall, touch or an early stop.
 *
 * @module
 */
import { bracketedRoot } from "../numeric/roots.ts";
import { weightInWater } from "./buoyancy.ts";
import {
  type Craft,
  dragBuildUp,
  type DragParts,
  type Flight,
  type Surroundings,
} from "./planform-drag.ts";
import { strutVolume } from "./strut-drag.ts";

/** A craft with its rider, and how far it departs from its planform. */
export interface FlownCraft {
  readonly craft: Craft;
  /** kg, all that flies. */
  readonly mass: number;
  /** kg, mass plus the water that moves along. */
  readonly effectiveMass: number;
  /** m3 of the wing alone. */
  readonly wingVolume: number;
  /** Largest lift coefficient at a Reynolds number of 4e5; it moves with the tenth root of Reynolds number. */
  readonly largestLiftCoefficient: number;
  /** Drag over that of the build-up, 1. */
  readonly dragFactor: number;
}

/** How a run is flown. */
export interface FlightPlan {
  /** m/s */
  readonly launchSpeed: number;
  /** m of the wing under the surface at launch. */
  readonly launchDepth: number;
  /** Height lost over distance at a speed, 1. */
  readonly slope: (speed: number) => number;
  /** N of forward push at a time in s after launch: a pump. */
  readonly push?: (time: number) => number;
  /** m of height after which the board touches. */
  readonly mostDrop: number;
  /** m/s at which the rider gives up, and s after which; left out, never. */
  readonly stopSpeed?: number;
  readonly stopTime?: number;
}

/** What came of it. */
export interface FlownGlide {
  /** m over the water. */
  readonly distance: number;
  /** m */
  readonly drop: number;
  /** s */
  readonly duration: number;
  /** m/s */
  readonly endSpeed: number;
  readonly ended: "stalled" | "touched" | "stopped early";
  /** Time in s and speed in m/s from launch to end, every 0.05 s and at the end. */
  readonly history: readonly (readonly [time: number, speed: number])[];
}

/** Speed, distance, drop. */
type Motion = readonly [number, number, number];

/** s */
const STEP = 0.05;
/** m */
const DEPTH_STEP = 0.01;
const ENDS = ["stalled", "touched", "stopped early"] as const;

/** What slows a craft at the depth of the moment, and how near it is to its stall. */
export interface DragAtDepth {
  /** N */
  readonly total: number;
  readonly liftCoefficient: number;
  readonly reynolds: number;
}

/**
 * Drag build-up at a depth that moves: taken at the two nearest centimetres, linear between.
 *
 * @param craft planform
 * @param around water, air and gravity
 * @returns drag from depth in m and flight; what depends on depth alone is kept by the centimetre
 */
export function dragAtDepth(
  craft: Craft,
  around: Omit<Surroundings, "depth">,
): (depth: number, flight: Flight) => DragAtDepth {
  const known = new Map<number, (flight: Flight) => DragParts>();
  const at = (index: number) => {
    const kept = known.get(index);
    if (kept !== undefined) return kept;
    const made = dragBuildUp(craft, { ...around, depth: index * DEPTH_STEP });
    known.set(index, made);
    return made;
  };
  return (depth, flight) => {
    const below = Math.floor(depth / DEPTH_STEP);
    const share = depth / DEPTH_STEP - below;
    const low = at(below)(flight), high = at(below + 1)(flight);
    // On a level line the other two don't depend on depth.
    return {
      total: low.total + share * (high.total - low.total),
      liftCoefficient: low.liftCoefficient,
      reynolds: low.reynolds,
    };
  };
}

/**
 * Flies one glide.
 *
 * Forces: drag build-up at the depth of the moment times the craft's factor, weight in water along the slope, a pump if there is one;
 * lift is the weight in water across the slope. The wing sinks by what the craft loses in height. It ends when the needed lift
 * coefficient exceeds the largest (stalled), the drop is used up (touched), or the rider stops.
 *
 * Source: `m_e dv/dt = (W - B) sin(gamma) - D + P`; classical fourth-order Runge-Kutta, steps of 0.05 s, the last one
 * shortened to the end.
 *
 * @param flown craft and rider
 * @param plan how it is flown
 * @param around water, air and gravity
 * @param drag from `dragAtDepth` for the same craft and water; shared between runs, so that its work is
 * @returns distance, drop, duration, end speed and why it ended
 * @throws RangeError when it is stalled at launch, or does not end within 60 s
 *
 * @example
 * ```ts
 * import { flyGlide } from "lakeproof/model/glide-flight.ts";
 * const flown = {
 *   craft: { span: 1.1, area: 0.16, thicknessRatio: 0.12, struts: { count: 1, chord: 0.115, thickness: 0.0145 } },
 *   mass: 86, effectiveMass: 87, wingVolume: 0.0018, largestLiftCoefficient: 1, dragFactor: 1,
 * };
 * const plan = { launchSpeed: 4.4, launchDepth: 0.32, slope: () => 0.02, mostDrop: 0.4 };
 * const glide = flyGlide(flown, plan, { density: 998.6, kinematicViscosity: 1.07e-6, gravity: 9.81 });
 * if (glide.ended !== "stalled" || !(glide.distance > 7 && glide.distance < 12)) throw new Error(`${glide.distance} m`);
 * ```
 */
export function flyGlide(
  flown: FlownCraft,
  plan: FlightPlan,
  around: Omit<Surroundings, "depth">,
  drag: (depth: number, flight: Flight) => DragAtDepth = dragAtDepth(flown.craft, around),
): FlownGlide {
  const { mass, effectiveMass, wingVolume, largestLiftCoefficient, dragFactor } = flown;
  const forces = (speed: number, drop: number) => {
    const depth = plan.launchDepth + drop;
    const wetVolume = wingVolume + strutVolume(flown.craft.struts, depth);
    const net = weightInWater({ mass, wetVolume, ...around });
    const gamma = Math.atan(plan.slope(speed));
    const parts = drag(depth, { speed, weightInWater: net * Math.cos(gamma) });
    return { net, gamma, parts };
  };
  const rate = ([speed, , drop]: Motion, time: number): Motion => {
    const { net, gamma, parts } = forces(speed, drop);
    const along = net * Math.sin(gamma) - dragFactor * parts.total + (plan.push?.(time) ?? 0);
    return [along / effectiveMass, speed * Math.cos(gamma), speed * Math.sin(gamma)];
  };
  const step = (from: Motion, time: number, h: number): Motion => {
    const moved = (k: Motion, share: number) =>
      from.map((x, i) => x + share * h * k[i]!) as unknown as Motion;
    const k1 = rate(from, time), k2 = rate(moved(k1, 0.5), time + h / 2);
    const k3 = rate(moved(k2, 0.5), time + h / 2), k4 = rate(moved(k3, 1), time + h);
    return from.map((x, i) =>
      x + h / 6 * (k1[i]! + 2 * k2[i]! + 2 * k3[i]! + k4[i]!)
    ) as unknown as Motion;
  };
  /** What is left before each end, in the order of the names; zero or less ends the glide. */
  const margins = ([speed, , drop]: Motion, time: number) => {
    const { parts } = forces(speed, drop);
    const largest = largestLiftCoefficient * (parts.reynolds / 4e5) ** 0.1;
    return {
      "stalled": largest - parts.liftCoefficient,
      "touched": plan.mostDrop - drop,
      "stopped early": Math.min(
        plan.stopSpeed === undefined ? 1 : speed - plan.stopSpeed,
        plan.stopTime === undefined ? 1 : plan.stopTime - time,
      ),
    } as const;
  };
  const least = (motion: Motion, time: number) => Math.min(...Object.values(margins(motion, time)));

  let motion: Motion = [plan.launchSpeed, 0, 0];
  const history: [number, number][] = [[0, plan.launchSpeed]];
  if (least(motion, 0) <= 0) throw new RangeError("Cannot glide as the launch is below the end");
  for (let time = 0; time < 60; time += STEP) {
    const next = step(motion, time, STEP);
    if (least(next, time + STEP) > 0) {
      motion = next;
      history.push([time + STEP, motion[0]]);
      continue;
    }
    const last = bracketedRoot(
      (part) => least(step(motion, time, part), time + part),
      { low: 0, high: STEP },
      { absoluteTolerance: 1e-12 },
    );
    const [endSpeed, distance, drop] = step(motion, time, last);
    const left = margins([endSpeed, distance, drop], time + last);
    const ended = ENDS.reduce((one, other) => left[other] < left[one] ? other : one);
    history.push([time + last, endSpeed]);
    return { distance, drop, duration: time + last, endSpeed, ended, history };
  }
  throw new RangeError("Cannot fly the glide as it does not end within 60 s");
}
