/**
 * What a changed craft would cost or save: the model asked again with one thing changed.
 *
 * @module
 */
import type { TakeoffChange } from "../base/takeoff-answer.ts";
import { type MediumNumbers, waterNumbers } from "../fit/takeoff-numbers.ts";
import type { SteadyCraft } from "../model/steady-craft.ts";

/** One change, in words, and the craft after it; `null` where it makes no sense. */
interface Change {
  readonly words: string;
  readonly changed: (craft: SteadyCraft) => SteadyCraft | null;
}

/** m: grains of a finish left from coarse paper, and the Reynolds number at which they trip the flow at once. */
const GRAINS = 60e-6, TRIPPED = 1.01e4;

/** m deeper. */
const DEEPER = 0.1;

const CHANGES: readonly Change[] = [
  {
    words: "turbulent from the leading edge",
    changed: (craft) => ({ ...craft, transitionReynolds: TRIPPED }),
  },
  {
    words: "rough finish: grains of 0.06 mm, turbulent from the leading edge",
    changed: (craft) => ({ ...craft, transitionReynolds: TRIPPED, roughness: GRAINS }),
  },
  {
    words: "10 % more span, same area",
    changed: (craft) => ({ ...craft, span: craft.span * 1.1, wingVolume: craft.wingVolume / 1.1 }),
  },
  {
    words: "10 % more area, same span",
    changed: (craft) => ({ ...craft, area: craft.area * 1.1, wingVolume: craft.wingVolume * 1.21 }),
  },
  {
    words: "one strut more",
    changed: (craft) => ({ ...craft, strutCount: craft.strutCount + 1 }),
  },
  {
    words: "running 0.1 m deeper",
    changed: (craft) =>
      craft.runningDepth + DEEPER > craft.takeoffDepth
        ? null
        : { ...craft, runningDepth: craft.runningDepth + DEEPER },
  },
  {
    words: "running 0.1 m nearer the surface",
    changed: (craft) =>
      craft.runningDepth - DEEPER < craft.area / craft.span
        ? null
        : { ...craft, runningDepth: craft.runningDepth - DEEPER },
  },
  { words: "10 kg more", changed: (craft) => ({ ...craft, mass: craft.mass + 10 }) },
  {
    words: "rider prone (0.25 m² in the air)",
    changed: (craft) => ({ ...craft, airDragArea: 0.25 }),
  },
];

/**
 * What each change would do, by the model alone.
 *
 * Volumes follow the shape: a longer wing of the same area has a shorter chord and less volume. What a change does to what the model does
 * not know (how the wing bends, how the board rides) is not in it.
 *
 * @param craft as it is
 * @param numbers of it
 * @returns relative changes; 0.02 is two per cent more
 *
 * @example
 * ```ts
 * import { takeoffChanges } from "lakeproof/decide/takeoff-changes.ts";
 * import { waterNumbers } from "lakeproof/fit/takeoff-numbers.ts";
 * import { USUAL_CRAFT } from "lakeproof/model/usual-craft.ts";
 * const numbers = waterNumbers(USUAL_CRAFT);
 * const changes = numbers.ok ? takeoffChanges(USUAL_CRAFT, numbers) : [];
 * if (!changes.some((one) => one.change === "10 kg more" && one.takeoffSpeed! > 0.05)) throw new Error("heavier");
 * ```
 */
export function takeoffChanges(craft: SteadyCraft, numbers: MediumNumbers): TakeoffChange[] {
  return CHANGES.flatMap(({ words, changed }) => {
    const other = changed(craft);
    if (other === null) return [];
    const after = waterNumbers(other);
    const relative = (of: keyof MediumNumbers) => after.ok ? after[of] / numbers[of] - 1 : null;
    return [{
      change: words,
      takeoffSpeed: relative("takeoffSpeed"),
      towForceAtTakeoff: relative("towForceAtTakeoff"),
      leastDrag: relative("leastDrag"),
      leastPower: relative("leastPower"),
    }];
  });
}
