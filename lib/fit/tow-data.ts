/**
 * Towed readings of one design as the fit takes them.
 *
 * @module
 */
import type { TowedExpectation } from "./planform-prior.ts";

/** Standard uncertainty of a reading: a fixed part and a share of the value, added in quadrature. */
export interface ReadingUncertainty {
  /** SI. */
  readonly fixed: number;
  /** 1 */
  readonly share: number;
}

/** One steady window behind the boat. */
export interface TowReading {
  /** m/s through the water. */
  readonly speed: number;
  /** N in the line. */
  readonly tension: number;
  /** rad, line above the horizontal. */
  readonly angle: number;
  /** N: weight less buoyancy of this reading; the line carries its part of it. */
  readonly weight: number;
  /** N: what the pull spent on speeding the craft up, effective mass times change of speed; 0 when steady. */
  readonly inertia: number;
  /** What the speed aimed at is called: readings of one group are repeats. */
  readonly group: string;
  /** One sweep through the speeds. */
  readonly block: string;
  /** Independent errors; what all readings share is carried apart. */
  readonly uncertainty: {
    readonly speed: ReadingUncertainty;
    readonly tension: ReadingUncertainty;
    /** rad */
    readonly angle: number;
  };
}

/** What was towed, and what its planform lets expect. */
export interface TowedCraft {
  /** N that drag is told at: weight less buoyancy at the mass of reference. */
  readonly lift: number;
  /** Free-surface factor by speed in m/s, on the lift term. */
  readonly phi: (speed: number) => number;
  /** `null` switches the planform off. */
  readonly expected: TowedExpectation | null;
}

/** Everything a fit needs. */
export interface TowData {
  readonly readings: readonly TowReading[];
  readonly craft: TowedCraft;
}

/**
 * Lift carried by the wing in one reading: the line takes over its upward part.
 *
 * @param reading tension, angle, weight
 * @returns N
 */
export function towedLift(reading: TowReading): number {
  return reading.weight - reading.tension * Math.sin(reading.angle);
}

/**
 * Drag in one reading: the level part of the pull, less what sped the craft up.
 *
 * @param reading tension, angle, inertia
 * @returns N
 */
export function towedDrag(
  reading: Pick<TowReading, "tension" | "angle" | "inertia">,
): number {
  return reading.tension * Math.cos(reading.angle) - reading.inertia;
}
