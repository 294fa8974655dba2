/**
 * Intervals of a predicted takeoff by first order and by drawing, side by side.
 *
 * @module
 */
import type { Quantity } from "../base/quantity.ts";
import type { TableCell, TableRecord } from "../base/records.ts";
import { formatInterval, formatPercent, formatQuantity, unitText } from "../base/rounding.ts";
import type { TakeoffEvidence } from "../decide/estimate-takeoff.ts";
import { type BothWays, TWO_WAYS_TOLERANCE } from "../decide/takeoff-quantities.ts";
import { designCell, EMPTY_CELL, formattedCell, textCell } from "./table-cells.ts";
import { left, right } from "./table-columns.ts";

/** What the results are called; those that are left out follow from others. */
const LABELS: Partial<Record<BothWays["result"], string>> = {
  stallSpeed: "stall speed",
  takeoffSpeed: "takeoff speed",
  towForceAtTakeoff: "tow force at takeoff",
  leastDragSpeed: "least-drag speed",
  leastDrag: "least drag",
  leastPowerSpeed: "least-power speed",
  leastPower: "least power",
};

function ends(own: Quantity, like: Quantity): TableCell {
  if (own.low === null || own.high === null) return EMPTY_CELL;
  // Both to the decimals of the first, so that they can be compared.
  const alike = { ...own, standardUncertainty: like.standardUncertainty };
  return formattedCell(formatInterval(alike, { unit: false }), own.high - own.low);
}

/**
 * Every result of each design by first order and by drawing all inputs, and whether the two agree.
 *
 * Where they don't, the linear picture fails: the interval by drawing is the one that the answer gives.
 *
 * Source: JCGM 101:2008, clause 8 (comparison of both within a stated tolerance).
 *
 * @param evidence whole
 * @param name names the files; "takeoff-two-ways" unless said otherwise
 * @returns one row a result, in water
 */
export function takeoffBothWaysTable(
  { designs }: TakeoffEvidence,
  name = "takeoff-two-ways",
): TableRecord {
  return {
    name,
    caption:
      "95\u00a0% intervals by first order, and by drawing every input anew. They agree where no end differs by more than " +
      `${
        formatPercent(TWO_WAYS_TOLERANCE)
      } of the half-width; where they don't, the curve of drag is too flat or too bent ` +
      "for a straight line, and the drawn interval is the one to trust.",
    columns: [
      left("design"),
      left("result"),
      right("value"),
      right("first order"),
      right("by drawing"),
      left("agree"),
    ],
    rows: designs.flatMap(({ answer, prepared, bothWays }) =>
      bothWays.flatMap(({ result, firstOrder, drawn, agree }) => {
        const label = LABELS[result];
        if (label === undefined) return [];
        return [[
          designCell(answer.design, prepared.place),
          textCell(`${label} (${unitText(firstOrder.unit)})`),
          formattedCell(formatQuantity(firstOrder, { unit: false }), firstOrder.value),
          ends(firstOrder, firstOrder),
          ends(drawn, firstOrder),
          textCell(agree ? "yes" : "no"),
        ]];
      })
    ),
  };
}
