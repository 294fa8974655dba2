/**
 * How well the numbers of a steady craft are known, and how a doubt moves each of them.
 *
 * @module
 */
import { LEAST_DEPTH_OVER_SPAN } from "../model/free-surface.ts";
import type { SteadyCraft } from "../model/steady-craft.ts";

/** One input that is not known well. */
export interface Doubt {
  /** A number of the craft. */
  readonly key: keyof SteadyCraft;
  /** In words. */
  readonly name: string;
  /** Unit of the number, as people read it. */
  readonly unit: string;
  /** `share`: the standard uncertainty is of the number's logarithm; `offset`: it is in the number's unit. */
  readonly kind: "share" | "offset";
  readonly standardUncertainty: number;
  /** In words, where it comes from. */
  readonly basis: string;
}

const JUDGED = "judgement";
const share = (
  key: keyof SteadyCraft,
  name: string,
  unit: string,
  standardUncertainty: number,
  basis: string = JUDGED,
): Doubt => ({ key, name, unit, kind: "share", standardUncertainty, basis });
const offset = (
  key: keyof SteadyCraft,
  name: string,
  unit: string,
  standardUncertainty: number,
  basis: string = JUDGED,
): Doubt => ({ key, name, unit, kind: "offset", standardUncertainty, basis });

/**
 * Standard uncertainties where nothing better is stated. Judgement, not measurement, where the basis does not say otherwise.
 *
 * Transition by a factor of 1.65 spans what lies between a clean section and one turbulent from its leading edge: tabulated drag of a
 * clean 12 % section is 24 % above this build-up at a Reynolds number of 1.6e5 and 15 to 32 % below it at 3.6e5 to 1e6.
 */
export const USUAL_DOUBTS: readonly Doubt[] = [
  share("largestLiftCoefficient", "largest lift coefficient", "1", 0.14),
  share("usableShare", "share of the largest lift used at takeoff", "1", 0.06),
  offset("liftExponent", "growth of the largest lift with Reynolds number", "1", 0.05),
  share("mass", "mass", "kg", 0.012),
  share("area", "area", "m2", 0.02),
  share("span", "span", "m", 0.003),
  share("wingVolume", "wet volume", "m3", 0.1),
  share("densityFactor", "water density", "1", 0.0005),
  offset("temperature", "water temperature", "K", 2),
  offset("takeoffDepth", "depth at takeoff", "m", 0.05),
  offset("runningDepth", "running depth", "m", 0.05),
  share(
    "transitionReynolds",
    "Reynolds number where the flow turns turbulent",
    "1",
    0.5,
    "drag tables of a clean section",
  ),
  share(
    "viscousLiftFactor",
    "section drag that grows with lift",
    "1",
    0.4,
    "drag tables of a clean section",
  ),
  offset("liftCoefficientOfLeastDrag", "lift coefficient of least section drag", "1", 0.1),
  share("spanEfficiency", "span efficiency", "1", 0.04),
  share("surface", "what the surface adds to induced drag", "1", 0.15, "linear waves, flat wake"),
  share("airDragArea", "rider in the air", "m2", 0.3),
  share("wingForm", "form drag of the wing", "1", 0.5),
  share("strutForm", "form drag of the struts", "1", 0.5),
  share("spray", "spray", "1", 0.5),
  share("junction", "junctions", "1", 0.55, "two formulas 2.8 apart"),
  share("extraDragArea", "what else is under water", "m2", 0.5),
];

const FACTORS: readonly (keyof SteadyCraft)[] = [
  "densityFactor",
  "surface",
  "wingForm",
  "strutForm",
  "spray",
  "junction",
];

/** Names of the doubts whose number is a factor on what a formula gives, 1 where the formula is right. */
export const FORMULA_FACTORS: readonly string[] = USUAL_DOUBTS
  .filter((one) => FACTORS.includes(one.key)).map((one) => one.name);

/** Bounds that a moved number must stay in, so that its formulas still hold. */
function bounded(key: keyof SteadyCraft, value: number, craft: SteadyCraft): number {
  switch (key) {
    case "usableShare":
      return Math.min(1, value);
    case "temperature":
      return Math.min(313.15, Math.max(273.15, value));
    case "runningDepth":
    case "takeoffDepth":
      return Math.max(value, 0.2 * craft[key], LEAST_DEPTH_OVER_SPAN * craft.span * 1.05);
    case "transitionReynolds":
      return Math.max(1.01e4, value);
    default:
      return value;
  }
}

/**
 * A craft with its doubts moved.
 *
 * @param craft at best knowledge
 * @param doubts the inputs
 * @param moves how many standard uncertainties each is moved by, in the same order; a share is moved on the logarithm
 * @returns another craft
 *
 * @example
 * ```ts
 * import { movedCraft } from "lakeproof/fit/takeoff-doubts.ts";
 * import { USUAL_CRAFT } from "lakeproof/model/usual-craft.ts";
 * const mass = [{ key: "mass", name: "mass", unit: "kg", kind: "share", standardUncertainty: 0.01, basis: "scales" }] as const;
 * if (Math.abs(movedCraft(USUAL_CRAFT, mass, [1]).mass / USUAL_CRAFT.mass - Math.exp(0.01)) > 1e-12) throw new Error("mass");
 * ```
 */
export function movedCraft(
  craft: SteadyCraft,
  doubts: readonly Doubt[],
  moves: ArrayLike<number>,
): SteadyCraft {
  const moved: { -readonly [K in keyof SteadyCraft]: number } = { ...craft };
  doubts.forEach(({ key, kind, standardUncertainty }, i) => {
    const step = moves[i]! * standardUncertainty;
    if (step === 0) return;
    const value = kind === "share" ? craft[key] * Math.exp(step) : craft[key] + step;
    moved[key] = bounded(key, value, craft);
  });
  return moved;
}
