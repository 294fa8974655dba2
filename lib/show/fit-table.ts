/**
 * What was fitted to each design, as a table: the short form of the fit reports.
 *
 * @module
 */
import type { TableRecord } from "../base/records.ts";
import { formatPercent } from "../base/rounding.ts";
import type { GlideEvidence } from "../decide/glide-evidence.ts";
import { printable } from "./printable.ts";
import { numberCell } from "./results-table.ts";

/**
 * Drag law, level and where the uncertainty of each design's distance comes from.
 *
 * @param evidence whole
 * @param name names the files; "fit" unless said otherwise
 */
export function fitTable(evidence: GlideEvidence, name = "fit"): TableRecord {
  const right = (label: string, unit: string) => ({ label, unit, align: "right" as const });
  const share = (value: number) => ({ text: formatPercent(value, 1), number: value, mark: null });
  return {
    name,
    caption: "The drag law D = a v² + d + e/v² of each design: its shape from the planform, its " +
      "level from the runs (1 when the planform's build-up was right); and how far scatter, " +
      "stated measurement errors and the assumed shape move its distance.",
    columns: [
      { label: "design", unit: "", align: "left" },
      right("level", ""),
      right("a", "N s²/m²"),
      right("d", "N"),
      right("e", "N m²/s²"),
      right("scatter", ""),
      right("measurement", ""),
      right("shape", ""),
      right("runs", ""),
    ],
    rows: evidence.designs.map((one) => {
      const design = printable(one.design);
      return [
        { text: design, number: null, mark: { design, place: one.place } },
        numberCell(one.level, 2),
        numberCell(one.law.a, 2),
        numberCell(one.law.d, 1),
        numberCell(one.law.e, 0),
        share(Math.sqrt(one.scatterVariance)),
        share(Math.sqrt(one.measurementVariance)),
        share(Math.abs(one.shapeSensitivity)),
        numberCell(one.runsUsed, 0),
      ];
    }),
  };
}
