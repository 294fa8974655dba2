/**
 * Free-surface factors that the moved twins of one craft share: most doubts leave span and depth alone, so the same integral would be
 * computed again and again at the same speeds.
 *
 * @module
 */
import { ellipticLinePhi } from "../model/free-surface.ts";
import type { SteadyCraft } from "../model/steady-craft.ts";

/** phi by speed in m/s, for a craft at a depth in m. */
export type PhiOf = (craft: SteadyCraft, depth: number) => (speed: number) => number;

/**
 * A store of factors, exact to the last bit: nothing is interpolated, only kept.
 *
 * Meant for one computation and thrown away after it, so that it never grows past a few thousand numbers.
 *
 * @returns a function that gives the same factor for the same span, depth and gravity
 *
 * @example
 * ```ts
 * import { sharedPhi } from "lakeproof/fit/shared-phi.ts";
 * import { USUAL_CRAFT } from "lakeproof/model/usual-craft.ts";
 * const phiOf = sharedPhi();
 * const heavier = { ...USUAL_CRAFT, mass: 100 };
 * if (phiOf(USUAL_CRAFT, 0.4) !== phiOf(heavier, 0.4)) throw new Error("one factor for both");
 * ```
 */
export function sharedPhi(): PhiOf {
  const factors = new Map<string, (speed: number) => number>();
  return ({ span, gravity }, depth) => {
    const key = `${span} ${depth} ${gravity}`;
    const found = factors.get(key);
    if (found !== undefined) return found;
    const exact = ellipticLinePhi({ span, depth });
    const values = new Map<number, number>();
    const factor = (speed: number) => {
      const kept = values.get(speed);
      if (kept !== undefined) return kept;
      const value = exact(speed, gravity);
      values.set(speed, value);
      return value;
    };
    factors.set(key, factor);
    return factor;
  };
}
