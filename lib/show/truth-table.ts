/**
 * An answer beside the truth, which only an invented session has.
 *
 * @module
 */
import type { TableRecord } from "../base/records.ts";
import { decimalsOf, formatInterval, formatNumber, formatQuantity } from "../base/rounding.ts";
import type { GlideEvidence } from "../decide/glide-evidence.ts";
import { textCell } from "./results-table.ts";

/** The true ratio of a pair of designs at a launch; `null` where nobody knows it. */
export type TrueRatioOf = (
  pair: { readonly baseline: string; readonly candidate: string },
  launch: { readonly speed: number; readonly drop: number },
) => number | null;

/**
 * Each comparison's interval beside the true ratio.
 *
 * @param evidence of a comparison
 * @param truth looks the true ratio up
 * @returns one row a candidate
 */
export function truthTable(evidence: GlideEvidence, truth: TrueRatioOf): TableRecord {
  const { launch, comparisons } = evidence.answer;
  return {
    name: "truth",
    caption: "The answer beside the truth, which the generator of the invented session wrote down.",
    columns: [
      { label: "candidate", unit: "", align: "left" },
      { label: "ratio found", unit: "", align: "right" },
      { label: "interval", unit: "95 %", align: "right" },
      { label: "true ratio", unit: "", align: "right" },
      { label: "true ratio inside", unit: "", align: "left" },
    ],
    rows: comparisons.map((one) => {
      const mark = {
        design: one.candidate,
        place: evidence.designs.find((design) => design.design === one.candidate)?.place ?? 7,
      };
      const actual = launch === null ? null : truth(one, launch);
      if (one.ratio === null || actual === null) {
        return [{ ...textCell(one.candidate), mark }, ...["", "", "", "not known"].map(textCell)];
      }
      const { low, high } = one.ratio;
      const inside = (low === null || low <= actual) && (high === null || actual <= high);
      return [
        { ...textCell(one.candidate), mark },
        { ...textCell(formatQuantity(one.ratio)), number: one.ratio.value },
        textCell(formatInterval(one.ratio)),
        { ...textCell(formatNumber(actual, decimalsOf(one.ratio))), number: actual },
        textCell(inside ? "yes" : "no"),
      ];
    }),
  };
}
