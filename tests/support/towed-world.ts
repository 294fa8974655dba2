/** Invented tows whose truth is known: craft drawn at random, drag by parts, errors shared and not. */
import type { Design, Session, TowPoint } from "lakeproof/base/session.ts";
import { dragBuildUp, type Flight } from "lakeproof/model/planform-drag.ts";
import { minimumBetween } from "lakeproof/numeric/minimum.ts";
import { type SeededRandom, seededRandom } from "lakeproof/numeric/random.ts";

const DENSITY = 999.1026, GRAVITY = 9.80665, VISCOSITY = 1.1386e-6;
const DEGREE = Math.PI / 180;

/** A craft as it truly is. */
export interface TrueCraft {
  readonly name: string;
  readonly span: number;
  readonly area: number;
  readonly mass: number;
  readonly wetVolume: number;
  readonly depth: number;
  /** N at a speed in m/s and a line angle. */
  readonly drag: (speed: number, lineAngle?: number) => number;
  /** N, weight less buoyancy. */
  readonly lift: number;
  readonly best: { readonly speed: number; readonly liftToDrag: number };
  /** m/s */
  readonly stallSpeed: number;
}

/** A wing and its rider, somewhere in what a class of builders makes. */
export function drawCraft(name: string, random: SeededRandom, mass?: number): TrueCraft {
  const between = (low: number, high: number) => low + (high - low) * random.uniform();
  const span = between(0.7, 1.6);
  const area = span ** 2 / between(5, 9);
  const carried = mass ?? between(65, 100);
  const wetVolume = between(0.0015, 0.004);
  const depth = between(0.25, 0.6);
  const chord = between(0.1, 0.13);
  const camber = random.uniform() < 0.3 ? 0 : between(0.05, 0.35);
  const parts = dragBuildUp({
    span,
    area,
    thicknessRatio: between(0.1, 0.13),
    struts: { count: random.uniform() < 0.7 ? 1 : 2, chord, thickness: 0.12 * chord },
    extraDragArea: between(0, 4e-4),
    airDragArea: between(0.4, 0.65),
    spanEfficiency: between(0.85, 1),
    viscousLiftFactor: between(0.005, 0.015),
    liftCoefficientOfLeastDrag: camber,
    transitionReynolds: between(1.5e5, 4e5),
  }, { density: DENSITY, kinematicViscosity: VISCOSITY, gravity: GRAVITY, depth });
  // The formula of the free surface is off by so much of phi - 1.
  const surface = 1 + 0.3 * random.normal();
  const lift = (carried - DENSITY * wetVolume) * GRAVITY;
  const drag = (speed: number, lineAngle = 0) => {
    const flight: Flight = { speed, weightInWater: lift, lineAngle };
    const { total, inducedAndWave, phi } = parts(flight);
    return total + inducedAndWave * (phi - 1) / phi * (surface - 1);
  };
  const stallSpeed = Math.sqrt(2 * lift / (DENSITY * area * 1.1));
  const least = minimumBetween(drag, { low: 0.9 * stallSpeed, high: 4 * stallSpeed });
  return {
    name,
    span,
    area,
    mass: carried,
    wetVolume,
    depth,
    drag,
    lift,
    best: { speed: least.at, liftToDrag: lift / least.value },
    stallSpeed,
  };
}

/** How a session is towed. */
export interface TowPlan {
  readonly speeds: readonly number[];
  readonly sweeps: number;
  /** Scatter of a reading that nobody stated: wake, rider, as a share. */
  readonly process: number;
  /** True to draw the errors that all readings share. */
  readonly shared: boolean;
  /** False to tow each design in one go. */
  readonly turns?: boolean;
}

/** A session towed with every error drawn anew. */
export function towSession(
  crafts: readonly TrueCraft[],
  plan: TowPlan,
  random: SeededRandom,
  /** m/s more through the water than was aimed at, by place of the row. */
  beside: (place: number) => number = () => 0,
): Session {
  const draw = (u: number) => plan.shared ? u * random.normal() : 0;
  const cell = { scale: draw(0.01), zero: draw(0.3) };
  const log = { scale: draw(0.01), zero: draw(0.02) };
  const level = draw(0.3 * DEGREE);
  const scales = draw(0.5);
  const designs = crafts.map((one, i): Design => ({
    row: i + 2,
    own: {},
    design: one.name,
    span: one.span,
    area: one.area,
    wetVolume: one.wetVolume * (1 + draw(0.1)),
    thicknessRatio: 0.12,
    section: null,
    largestLiftCoefficient: null,
    strutCount: null,
    strutChord: null,
    strutThickness: null,
    strutLength: null,
    boardDraught: null,
    extraDragArea: null,
    note: null,
  }));
  const depths = crafts.map((one) => one.depth + draw(0.02));
  const tow: TowPoint[] = [];
  const sweep = (number: number, craft: TrueCraft, place: number) => {
    plan.speeds.forEach((setSpeed) => {
      const speed = setSpeed * (1 + 0.02 * random.normal()) + beside(tow.length);
      const angle = (8 + 1.5 * random.normal()) * DEGREE;
      const pull = craft.drag(speed, angle) / Math.cos(angle) *
        (1 + plan.process * random.normal());
      const row = tow.length + 2;
      tow.push({
        row,
        own: {},
        point: String(row - 1),
        date: null,
        block: null,
        sweep: String(number),
        design: craft.name,
        setSpeed,
        direction: null,
        speed: speed * (1 + log.scale) * (1 + 0.01 * random.normal()) + log.zero,
        speedOver: "water",
        speedChange: null,
        lineTension: pull * (1 + cell.scale) * (1 + 0.015 * random.normal()) + cell.zero +
          0.8 * random.normal(),
        lineAngle: angle + level + 0.5 * DEGREE * random.normal(),
        depth: depths[place]!,
        pitch: null,
        carriedMass: craft.mass + scales,
        window: 6,
        leaveOut: null,
        note: null,
      });
    });
  };
  if (plan.turns ?? true) {
    for (let i = 0; i < plan.sweeps; i++) {
      crafts.forEach((craft, place) => sweep(i + 1, craft, place));
    }
  } else {
    crafts.forEach((craft, place) => {
      for (let i = 0; i < plan.sweeps; i++) sweep(i + 1, craft, place);
    });
  }
  return {
    name: "invented",
    title: null,
    invented: true,
    designs,
    glides: [],
    tow,
    traces: [],
    calibrations: [],
    conditions: [],
    instruments: [],
    findings: [],
    checksums: [],
  };
}

/** So many speeds in equal steps. */
export function speedsFrom(low: number, high: number, count: number): number[] {
  return Array.from({ length: count }, (_, i) => low + (high - low) * i / (count - 1));
}

/** Two crafts and a session of theirs, for tests of single sessions. */
export function exampleTow(name: string, plan: Partial<TowPlan> = {}) {
  const random = seededRandom(name);
  const crafts = [drawCraft("alder", random, 84), drawCraft("birch", random, 84)];
  const low = 1.12 * Math.max(...crafts.map((one) => one.stallSpeed));
  const session = towSession(crafts, {
    speeds: speedsFrom(low, 2 * low, 7),
    sweeps: 3,
    process: 0.01,
    shared: true,
    ...plan,
  }, random);
  return { crafts, session };
}
