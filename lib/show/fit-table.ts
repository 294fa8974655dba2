/**
 * What was fitted to each design, as a table: the short form of the fit reports.
 *
 * @module
 */
import type { TableRecord } from "../base/records.ts";
import { formatPercent } from "../base/rounding.ts";
import type { GlideEvidence } from "../decide/glide-evidence.ts";
import { designCell, formattedCell, numberCell } from "./table-cells.ts";
import { left, right } from "./table-columns.ts";

/**
 * Drag law, level and where the uncertainty of each design's distance comes from.
 *
 * @param evidence whole
 * @param name names the files; "fit" unless said otherwise
 * @returns one row a design
 */
export function fitTable(evidence: GlideEvidence, name = "fit"): TableRecord {
  const share = (value: number) => formattedCell(formatPercent(value, 1), value);
  return {
    name,
    caption: "The drag law D = a v² + d + e/v² of each design: its shape from the planform, its " +
      "level from the runs (1 when the planform's build-up was right); and how far scatter, " +
      "stated measurement errors and the assumed shape move its distance.",
    columns: [
      left("design"),
      right("level"),
      right("a", "N s²/m²"),
      right("d", "N"),
      right("e", "N m²/s²"),
      right("scatter"),
      right("measurement"),
      right("shape"),
      right("runs"),
    ],
    rows: evidence.designs.map((one) => [
      designCell(one.design, one.place),
      numberCell(one.level, 2),
      numberCell(one.law.a, 2),
      numberCell(one.law.d, 1),
      numberCell(one.law.e, 0),
      share(Math.sqrt(one.scatterVariance)),
      share(Math.sqrt(one.measurementVariance)),
      share(Math.abs(one.shapeSensitivity)),
      numberCell(one.runsUsed, 0),
    ]),
  };
}
