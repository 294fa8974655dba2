/**
 * The designs as they were measured in the workshop.
 *
 * @module
 */
import type { TableCell, TableRecord } from "../base/records.ts";
import type { Design } from "../base/session.ts";
import { designCell, numberCell, textCell } from "./table-cells.ts";
import { left, right } from "./table-columns.ts";

const MILLIMETRES = 1000;
const LITRES = 1000;

function row(design: Design, place: number): TableCell[] {
  const { span, area, wetVolume, thicknessRatio, strutChord } = design;
  return [
    designCell(design.design, place),
    numberCell(span, 2),
    numberCell(area, 3),
    numberCell(span * span / area, 1),
    numberCell(area / span * MILLIMETRES, 0),
    numberCell(thicknessRatio === null ? null : thicknessRatio * 100, 1),
    textCell(design.section ?? ""),
    numberCell(wetVolume === null ? null : wetVolume * LITRES, 1),
    numberCell(design.strutCount, 0),
    numberCell(strutChord === null ? null : strutChord * MILLIMETRES, 0),
    textCell(design.note ?? ""),
  ];
}

/**
 * Every design of a session: what was measured, and aspect ratio and mean chord that follow.
 *
 * @param designs rows of designs.csv; lengths in m, areas in m2, volumes in m3
 * @param name names the files; "designs" unless said otherwise
 * @returns one row a design, in the order of the table
 */
export function designsTable(designs: readonly Design[], name = "designs"): TableRecord {
  return {
    name,
    caption:
      "The wings as measured. Aspect ratio is span squared over area, mean chord area over span.",
    columns: [
      left("design"),
      right("span", "m"),
      right("area", "m²"),
      right("aspect ratio"),
      right("mean chord", "mm"),
      right("thickness", "% of chord"),
      left("section"),
      right("wet volume", "l"),
      right("struts"),
      right("strut chord", "mm"),
      left("note"),
    ],
    rows: designs.map((one, index) => row(one, index + 1)),
  };
}
