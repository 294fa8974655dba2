/**
 * Kinds of invented tows: which world, how many readings, what scatters with the speed.
 *
 * @module
 */

/** What the worlds are called in print. */
export const TOW_WORLDS = {
  usual:
    "drag by its parts: Reynolds number, cambered sections, struts, spray, air, a free surface whose formula is 30 % off",
  stress:
    "the same, with drag due to lift least at a lift coefficient of up to 0.12 on the whole of it",
} as const;

/** Which speeds are towed, as they are called in print. */
export const TOW_RANGES = {
  across: "from just over the slowest flight to 1.5 to 2.2 times that",
  beyond: "all faster than the best speed",
  below: "all slower than the best speed",
  narrow: "fastest over slowest 1.15 to 1.25, about the best speed or beside it",
} as const;

/** Where the speeds towed lie. */
export type TowSpeeds = keyof typeof TOW_RANGES;

/** Which idea of drag a world holds. */
export type TowWorld = keyof typeof TOW_WORLDS;

/** A kind of session. */
export interface TowKind {
  readonly world: TowWorld;
  /** Speeds aimed at. */
  readonly speeds: number;
  /** Sweeps through them. */
  readonly sweeps: number;
  /** Scatter that the repeats of a speed share, as a share of the drag. */
  readonly speedScatter: number;
  /** Whether the answer is told the depth. */
  readonly depthKnown: boolean;
  readonly range: TowSpeeds;
}

/** Numbers of readings a design at which coverage is asked for: 8, 15, 27 and 40. */
export const ASKED_SWEEPS: readonly (readonly [speeds: number, sweeps: number])[] = [
  [4, 2],
  [5, 3],
  [9, 3],
  [10, 4],
];

/**
 * All cells: both worlds, with and without scatter by speed; one in which nobody measured the depth; and ranges that leave the
 * best speed out, or hardly hold it.
 */
export const TOW_KINDS: readonly TowKind[] = [
  ...(Object.keys(TOW_WORLDS) as TowWorld[]).flatMap((world) =>
    [0, 0.02].flatMap((speedScatter) =>
      ASKED_SWEEPS.map(([speeds, sweeps]): TowKind => ({
        world,
        speeds,
        sweeps,
        speedScatter,
        depthKnown: true,
        range: "across",
      }))
    )
  ),
  { world: "usual", speeds: 5, sweeps: 3, speedScatter: 0, depthKnown: false, range: "across" },
  ...(Object.keys(TOW_WORLDS) as TowWorld[]).flatMap((world) =>
    (["beyond", "below", "narrow"] as const).map((range): TowKind => ({
      world,
      speeds: 5,
      sweeps: 3,
      speedScatter: 0,
      depthKnown: true,
      range,
    }))
  ),
];

/**
 * The name of a cell, which is also the name of its random stream.
 *
 * @param kind of session
 * @returns words
 */
export function towCellName(kind: TowKind): string {
  const { world, speeds, sweeps, speedScatter, depthKnown, range } = kind;
  return `${world} ${speeds} x ${sweeps}${
    speedScatter === 0 ? "" : `, ${100 * speedScatter} % by speed`
  }${depthKnown ? "" : ", depth unknown"}${range === "across" ? "" : `, ${range}`}`;
}
