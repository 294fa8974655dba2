/**
 * What a fitted tow says at a speed, and at which speed it says the most.
 *
 * @module
 */
import { bracketedRoot } from "../numeric/roots.ts";
import { dot, type Three } from "./symmetric-three.ts";
import type { TowedCraft } from "./tow-data.ts";

/** A fitted law with the speeds it was fitted to: a tow's, or that of glides. */
export interface FittedLaw {
  /** N at v0, for a lift of the craft's. */
  readonly parameters: Three;
  /** v0 in m/s. */
  readonly referenceSpeed: number;
  readonly data: {
    readonly craft: Pick<TowedCraft, "lift" | "phi">;
    readonly readings: readonly { readonly speed: number }[];
  };
}

/** The speeds towed, m/s. */
export interface SpeedRange {
  readonly from: number;
  readonly to: number;
}

/**
 * Slowest and fastest reading.
 *
 * @param fit a fitted tow
 * @returns m/s
 */
export function towedRange(fit: FittedLaw): SpeedRange {
  const speeds = fit.data.readings.map((one) => one.speed);
  return { from: Math.min(...speeds), to: Math.max(...speeds) };
}

/**
 * The three terms of the law at a speed and the full lift: how much drag changes with each parameter.
 *
 * @param fit a fitted tow
 * @param speed m/s
 * @returns 1
 */
export function towTerms({ referenceSpeed: v0, data }: FittedLaw, speed: number): Three {
  return [(speed / v0) ** 2, 1, data.craft.phi(speed) * (v0 / speed) ** 2];
}

/** m/s over which the slope of phi is taken. */
const STEP = 0.02;

/**
 * Change of the terms with speed, s/m.
 *
 * @param law fitted
 * @param speed in m/s
 * @returns derivative of each of the three terms
 */
export function towTermSlopes({ referenceSpeed: v0, data }: FittedLaw, speed: number): Three {
  const { phi } = data.craft;
  const phiSlope = (phi(speed + STEP) - phi(speed - STEP)) / (2 * STEP);
  return [2 * speed / v0 ** 2, 0, (v0 / speed) ** 2 * (phiSlope - 2 * phi(speed) / speed)];
}

/**
 * Drag of the whole craft at a speed and the full lift.
 *
 * @param fit a fitted tow
 * @param speed m/s
 * @returns N
 */
export function towDrag(fit: FittedLaw, speed: number): number {
  return dot(towTerms(fit, speed), fit.parameters);
}

/** A speed at which drag or power is least, with what its uncertainty needs. */
export interface LeastSpeed {
  /** m/s */
  readonly speed: number;
  /** Change of the speed with each parameter, m/s per N. */
  readonly gradient: Three;
}

/** Speeds looked at for the least: from half the slowest to twice the fastest towed, in so many equal ratios. */
const LOOK = { below: 0.5, above: 2, count: 80 } as const;

/** Speeds found, by fit: several estimates of one answer ask for the same. */
const KEPT = [
  new WeakMap<FittedLaw, LeastSpeed | null>(),
  new WeakMap<FittedLaw, LeastSpeed | null>(),
];

function leastSpeed(fit: FittedLaw, power: 0 | 1): LeastSpeed | null {
  const kept = KEPT[power]!.get(fit);
  if (kept !== undefined) return kept;
  const found = findLeastSpeed(fit, power);
  KEPT[power]!.set(fit, found);
  return found;
}

/** Least of drag (`power` 0) or of drag times speed (`power` 1), where `v^power D` is flat. */
function findLeastSpeed(fit: FittedLaw, power: 0 | 1): LeastSpeed | null {
  const { from, to } = towedRange(fit);
  const low = LOOK.below * from, high = LOOK.above * to;
  const speeds = Array.from(
    { length: LOOK.count + 1 },
    (_, i) => low * (high / low) ** (i / LOOK.count),
  );
  const values = speeds.map((v) => v ** power * towDrag(fit, v));
  const least = power === 1 ? dipBelowBest(fit, speeds, values) : values.indexOf(
    Math.min(...values),
  );
  if (least <= 0 || least >= LOOK.count) return null;
  // Terms of the slope of v^power D, and that slope itself.
  const rise = (v: number): Three => {
    const x = towTerms(fit, v), slope = towTermSlopes(fit, v);
    return [0, 1, 2].map((j) =>
      power === 0 ? slope[j]! : x[j]! + v * slope[j]!
    ) as unknown as Three;
  };
  const steepness = (v: number) => dot(rise(v), fit.parameters);
  const below = speeds[least - 1]!, above = speeds[least + 1]!;
  if (!(steepness(below) < 0 && steepness(above) > 0)) return null;
  const speed = bracketedRoot(steepness, { low: below, high: above }, { relativeTolerance: 1e-13 });
  const h = 1e-4 * speed;
  const curvature = (steepness(speed + h) - steepness(speed - h)) / (2 * h);
  if (!(curvature > 0)) return null;
  const terms = rise(speed);
  return { speed, gradient: [-terms[0] / curvature, -terms[1] / curvature, -terms[2] / curvature] };
}

/**
 * Place of the first dip going down from the best speed. Power still rises there, so its dip lies lower; a second dip far
 * below, where the free surface no longer adds to drag due to lift, is none that anyone flies.
 */
function dipBelowBest(
  fit: FittedLaw,
  speeds: readonly number[],
  values: readonly number[],
): number {
  const best = leastSpeed(fit, 0);
  if (best === null) return -1;
  let place = speeds.findLastIndex((v) => v <= best.speed) + 1;
  while (place > 0 && values[place - 1]! < values[place]!) place--;
  return place;
}

/**
 * Speed of least drag, hence of best lift-to-drag.
 *
 * @param fit a fitted tow
 * @returns the speed, or `null` where there is no dip between half the slowest and twice the fastest speed towed
 */
export function towedBestSpeed(fit: FittedLaw): LeastSpeed | null {
  return leastSpeed(fit, 0);
}

/**
 * Speed of least power, hence of the longest time aloft: the dip of power next below the best speed.
 *
 * @param fit a fitted tow
 * @returns the speed, or `null` where there is no best speed or no such dip
 */
export function towedLeastPowerSpeed(fit: FittedLaw): LeastSpeed | null {
  return leastSpeed(fit, 1);
}
