/**
 * Invented towed craft whose true drag is known, part by part.
 *
 * @module
 */
import { linearLeastSquares } from "../../numeric/linear-least-squares.ts";
import { minimumBetween } from "../../numeric/minimum.ts";
import type { SeededRandom } from "../../numeric/random.ts";
import { ellipticLinePhi } from "../../model/free-surface.ts";
import { dragBuildUp, type Flight } from "../../model/planform-drag.ts";
import { WATER } from "./foil-world.ts";

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

/** What may be set of a craft; the rest is drawn. */
export interface CraftDraw {
  /** kg carried. */
  readonly mass?: number;
  /** Draws a lift coefficient of up to so much at which the drag due to lift of the whole wing is least: a stress test. */
  readonly offset?: number;
}

/**
 * A wing and its rider, somewhere in what a class of builders makes.
 *
 * Friction by Reynolds number, a section that drags least at a lift of its own, one or two struts, spray, a rider in the
 * air, and the free surface of an elliptic line whose formula is off by 30 % of its effect. The fit knows planform, mass and
 * depth, and nothing of the rest.
 *
 * @param name of the design
 * @param random stream
 * @param options what is set
 * @returns the craft with its truth
 */
export function drawCraft(
  name: string,
  random: SeededRandom,
  { mass, offset = 0 }: CraftDraw = {},
): TrueCraft {
  const { density, gravity, kinematicViscosity } = WATER;
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
  }, { density, kinematicViscosity, gravity, depth });
  // The formula of the free surface is off by so much of phi - 1.
  const surface = 1 + 0.3 * random.normal();
  const least = offset === 0 ? 0 : between(0, offset);
  const lift = (carried - density * wetVolume) * gravity;
  const drag = (speed: number, lineAngle = 0) => {
    const flight: Flight = { speed, weightInWater: lift, lineAngle };
    const { total, inducedAndWave, phi, liftCoefficient } = parts(flight);
    const share = (1 + (phi - 1) * surface) / phi * (1 - least / liftCoefficient) ** 2;
    return total + inducedAndWave * (share - 1);
  };
  const stallSpeed = Math.sqrt(2 * lift / (density * area * 1.1));
  const dip = minimumBetween(drag, { low: 0.9 * stallSpeed, high: 4 * stallSpeed });
  return {
    name,
    span,
    area,
    mass: carried,
    wetVolume,
    depth,
    drag,
    lift,
    best: { speed: dip.at, liftToDrag: lift / dip.value },
    stallSpeed,
  };
}

/** Constants of a law. */
export interface TrueLaw {
  /** N s2/m2 */
  readonly a: number;
  /** Lift drag factor on the wing's area, 1. */
  readonly K: number;
}

/** Speeds over which a law is laid through the truth. */
const LAW_SPEEDS = 25;

/**
 * The constants that a law of three terms has when laid through the true drag itself: what a fit can be asked for, since no
 * such law is the truth.
 *
 * @param craft with its truth
 * @param range slowest and fastest speed towed, m/s
 * @returns constants that come nearest to the true drag in shares of it, evenly over the range
 * @throws RangeError when no law can be laid through the true drag
 */
export function trueLaw(craft: TrueCraft, range: { from: number; to: number }): TrueLaw {
  const phi = ellipticLinePhi(craft);
  const speeds = Array.from(
    { length: LAW_SPEEDS },
    (_, i) => range.from + (range.to - range.from) * i / (LAW_SPEEDS - 1),
  );
  const observed = speeds.map((v) => craft.drag(v));
  const fit = linearLeastSquares({
    columns: [
      speeds.map((v) => v * v),
      speeds.map(() => 1),
      speeds.map((v) => phi(v, WATER.gravity) / (v * v)),
    ],
    observed,
    uncertainties: observed,
  });
  if (!fit.ok) throw new RangeError(`Cannot lay a law through the true drag: ${fit.reason}`);
  const [a, , e] = fit.parameters;
  return { a: a!, K: e! * WATER.density * craft.area / (2 * craft.lift ** 2) };
}

/**
 * Speed of least power of a craft: the dip of power next below its best speed.
 *
 * @param craft with its truth
 * @returns m/s; 0 where power falls all the way down to a third of the best speed
 */
export function leastPowerSpeed({ best, drag }: TrueCraft): number {
  const power = (v: number) => v * drag(v);
  const step = 0.99;
  for (let v = best.speed; v > best.speed / 3; v *= step) {
    if (power(step * v) > power(v)) {
      return minimumBetween(power, { low: step * v, high: v / step }).at;
    }
  }
  return 0;
}
