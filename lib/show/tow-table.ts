/**
 * Tables of a tow for the page: what each design can do, its law, its drag by speed, and every reading.
 *
 * @module
 */
import type { Quantity } from "../base/quantity.ts";
import type { TableCell, TableRecord } from "../base/records.ts";
import { decimalsOf } from "../base/rounding.ts";
import type { TowLaw } from "../base/tow-answer.ts";
import type { TowEvidence } from "../decide/compare-tows.ts";
import { designCell, EMPTY_CELL, intervalCells, numberCell, textCell } from "./table-cells.ts";
import { left, right, withEnds } from "./table-columns.ts";
import { towCurves } from "./tow-curves.ts";

/** Value and both ends; where only one end is known, its words and that end. */
function endCells(q: Quantity | null): TableCell[] {
  if (q === null || q.kind === "interval") return intervalCells(q);
  const [, low, high] = intervalCells(q);
  return [textCell(q.kind === "atLeast" ? "at least" : "at most"), low, high];
}

/**
 * What each design can do: one row a design.
 *
 * @param evidence whole
 * @param name names the files; "tow-results" unless said otherwise
 * @returns best lift-to-drag, its speed and the speed of least power with their intervals or the one end that is known
 */
export function towTable({ designs }: TowEvidence, name = "tow-results"): TableRecord {
  return {
    name,
    caption:
      "What each design can do, as far as the speeds towed tell: whole craft, full lift. Where the best speed was " +
      "not towed, one end alone is known.",
    columns: [
      left("design"),
      ...withEnds("best lift-to-drag"),
      ...withEnds("at", "m/s"),
      ...withEnds("least power at", "m/s"),
      right("readings"),
    ],
    rows: designs.map(({ answer, name: own, place }) => [
      designCell(own, place),
      ...endCells(answer.bestLiftToDrag),
      ...endCells(answer.speedOfBestLiftToDrag),
      ...endCells(answer.leastPowerSpeed),
      numberCell(answer.points.filter((one) => one.used).length, 0),
    ]),
  };
}

/** A constant of the law with its standard uncertainty. */
function constantCells(law: TowLaw | null, at: 0 | 1 | 2): TableCell[] {
  if (law === null) return [EMPTY_CELL, EMPTY_CELL];
  const value = [law.a, law.d, law.e][at]!;
  const standardUncertainty = Math.sqrt(law.covariance[at]![at]!);
  const decimals = decimalsOf({
    value,
    standardUncertainty,
    degreesOfFreedom: null,
    low: null,
    high: null,
    level: 0.95,
    kind: "interval",
    unit: "1",
  });
  return [numberCell(value, decimals), numberCell(standardUncertainty, decimals)];
}

/**
 * The drag laws: one row a design.
 *
 * @param evidence whole
 * @param name names the files; "tow-laws" unless said otherwise
 * @returns constants with their standard uncertainties, the speeds and the lift that they hold at
 */
export function towLawTable({ designs }: TowEvidence, name = "tow-laws"): TableRecord {
  return {
    name,
    caption:
      "Drag = a v² + d + e φ/v² at the lift given (φ: the water surface's part), with standard uncertainties that " +
      "hang together. Constants of this law over the speeds towed, not physics.",
    columns: [
      left("design"),
      right("a", "N s²/m²"),
      right("±"),
      right("d", "N"),
      right("±"),
      right("e", "N m²/s²"),
      right("±"),
      right("from", "m/s"),
      right("to", "m/s"),
      right("lift", "N"),
    ],
    rows: designs.map(({ answer: { law }, name: own, place }) => [
      designCell(own, place),
      ...constantCells(law, 0),
      ...constantCells(law, 1),
      ...constantCells(law, 2),
      numberCell(law?.from ?? null, 2),
      numberCell(law?.to ?? null, 2),
      numberCell(law?.lift ?? null, 0),
    ]),
  };
}

/**
 * Drag at the speeds towed: one row a design and speed.
 *
 * @param evidence whole
 * @param name names the files; "tow-speeds" unless said otherwise
 * @returns speed, and drag with its interval
 */
export function towSpeedTable({ designs }: TowEvidence, name = "tow-speeds"): TableRecord {
  return {
    name,
    caption: "Drag of the whole craft at the speeds towed.",
    columns: [left("design"), right("speed", "m/s"), ...withEnds("drag", "N")],
    rows: designs.flatMap(({ answer, name: own, place }) =>
      answer.dragAt.map(({ speed, drag }) => [
        designCell(own, place),
        numberCell(speed, 2),
        ...intervalCells(drag),
      ])
    ),
  };
}

/**
 * Every reading with what the method made of it.
 *
 * @param evidence whole
 * @param name names the files; "tow-readings" unless said otherwise
 * @returns one row a reading, those left out with their reason
 */
export function towReadingTable(evidence: TowEvidence, name = "tow-readings"): TableRecord {
  const curves = towCurves(evidence);
  return {
    name,
    caption:
      "Every reading: drag as towed and moved to the full lift, as the line carries a part of it, and how far it " +
      "lies off the law once its speed has moved within its own uncertainty.",
    columns: [
      left("reading"),
      left("design"),
      right("speed", "m/s"),
      right("drag", "N"),
      right("lift", "N"),
      right("at full lift", "N"),
      right("off the law", "N"),
      right("lift coefficient"),
      right("drag coefficient"),
      left("remark"),
    ],
    rows: evidence.designs.flatMap(({ answer, name: own, place }, at) =>
      answer.points.map((one) => {
        const { marks, lift } = curves[at]!;
        const mark = marks.find((each) => each.row === one.row);
        return [
          textCell(one.point),
          designCell(own, place),
          numberCell(one.speed, 2),
          numberCell(one.drag, 1),
          numberCell(one.lift, 0),
          numberCell(lift === null ? null : mark?.drag ?? null, 1),
          numberCell(one.residual, 1),
          numberCell(one.liftCoefficient, 3),
          numberCell(one.dragCoefficient, 4),
          textCell(
            one.used ? (mark?.flagged ? "stands out, counts" : "") : one.reason ?? "left out",
          ),
        ];
      })
    ),
  };
}
