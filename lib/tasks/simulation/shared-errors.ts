/**
 * Errors that all runs of an invented session share.
 *
 * @module
 */
import type { SeededRandom } from "../../numeric/random.ts";

/** Standard uncertainty of what all runs of a session share: a place of marks, a scale of speed, a tape, a drop habit. */
export const SHARED_ERRORS = {
  /** m/s, launch speed only. */
  launch: 0.1,
  /** Share of both speeds. */
  scale: 0.015,
  /** Share of the distance. */
  tape: 0.01,
  /** m */
  drop: 0.03,
} as const;

/** Sizes of the shared errors, in their own units. */
export type SharedErrors = Readonly<Record<keyof typeof SHARED_ERRORS, number>>;

/**
 * A run with shared errors added to what was read.
 *
 * @param run as read without them
 * @param errors of this session, in their own units
 * @returns the run as it stands in the session
 */
export function withShared<Run extends Reading>(run: Run, errors: SharedErrors): Run {
  return {
    ...run,
    launchSpeed: run.launchSpeed * (1 + errors.scale) + errors.launch,
    endSpeed: run.endSpeed * (1 + errors.scale),
    drop: run.drop + errors.drop,
    distance: run.distance * (1 + errors.tape),
  };
}

interface Reading {
  readonly launchSpeed: number;
  readonly endSpeed: number;
  readonly drop: number;
  readonly distance: number;
}

/**
 * Shared errors of one session, of the sizes that are stated.
 *
 * @param random stream
 * @returns each in its own unit
 */
export function drawShared(random: SeededRandom): SharedErrors {
  const { launch, scale, tape, drop } = SHARED_ERRORS;
  return {
    launch: launch * random.normal(),
    scale: scale * random.normal(),
    tape: tape * random.normal(),
    drop: drop * random.normal(),
  };
}
