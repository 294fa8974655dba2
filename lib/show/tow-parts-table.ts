/**
 * Tables of a tow's parts for the page: what was taken off the drag, how, how well it is known, and what the wing is then.
 *
 * @module
 */
import type { Quantity } from "../base/quantity.ts";
import type { TableCell, TableRecord } from "../base/records.ts";
import { decimalsOf, formatPercent } from "../base/rounding.ts";
import type { DragPart, SpeedParts } from "../base/tow-answer.ts";
import type { TowEvidence } from "../decide/compare-tows.ts";
import {
  designCell,
  EMPTY_CELL,
  formattedCell,
  intervalCells,
  numberCell,
  textCell,
} from "./table-cells.ts";
import { left, right, withEnds } from "./table-columns.ts";

const AT = {
  slowest: "slowest towed",
  best: "best lift-to-drag",
  fastest: "fastest towed",
} as const;

const HOW = {
  tare: "tare readings",
  formula: "formula",
  stated: "as stated",
  rest: "what remains",
} as const;

/** Value and standard uncertainty. */
function plusMinus(q: Quantity): [TableCell, TableCell] {
  const decimals = decimalsOf(q);
  return [numberCell(q.value, decimals), numberCell(q.standardUncertainty, decimals)];
}

/**
 * Every part taken off, and what remains: one row a design, speed and part.
 *
 * @param evidence whole
 * @param name names the files; "tow-parts" unless said otherwise
 * @returns drag with its standard uncertainty, share of the whole, how, and the source
 */
export function towPartsTable({ designs }: TowEvidence, name = "tow-parts"): TableRecord {
  const row = ({ at, speed, total }: SpeedParts, { part, how, source, drag }: DragPart) => [
    textCell(AT[at]),
    numberCell(speed, 2),
    textCell(part),
    ...plusMinus(drag),
    formattedCell(formatPercent(drag.value / total.value), drag.value / total.value),
    textCell(HOW[how]),
    textCell(source),
  ];
  return {
    name,
    caption:
      "What was taken off the drag of the whole craft, and what remains: the wing, with fittings that designs.csv does not " +
      "state. The parts add up to the whole; ± is the standard uncertainty. Doubts about formulas are the same at all speeds, and cancel between designs on the same struts.",
    columns: [
      left("design"),
      left("at"),
      right("speed", "m/s"),
      left("part"),
      right("drag", "N"),
      right("±", "N"),
      right("share"),
      left("how"),
      left("source, and how far it is trusted"),
    ],
    rows: designs.flatMap(({ answer, name: own, place }) =>
      answer.parts.flatMap((one) =>
        one.parts.map((part) => [designCell(own, place), ...row(one, part)])
      )
    ),
  };
}

/**
 * The wing alone: measured, expected, and its lift-to-drag: one row a design and speed.
 *
 * @param evidence whole
 * @param name names the files; "tow-wing" unless said otherwise
 * @returns empty cells where the wing can't be told apart
 */
export function towWingTable({ designs }: TowEvidence, name = "tow-wing"): TableRecord {
  return {
    name,
    caption:
      "The wing alone: its drag as what remains, what formulas expect of it (± standard uncertainty), and its own " +
      "lift-to-drag, which no craft reaches. An excess whose ends lie on both sides of 0 says nothing.",
    columns: [
      left("design"),
      right("speed", "m/s"),
      ...withEnds("wing", "N"),
      right("friction and form", "N"),
      right("±"),
      right("section, with lift", "N"),
      right("±"),
      right("induced and waves", "N"),
      right("±"),
      ...withEnds("excess", "N"),
      ...withEnds("lift-to-drag of the wing"),
    ],
    rows: designs.flatMap(({ answer, name: own, place }) =>
      answer.parts.map(({ speed, parts, expectedOfWing: expected }) => {
        const rest = parts.at(-1)!;
        const ratio = answer.wingLiftToDrag.find((one) => one.speed === speed);
        const parted = (q: Quantity | undefined) =>
          q === undefined ? [EMPTY_CELL, EMPTY_CELL] : plusMinus(q);
        return [
          designCell(own, place),
          numberCell(speed, 2),
          ...intervalCells(rest.part === "wing" ? rest.drag : null),
          ...parted(expected?.frictionAndForm),
          ...parted(expected?.viscousLift),
          ...parted(expected?.inducedAndWave),
          ...intervalCells(expected?.excess ?? null),
          ...intervalCells(ratio?.liftToDrag ?? null),
        ];
      })
    ),
  };
}
