/**
 * Runs and fitted curves of distance against launch speed, design by design.
 *
 * @module
 */
import { printable } from "../base/printable.ts";
import type { CurvePoint, GlideEvidence } from "../decide/glide-evidence.ts";
import { refusedDesigns } from "./refused-designs.ts";

/** A run as a point. */
export interface DistancePoint {
  readonly run: string;
  /** m/s */
  readonly launchSpeed: number;
  /** m */
  readonly distance: number;
  readonly used: boolean;
  readonly flagged: boolean;
}

/** The numbers drawn for one design. */
export interface DistanceSeries {
  readonly design: string;
  readonly place: number;
  readonly curve: readonly CurvePoint[];
  readonly points: readonly DistancePoint[];
}

/**
 * The numbers that the figure draws.
 *
 * @param evidence of a comparison
 * @returns one entry a design; speeds in m/s, distances in m
 */
export function distanceSeries(evidence: GlideEvidence): DistanceSeries[] {
  const refused = refusedDesigns(evidence.answer);
  return evidence.designs.map((one) => ({
    design: printable(one.design),
    place: one.place,
    curve: refused.has(one.design) ? [] : one.curve,
    points: one.runs.flatMap(({ run, launchSpeed, distance, used, flag }) =>
      launchSpeed === null || distance === null
        ? []
        : [{ run: printable(run), launchSpeed, distance, used, flagged: flag !== null }]
    ),
  }));
}
