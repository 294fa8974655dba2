/**
 * One invented session of tows as the study asks for it: a craft under two names, and another craft beside it.
 *
 * @module
 */
import type { Session } from "../../base/session.ts";
import type { SeededRandom } from "../../numeric/random.ts";
import { speedsFrom, towSession } from "./invented-tow.ts";
import { drawCraft, type TrueCraft } from "./towed-craft.ts";
import type { TowKind, TowSpeeds } from "./tow-kind.ts";

/** Names of the three designs. */
export const TOWED = { craft: "alder", twin: "birch", other: "cedar" } as const;

/** A session with its truth. */
export interface InventedTowSession {
  readonly session: Session;
  readonly craft: TrueCraft;
  /** Another craft with the same rider. */
  readonly other: TrueCraft;
  /** Speeds aimed at with the craft, m/s. */
  readonly speeds: readonly number[];
}

/** Largest lift coefficient of least drag due to lift in the stress world. */
const OFFSET = 0.12;

/**
 * Draws a session: two crafts with one rider, the first under two names with a depth and a wet volume measured anew, towed
 * in turn from 1.05 to 1.2 times their slowest flight to 1.5 to 2.2 times that, or over another range, a line of 3 to 15
 * degrees, and 1 to 4 % of scatter that nobody stated.
 *
 * @param kind of session
 * @param random stream
 * @returns session and truth
 */
export function drawTowSession(kind: TowKind, random: SeededRandom): InventedTowSession {
  const between = (low: number, high: number) => low + (high - low) * random.uniform();
  const options = kind.world === "stress" ? { offset: OFFSET } : {};
  const craft = craftFor(kind, () => drawCraft(TOWED.craft, random, options));
  const mass = craft.mass;
  const other = craftFor(kind, () => drawCraft(TOWED.other, random, { ...options, mass }));
  const ends = drawEnds(kind.range, between);
  const speedsOf = (one: TrueCraft) => {
    const { low, high } = ends(one);
    return speedsFrom(low, high, kind.speeds);
  };
  const session = towSession([craft, { ...craft, name: TOWED.twin }, other], {
    speeds: speedsOf,
    sweeps: kind.sweeps,
    process: between(0.01, 0.04),
    shared: true,
    lineAngle: between(3, 15),
    speedScatter: kind.speedScatter,
  }, random);
  return {
    session: kind.depthKnown
      ? session
      : { ...session, tow: session.tow.map((one) => ({ ...one, depth: null })) },
    craft,
    other,
    speeds: speedsOf(craft),
  };
}

/** Best speed over slowest flight from which on there is room to tow below the best speed. */
const ROOM_BELOW = 1.45;

/** A craft that the kind of session can be towed with. */
function craftFor({ range }: TowKind, draw: () => TrueCraft): TrueCraft {
  for (;;) {
    const craft = draw();
    if (range !== "below" || craft.best.speed > ROOM_BELOW * craft.stallSpeed) return craft;
  }
}

/** Slowest and fastest speed aimed at, m/s, drawn once for all crafts of a session. */
function drawEnds(
  range: TowSpeeds,
  between: (low: number, high: number) => number,
): (craft: TrueCraft) => { readonly low: number; readonly high: number } {
  switch (range) {
    case "across": {
      const slowest = between(1.05, 1.2), span = between(1.5, 2.2);
      return ({ stallSpeed }) => ({ low: slowest * stallSpeed, high: span * slowest * stallSpeed });
    }
    case "beyond": {
      const slowest = between(1.05, 1.2), span = between(1.4, 2);
      return ({ best: { speed } }) => ({ low: slowest * speed, high: span * slowest * speed });
    }
    case "below": {
      const fastest = between(1.05, 1.2), span = between(1.3, 1.6);
      return ({ best: { speed }, stallSpeed }) => ({
        low: Math.max(speed / fastest / span, 1.02 * stallSpeed),
        high: speed / fastest,
      });
    }
    case "narrow": {
      const middle = between(0.9, 1.1), half = Math.sqrt(between(1.15, 1.25));
      return ({ best: { speed } }) => ({ low: middle * speed / half, high: middle * speed * half });
    }
  }
}
