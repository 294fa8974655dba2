/**
 * The truth behind a demo session, which its generator wrote beside it: only invented data has one.
 *
 * @module
 */
import { readProjectFile } from "./shared-table.ts";

/** True ratio of distances at one launch. */
export interface TrueRatio {
  readonly baseline: string;
  readonly candidate: string;
  /** m/s */
  readonly launchSpeed: number;
  /** m */
  readonly drop: number;
  readonly ratio: number;
}

/** What a design truly does behind the boat. */
export interface TrueTow {
  readonly design: string;
  readonly liftToDrag: number;
  /** m/s, where it is best. */
  readonly speed: number;
}

/**
 * The true best lift-to-drag of each design of a towed demo session.
 *
 * @param name of a demo session under `data/`
 * @returns for each invented design what its tow should find, SI
 * @throws DataError when the session has no truth, as real ones have none
 */
export function demoTowTruth(name: string): readonly TrueTow[] {
  return JSON.parse(readProjectFile(`data/${name}-truth.json`)).best;
}

/**
 * The true ratios that the generator of a demo session wrote down.
 *
 * @param name of a demo session under `data/`
 * @returns for each pair of invented designs the true ratio of their distances
 * @throws DataError when the session has no truth, as real ones have none
 */
export function demoTruth(name: string): readonly TrueRatio[] {
  return JSON.parse(readProjectFile(`data/${name}-truth.json`)).ratios;
}

/**
 * True ratio between two designs at a launch.
 *
 * @param rows the generator's grid of launches
 * @param pair names of baseline and candidate
 * @param launch speed in m/s, drop in m
 * @returns candidate's distance over baseline's, by straight lines between the grid's rows; `null` outside the grid
 */
export function trueRatioAt(
  rows: readonly TrueRatio[],
  pair: { readonly baseline: string; readonly candidate: string },
  launch: { readonly speed: number; readonly drop: number },
): number | null {
  const own = rows.filter((row) =>
    row.baseline === pair.baseline && row.candidate === pair.candidate
  );
  const alongDrop = (speed: number) =>
    between(
      own.filter((row) => row.launchSpeed === speed).map((row) => [row.drop, row.ratio] as const),
      launch.drop,
    );
  const speeds = [...new Set(own.map((row) => row.launchSpeed))];
  const points = speeds.flatMap((speed) => {
    const ratio = alongDrop(speed);
    return ratio === null ? [] : [[speed, ratio] as const];
  });
  return between(points, launch.speed);
}

/** Straight line between the two points that hold x; `null` when none do. */
function between(points: readonly (readonly [number, number])[], x: number): number | null {
  const sorted = [...points].sort((one, two) => one[0] - two[0]);
  for (let i = 0; i < sorted.length; i++) {
    const [x0, y0] = sorted[i]!;
    if (x === x0) return y0;
    const next = sorted[i + 1];
    if (next !== undefined && x0 < x && x < next[0]) {
      return y0 + (next[1] - y0) * (x - x0) / (next[0] - x0);
    }
  }
  return null;
}
