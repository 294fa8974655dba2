/** The invented session of glide-verdict.py, as the core takes it. */
import type { GlidingCraft } from "lakeproof/fit/gliding-craft.ts";
import type { GlideRun, GlideTarget } from "lakeproof/fit/glide-run.ts";

const GRAVITY = 9.80665, DENSITY = 999.1, MASS = 84, EFFECTIVE_MASS = 86.52;

function craft(volume: number, a: number, e: number): GlidingCraft {
  const carried = MASS - DENSITY * volume;
  return { weight: carried * GRAVITY, inertia: EFFECTIVE_MASS / carried, a, d: 0, e, phi: null };
}

function runs(craft: GlidingCraft, rows: readonly (readonly number[])[]): GlideRun[] {
  return rows.map((row) => {
    const [launchSpeed, endSpeed, drop, distance, stalled] = row as [
      number,
      number,
      number,
      number,
      number,
    ];
    return {
      launchSpeed,
      endSpeed,
      drop,
      distance,
      inLevel: true,
      inEnd: stalled === 1,
      craft,
      uncertainty: {
        launchSpeed: 0.08,
        endSpeed: 0.08,
        drop: 0.02,
        distance: Math.hypot(0.012 * distance, 0.15),
      },
    };
  });
}

export const TARGET: GlideTarget = {
  speed: 4.1,
  drop: 0.18,
  end: null,
  gravity: GRAVITY,
  shapeUncertainty: 0.3,
};

export const ALDER: GlidingCraft = craft(0.002, 1.55, 512);
export const BIRCH: GlidingCraft = craft(0.0028, 1.62, 341);

export const ALDER_RUNS: GlideRun[] = runs(ALDER, [
  [4.28, 2.89, 0.222, 9.48, 1],
  [4.45, 3.04, 0.164, 8.97, 1],
  [4.47, 3.18, 0.174, 9.05, 1],
  [4.54, 3.08, 0.25, 8.54, 1],
  [4.75, 3.19, 0.144, 10.95, 1],
  [4.62, 3.06, 0.233, 9.52, 1],
  [4.47, 3.17, 0.177, 8.79, 1],
]);
export const BIRCH_RUNS: GlideRun[] = runs(BIRCH, [
  [3.9, 3.02, 0.255, 7.86, 1],
  [4.19, 2.91, 0.19, 9.63, 1],
  [3.47, 2.95, 0.168, 4.36, 1],
  [3.71, 2.99, 0.147, 5.39, 1],
  [3.94, 3.27, 0.085, 4.46, 0],
  [4.33, 2.98, 0.209, 9.49, 1],
  [3.69, 2.99, 0.221, 5.17, 1],
]);
