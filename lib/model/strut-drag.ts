/**
 * Drag of the struts (masts) that go through the surface, part by part.
 *
 * @module
 */
import { formFactor, plateFriction } from "./friction-line.ts";

/** Equal struts, upright. */
export interface Struts {
  /** How many, 0 or more. */
  readonly count: number;
  /** m */
  readonly chord: number;
  /** m */
  readonly thickness: number;
}

/** What struts meet. */
export interface StrutFlow {
  /** m/s */
  readonly speed: number;
  /** m of strut under water. */
  readonly depth: number;
  /** kg/m3 */
  readonly density: number;
  /** m2/s */
  readonly kinematicViscosity: number;
  /** Reynolds number of transition, 1. */
  readonly transitionReynolds?: number;
  /** m: grains of a rough finish; 0 for a smooth one. */
  readonly roughness?: number;
}

/** Drag of all struts together, N. */
export interface StrutDrag {
  /** Friction and form. */
  readonly friction: number;
  /** Water thrown up at the surface. */
  readonly spray: number;
  /** Where the strut meets the wing. */
  readonly junction: number;
}

function requireSizes(sizes: Readonly<Record<string, number>>): void {
  for (const [name, value] of Object.entries(sizes)) {
    if (!(value > 0 && value < Infinity)) {
      throw new RangeError(
        `Cannot give the drag of struts as ${name} must be above zero: ${value}`,
      );
    }
  }
}

/**
 * Drag of struts: friction and form on the wet length, spray at the surface, junction with the wing.
 *
 * Spray and junction stay below a few per cent of a craft's drag and are badly known (a factor of two): spray holds for speeds above
 * three times sqrt(g chord), and two junction formulas in use differ by 2.8 at 12 % thickness. The one here turns
 * negative below 5.4 % thickness and is clipped at zero. Tare runs beat all three.
 *
 * Source: Hoerner, Fluid-Dynamic Drag (1965): section drag `2 C_F (1 + 2 t/c + 60 (t/c)^4)` on chord times depth; spray
 * `0.24 q t^2` (from memory); junction `q t^2 (17 (t/c)^2 - 0.05)`.
 *
 * @param struts count, chord and thickness in m
 * @param flow speed in m/s, depth in m, density in kg/m3, kinematic viscosity in m2/s
 * @returns the three parts in N
 * @throws RangeError for a negative count, or a part of struts or flow that is not above zero
 *
 * @example
 * ```ts
 * import { strutDrag } from "lakeproof/model/strut-drag.ts";
 * const mast = { count: 1, chord: 0.12, thickness: 0.0144 };
 * const flow = { speed: 8, depth: 0.4, density: 1026.021, kinematicViscosity: 1.1892e-6 };
 * const { spray, junction } = strutDrag(mast, flow);
 * if (Math.abs(spray - 1.634) > 1e-4 || Math.abs(junction - 1.3262) > 1e-4) throw new Error("worked case");
 * ```
 */
export function strutDrag(struts: Struts, flow: StrutFlow): StrutDrag {
  const { count, chord, thickness } = struts;
  if (count === 0) return { friction: 0, spray: 0, junction: 0 };
  const { speed, depth, density, kinematicViscosity } = flow;
  // By one smallest and one sum first: this is called at every speed of every curve.
  if (
    !(Math.min(count, chord, thickness, speed, depth, density, kinematicViscosity) > 0 &&
      count + chord + thickness + speed + depth + density + kinematicViscosity < Infinity)
  ) requireSizes({ count, chord, thickness, speed, depth, density, kinematicViscosity });
  const pressure = density * speed * speed / 2;
  const ratio = thickness / chord;
  const grains = flow.roughness ?? 0;
  const friction = plateFriction(
    speed * chord / kinematicViscosity,
    flow.transitionReynolds,
    grains > 0 ? chord / grains : Infinity,
  );
  const blunt = pressure * thickness * thickness;
  return {
    friction: count * pressure * 2 * chord * depth * friction * formFactor(ratio),
    spray: count * 0.24 * blunt,
    junction: count * blunt * Math.max(0, 17 * ratio * ratio - 0.05),
  };
}

/**
 * Water that struts push aside.
 *
 * Source: a four-digit symmetric section's area is 0.685 chord times thickness (Abbott and von Doenhoff's thickness form, integrated).
 *
 * @param struts count, chord and thickness in m
 * @param depth m of strut under water
 * @returns m3
 *
 * @example
 * ```ts
 * import { strutVolume } from "lakeproof/model/strut-drag.ts";
 * const litres = 1000 * strutVolume({ count: 1, chord: 0.12, thickness: 0.0144 }, 0.4);
 * if (Math.abs(litres - 0.473) > 5e-4) throw new Error(`${litres}`);
 * ```
 */
export function strutVolume(struts: Struts, depth: number): number {
  return struts.count * 0.685 * struts.chord * struts.thickness * depth;
}
