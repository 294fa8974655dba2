/**
 * Invented foils whose true drag is known: four worlds, each with another idea of what drag is.
 *
 * The verdict knows planform, mass and depth of these foils and nothing of their drag. Only in the world `prior` is the
 * truth of the verdict's own form; the others hold what it leaves out.
 *
 * @module
 */
import type { Planform } from "../../fit/planform-prior.ts";
import { planformPrior } from "../../fit/planform-prior.ts";
import { phiTable } from "../../fit/phi-table.ts";
import { biplaneFactor } from "../../model/free-surface.ts";
import { formFactor, plateFriction } from "../../model/friction-line.ts";
import type { SeededRandom } from "../../numeric/random.ts";

/** Which idea of drag a world holds. */
export type WorldName = "prior" | "camber" | "waves" | "images";

/** What the worlds are called in print. */
export const WORLDS: Readonly<Record<WorldName, string>> = {
  prior: "the prior itself, its shape wrong by as much as it admits",
  camber: "stress: least drag at a lift coefficient of up to 0.15 on the whole lift drag",
  waves: "waves of an elliptic line, friction by Reynolds number, section drag, struts, spray, air",
  images: "surface as an image, and a random share of two-dimensional waves",
};

/** The water of all worlds. */
export const WATER = { density: 999.1, gravity: 9.80665, kinematicViscosity: 1.1386e-6 } as const;

/** A foil that exists only here. */
export interface InventedFoil {
  readonly planform: Planform;
  /** m3 */
  readonly wetVolume: number;
  /** N, weight less buoyancy. */
  readonly weight: number;
  /** Effective mass over mass less buoyancy. */
  readonly inertia: number;
  /** m */
  readonly depth: number;
  /** m/s at which the wing stalls. */
  readonly stallSpeed: number;
  /** N at a speed in m/s. */
  readonly drag: (speed: number) => number;
}

/** What both foils of one session share. */
export interface Rider {
  /** kg */
  readonly mass: number;
  /** m2 of drag area in the air. */
  readonly airDragArea: number;
  /** Standard normal: how far the prior's shape errs alike for all foils, world `prior`; `null` where each errs by itself. */
  readonly sharedShapeError: number | null;
}

const between = (random: SeededRandom, low: number, high: number) =>
  low + (high - low) * random.uniform();

/**
 * A rider, drawn over those who come to a jetty.
 *
 * @param random stream
 * @returns mass, air drag, shared error
 */
export function drawRider(random: SeededRandom): Rider {
  const mass = between(random, 65, 95);
  const airDragArea = between(random, 0.35, 0.75);
  const shared = random.normal();
  return { mass, airDragArea, sharedShapeError: random.uniform() < 0.5 ? shared : null };
}

/**
 * A foil, drawn over the range that people build: spans of 0.8 to 1.9 m, aspect ratios of 5 to 10.
 *
 * @param world which idea of drag
 * @param rider who stands on it
 * @param random stream
 * @returns the foil with its true drag
 */
export function drawFoil(world: WorldName, rider: Rider, random: SeededRandom): InventedFoil {
  const { density, gravity } = WATER;
  const span = between(random, 0.8, 1.9);
  const area = span * span / between(random, 5, 10);
  const strutChord = between(random, 0.1, 0.14);
  const strutThickness = between(random, 0.11, 0.15) * strutChord;
  const planform: Planform = {
    span,
    area,
    strutCount: random.uniform() < 0.7 ? 1 : 2,
    strutChord,
    strutThickness,
    extraDragArea: null,
  };
  const thicknessRatio = between(random, 0.1, 0.15);
  const wetVolume = 0.685 * thicknessRatio * area * area / span +
    planform.strutCount! * 0.685 * strutChord * strutThickness * 0.4;
  const weight = (rider.mass - density * wetVolume) * gravity;
  const depth = between(random, 0.25, 0.6);
  const stallSpeed = Math.sqrt(2 * weight / (density * area * between(random, 0.8, 1.2)));
  const inertia = between(random, 1.01, 1.03) * rider.mass * gravity / weight;
  const basis = { planform, thicknessRatio, weight, depth, rider, random };
  const drag = world === "prior"
    ? priorDrag(basis)
    : world === "camber"
    ? camberDrag(basis)
    : builtUpDrag(basis, world);
  return { planform, wetVolume, weight, inertia, depth, stallSpeed, drag };
}

interface Basis {
  readonly planform: Planform;
  readonly thicknessRatio: number;
  readonly weight: number;
  readonly depth: number;
  readonly rider: Rider;
  readonly random: SeededRandom;
}

/** The prior law, its level and its induced share wrong by a draw from the prior's own doubt. */
function priorDrag({ planform, weight, depth, rider, random }: Basis): (speed: number) => number {
  const { law, inducedUncertainty } = planformPrior(planform, {
    lift: weight,
    density: WATER.density,
    depth,
  });
  const own = random.normal();
  const level = Math.exp(0.15 * random.normal());
  const e = law.e * Math.exp(inducedUncertainty * (rider.sharedShapeError ?? own));
  const phi = phiTable({ span: planform.span, depth }, WATER.gravity);
  return (speed) => {
    const u = speed * speed;
    return level * (law.a * u + law.d + e * phi(speed) / u);
  };
}

/** Three terms with a minimum away from zero lift, on induced drag too. */
function camberDrag({ planform, weight, depth, random }: Basis): (speed: number) => number {
  const { span, area } = planform;
  const { density, gravity } = WATER;
  const efficiency = 0.9 * Math.exp(0.15 * random.normal());
  const offset = between(random, 0, 0.15);
  const least = between(random, 0.012, 0.022);
  const factor = area / (Math.PI * span * span * efficiency);
  const phi = phiTable({ span, depth }, gravity);
  const half = density * area / 2;
  return (speed) => {
    const q = half * speed * speed;
    const lift = weight / q - offset;
    return q * (least + factor * phi(speed) * lift * lift);
  };
}

/** Drag by its parts; the surface by exact waves or by an image with a share of two-dimensional waves. */
function builtUpDrag(basis: Basis, world: "waves" | "images"): (speed: number) => number {
  const { planform, thicknessRatio, weight, depth, rider, random } = basis;
  const { span, area } = planform;
  const { density, gravity, kinematicViscosity } = WATER;
  const chord = area / span;
  const transition = 2e5 * Math.exp(0.5 * random.normal());
  const rough = between(random, 1, 1.3);
  const efficiency = between(random, 0.85, 1);
  const viscous = between(random, 0.004, 0.015);
  const camber = random.uniform() < 0.3 ? 0 : between(random, 0.05, 0.35);
  const extra = between(random, 0, 0.0004);
  const surfaceDoubt = random.normal();
  const waveShare = between(random, 0, 0.5);
  const sigma = biplaneFactor(2 * depth / span);
  const exact = phiTable({ span, depth }, gravity);
  const surface = world === "waves"
    ? (speed: number) => 1 + (exact(speed) - 1) * (1 + 0.15 * surfaceDoubt)
    : (speed: number) => {
      const u = speed * speed;
      const flat = Math.PI * span / 2 * gravity / u * Math.exp(-2 * gravity * depth / u);
      return 1 + sigma + waveShare * flat;
    };
  const induced = area / (Math.PI * span * span * efficiency);
  const form = formFactor(thicknessRatio);
  const strut = {
    area: planform.strutCount! * planform.strutChord! * depth,
    form: formFactor(planform.strutThickness! / planform.strutChord!),
    spray: 0.24 * planform.strutCount! * planform.strutThickness! ** 2 *
      Math.exp(0.5 * random.normal()),
  };
  const air = 1.225 / 2 * rider.airDragArea;
  return (speed) => {
    const u = speed * speed;
    const q = density / 2 * u;
    const lift = weight / (q * area);
    const wing = 2 * rough * form * plateFriction(speed * chord / kinematicViscosity, transition);
    const mast = 2 * rough * strut.form *
      plateFriction(speed * planform.strutChord! / kinematicViscosity, transition);
    return q * (area * (wing + viscous * (lift - camber) ** 2 +
              induced * surface(speed) * lift * lift) + strut.area * mast + strut.spray + extra) +
      air * u;
  };
}
