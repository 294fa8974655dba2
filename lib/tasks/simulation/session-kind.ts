/**
 * Kinds of invented sessions: which world, how many runs, how they lie in blocks and how they end.
 *
 * @module
 */
import type { WorldName } from "./foil-world.ts";

/** A kind of session. */
export interface SessionKind {
  readonly world: WorldName;
  /** Runs a side. */
  readonly runs: number;
  /** `pair`: two different foils; `null`: one foil under two names. */
  readonly foils: "pair" | "null";
  /** Whether the verdict is told the depth. */
  readonly depthKnown: boolean;
  /** How runs lie in blocks (days, riders) whose drag differs by 5 %; none unless said. */
  readonly blocks?: BlockPlan;
  /** How runs end; all stall unless said. */
  readonly ends?: EndPlan;
  /** Runs of the candidate where the designs have not the same number. */
  readonly candidateRuns?: number;
  /** One run in twenty is pumped on by 20 to 60 % of its path, kept, and not marked. */
  readonly pumped?: true;
  /** Errors that all runs of the session share are there, and stated: {@link SHARED_ERRORS}. */
  readonly shared?: true;
}

/**
 * A third of the runs stopped early, up to 0.5 m/s above the stall; or no run ever stalls, since the board touches first,
 * at a speed that rises with the launch: then both designs are followed to a common end.
 */
export type EndPlan = "some early" | "all touched";

/**
 * How the two designs share blocks: two blocks half and half; two blocks with all but one run of each design in its own;
 * four blocks, even; each design in a block of its own, with the verdict kept from refusing it.
 */
export type BlockPlan = "two even" | "two lopsided" | "four even" | "apart";

/**
 * Block of a run by its place.
 *
 * @param plan how runs lie in blocks; one block where it is left out
 * @param side 0 for the baseline, 1 for the candidate
 * @param place of the run on its side, from 0
 * @param runs how many its side has
 * @returns number of the block
 */
export function blockOf(
  plan: BlockPlan | undefined,
  side: 0 | 1,
  place: number,
  runs: number,
): number {
  if (plan === "two even") return (place + side) % 2;
  if (plan === "two lopsided") return place === runs - 1 ? 1 - side : side;
  if (plan === "four even") return place % 4;
  return plan === "apart" ? side : 0;
}
