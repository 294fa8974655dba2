/**
 * The cells of the simulation study.
 *
 * @module
 */
import { type WorldName, WORLDS } from "./foil-world.ts";
import type { SessionKind } from "./session-kind.ts";

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

/** Cells with days that differ, as the verdict takes them, and the one that it refuses. */
export const IN_BLOCKS: readonly SessionKind[] = ([
  ["two even", 7],
  ["two lopsided", 7],
  ["four even", 12],
  ["apart", 7],
] as const).flatMap(([blocks, runs]) =>
  FOILS.map((foils): SessionKind => ({ world: "waves", runs, foils, depthKnown: true, blocks }))
);

const TROUBLES: readonly Partial<SessionKind>[] = [
  { runs: 7, pumped: true },
  { runs: 7, shared: true },
  { runs: 3, candidateRuns: 9 },
  { runs: 12, candidateRuns: 4 },
  { runs: 3, candidateRuns: 9, pumped: true, shared: true },
  { runs: 12, candidateRuns: 4, pumped: true, shared: true },
  { runs: 12, candidateRuns: 4, pumped: true, blocks: "two even" },
];

/** Cells of a real evening: a pumped run kept now and then, errors that all runs share, unequal numbers of runs. */
export const TROUBLED: readonly SessionKind[] = (["prior", "waves"] as const).flatMap((world) =>
  TROUBLES.flatMap((trouble) =>
    FOILS.map((foils): SessionKind => ({ world, runs: 7, foils, depthKnown: true, ...trouble }))
  )
);

/** Cells whose runs do not all stall. */
export const OTHER_ENDS: readonly SessionKind[] = (["some early", "all touched"] as const).flatMap((
  ends,
) =>
  FOILS.map((foils): SessionKind => ({ world: "waves", runs: 7, foils, depthKnown: true, ends }))
);
