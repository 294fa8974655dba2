/**
 * The place of a design, which gives its colour, mark and dash.
 *
 * @module
 */
import type { GlideEvidence } from "../decide/glide-evidence.ts";

/** A place past all the looks: grey. */
const UNPLACED = 7;

/**
 * The place of a design in `designs.csv`.
 *
 * @param evidence of a comparison
 * @param design its name, as data have it
 * @returns its place from 1; one past the last look for a design that the evidence doesn't know
 */
export function placeOf(evidence: GlideEvidence, design: string): number {
  return evidence.designs.find((one) => one.design === design)?.place ?? UNPLACED;
}
