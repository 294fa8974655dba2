/**
 * The cells of the simulation study.
 *
 * @module
 */
import { type WorldName, WORLDS } from "./foil-world.ts";
import type { SessionKind } from "./invented-session.ts";

const FOILS = ["pair", "null"] as const;

/**
 * All cells for the given numbers of runs: four worlds, two foils and one.
 *
 * @param runs numbers of runs a side
 * @returns kinds of sessions
 */
export function cellsFor(runs: readonly number[]): SessionKind[] {
  return runs.flatMap((count) =>
    (Object.keys(WORLDS) as WorldName[]).flatMap((world) =>
      FOILS.map((foils): SessionKind => ({ world, runs: count, foils, depthKnown: true }))
    )
  );
}

/** Cells in which nobody measured the depth. */
export const DEPTH_UNKNOWN: readonly SessionKind[] = ["waves", "images"].flatMap((world) =>
  FOILS.map((foils): SessionKind => ({
    world: world as WorldName,
    runs: 12,
    foils,
    depthKnown: false,
  }))
);
