/**
 * The ratio of raw distances as a product of steps: what the foils do, then what the launches did.
 *
 * @module
 */
import { printable } from "../base/printable.ts";
import type { GlideEvidence } from "../decide/glide-evidence.ts";
import { placeOf } from "./design-place.ts";

/** A step from one ratio to the next, or a sum of steps. */
export interface DecompositionRow {
  readonly label: string;
  /** For narrow drawings. */
  readonly short: string;
  readonly kind: "step" | "same launch" | "as flown";
  /** Ratio before the step; 1 for a sum. */
  readonly from: number;
  /** Ratio after it. */
  readonly to: number;
  /** What the step multiplies by; the ratio itself for a sum. */
  readonly factor: number;
}

/** The rows of one candidate. */
export interface Decomposition {
  readonly candidate: string;
  readonly place: number;
  readonly baseline: string;
  readonly low: number | null;
  readonly high: number | null;
  readonly rows: readonly DecompositionRow[];
}

/**
 * The numbers that the figure draws: drag x speed to spend = same launch; x launches = as flown.
 *
 * @param evidence of a comparison
 * @returns one entry a candidate with raw distances; all ratios are of distances, over the baseline's
 */
export function decompositions(evidence: GlideEvidence): Decomposition[] {
  return evidence.answer.comparisons.flatMap((one) => {
    const { raw, ratio } = one;
    if (raw === null) return [];
    const { dragEffect, energyEffect, designEffect, launchEffect } = raw;
    const step = (label: string, short: string, from: number, factor: number) => ({
      label,
      short,
      kind: "step" as const,
      from,
      to: from * factor,
      factor,
    });
    return [{
      candidate: printable(one.candidate),
      baseline: printable(one.baseline),
      place: placeOf(evidence, one.candidate),
      low: ratio?.low ?? null,
      high: ratio?.high ?? null,
      rows: [
        step("drag", "drag", 1, dragEffect),
        step("speed to spend", "speed", dragEffect, energyEffect),
        {
          label: "from the same launch",
          short: "same launch",
          kind: "same launch" as const,
          from: 1,
          to: designEffect,
          factor: designEffect,
        },
        step("the launches", "launches", designEffect, launchEffect),
        {
          label: "as flown",
          short: "as flown",
          kind: "as flown" as const,
          from: 1,
          to: raw.ratio,
          factor: raw.ratio,
        },
      ],
    }];
  });
}
