/**
 * What a spreadsheet would say: mean raw distance of each design, whatever its launches were.
 *
 * @module
 */
import { mean } from "simple-statistics";
import type { TableRecord } from "../base/records.ts";
import { formatNumber } from "../base/rounding.ts";
import type { GlideEvidence } from "../decide/glide-evidence.ts";
import { designCell, numberCell, textCell } from "./table-cells.ts";
import { left, right } from "./table-columns.ts";

/**
 * Raw means by design, and each candidate's raw ratio with the interval that a textbook would give it.
 *
 * Shown to be distrusted: the interval knows nothing of the launches.
 *
 * @param evidence of a comparison
 * @returns one row a design, the baseline first
 */
export function naiveTable(evidence: GlideEvidence): TableRecord {
  return {
    name: "naive",
    caption:
      "Raw distances by the textbook: geometric means and Welch's interval for their ratio. It looks sure of " +
      "itself and knows nothing of the launches.",
    columns: [
      left("design"),
      right("runs"),
      right("mean launch speed", "m/s"),
      right("mean distance", "m"),
      right("ratio of geometric means"),
      right("textbook interval", "95 %"),
    ],
    rows: evidence.designs.map((design) => {
      const used = design.runs.filter((run) => run.used);
      const speeds = used.flatMap((run) => run.launchSpeed === null ? [] : [run.launchSpeed]);
      const distances = used.flatMap((run) => run.distance === null ? [] : [run.distance]);
      const naive = evidence.naive.find((one) => one.candidate === design.design);
      return [
        designCell(design.design, design.place),
        numberCell(used.length, 0),
        numberCell(speeds.length === 0 ? null : mean(speeds), 2),
        numberCell(distances.length === 0 ? null : mean(distances), 2),
        numberCell(naive?.ratio ?? null, 2),
        textCell(
          naive === undefined
            ? ""
            : `${formatNumber(naive.low, 2)} to ${formatNumber(naive.high, 2)}`,
        ),
      ];
    }),
  };
}
