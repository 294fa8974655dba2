/**
 * A towed answer beside the truth, which only an invented session has.
 *
 * @module
 */
import type { Quantity } from "../base/quantity.ts";
import type { TableCell, TableRecord } from "../base/records.ts";
import { decimalsOf, formatInterval, formatQuantity } from "../base/rounding.ts";
import type { TowEvidence } from "../decide/compare-tows.ts";
import { designCell, formattedCell, numberCell, textCell } from "./table-cells.ts";
import { left, right } from "./table-columns.ts";

/** What a design truly does. */
export interface TrueBest {
  readonly design: string;
  readonly liftToDrag: number;
  /** m/s */
  readonly speed: number;
}

/** Found, interval, truth, and whether it lies inside. */
function beside(found: Quantity | null, actual: number | undefined): TableCell[] {
  if (found === null || actual === undefined) return ["", "", "", "not known"].map(textCell);
  const { low, high } = found;
  const inside = (low === null || low <= actual) && (high === null || actual <= high);
  const plain = { unit: false };
  return [
    formattedCell(formatQuantity(found, plain), found.value),
    textCell(formatInterval(found, plain)),
    numberCell(actual, decimalsOf(found)),
    textCell(inside ? "yes" : "no"),
  ];
}

/**
 * Best lift-to-drag and its speed of each design beside the true ones.
 *
 * @param evidence of a tow
 * @param truth one entry a design
 * @returns two rows a design
 */
export function towTruthTable(evidence: TowEvidence, truth: readonly TrueBest[]): TableRecord {
  return {
    name: "truth",
    caption: "The answer beside the truth, which the generator of the invented session wrote down.",
    columns: [
      left("design"),
      left("what"),
      right("found"),
      right("interval", "95 %"),
      right("true"),
      left("true value inside"),
    ],
    rows: evidence.designs.flatMap(({ answer, place }) => {
      const actual = truth.find((one) => one.design === answer.design);
      const head = designCell(answer.design, place);
      return [
        [head, textCell("best lift-to-drag"), ...beside(answer.bestLiftToDrag, actual?.liftToDrag)],
        [head, textCell("its speed (m/s)"), ...beside(answer.speedOfBestLiftToDrag, actual?.speed)],
      ];
    }),
  };
}
