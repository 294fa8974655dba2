/**
 * An answer beside the truth, which only an invented session has.
 *
 * @module
 */
import type { TableRecord } from "../base/records.ts";
import { decimalsOf, formatInterval, formatQuantity } from "../base/rounding.ts";
import type { GlideEvidence } from "../decide/glide-evidence.ts";
import { placeOf } from "./design-place.ts";
import { designCell, formattedCell, numberCell, textCell } from "./table-cells.ts";
import { left, right } from "./table-columns.ts";

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
      left("candidate"),
      right("ratio found"),
      right("interval", "95 %"),
      right("true ratio"),
      left("true ratio inside"),
    ],
    rows: comparisons.map((one) => {
      const head = designCell(one.candidate, placeOf(evidence, one.candidate));
      const actual = launch === null ? null : truth(one, launch);
      if (one.ratio === null || actual === null) {
        return [head, ...["", "", "", "not known"].map(textCell)];
      }
      const { low, high } = one.ratio;
      const inside = (low === null || low <= actual) && (high === null || actual <= high);
      return [
        head,
        formattedCell(formatQuantity(one.ratio, { apartFrom: 1 }), one.ratio.value),
        textCell(formatInterval(one.ratio, { apartFrom: 1 })),
        numberCell(actual, decimalsOf(one.ratio, { apartFrom: 1 })),
        textCell(inside ? "yes" : "no"),
      ];
    }),
  };
}
