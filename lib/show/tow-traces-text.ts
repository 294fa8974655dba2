/**
 * What glides say beside the tow, as tables and sentences that terminal and page share.
 *
 * @module
 */
import { printable } from "../base/printable.ts";
import type { Quantity } from "../base/quantity.ts";
import type { TableCell, TableRecord } from "../base/records.ts";
import { formatInterval, formatQuantity } from "../base/rounding.ts";
import type { TowAnswer } from "../base/tow-answer.ts";
import type { TowAgreement } from "../base/tow-traces.ts";
import type { TowEvidence } from "../decide/compare-tows.ts";
import { designCell, EMPTY_CELL, formattedCell, numberCell, textCell } from "./table-cells.ts";
import { left, right } from "./table-columns.ts";
import { towEntryName } from "./tow-entry-name.ts";

/**
 * Value and interval, or the one end that is known.
 *
 * @param q any quantity; `null` gives an empty cell
 * @returns text without unit, with the value to sort by
 */
export function intervalCell(q: Quantity | null): TableCell {
  if (q === null) return EMPTY_CELL;
  const interval = formatInterval(q, { unit: false });
  return q.kind === "interval"
    ? formattedCell(`${formatQuantity(q, { unit: false })} (${interval})`, q.value)
    : formattedCell(interval, q.value);
}

/**
 * What the speed traces of each design's glides say.
 *
 * @param evidence whole
 * @returns one row a design with traces; no rows where none has any
 */
export function tracesTable({ designs }: TowEvidence): TableRecord {
  return {
    name: "tow-traces",
    caption: "What the speeds of the glides say of the same designs.",
    columns: [
      left("design"),
      right("best lift-to-drag"),
      right("at", "m/s"),
      right("glided", "m/s"),
      right("traces"),
    ],
    rows: designs.flatMap(({ answer: { fromTraces }, name, place }) =>
      fromTraces === null ? [] : [[
        designCell(name, place),
        intervalCell(fromTraces.bestLiftToDrag),
        intervalCell(fromTraces.speedOfBestLiftToDrag),
        textCell(`${fromTraces.law.from.toFixed(2)} to ${fromTraces.law.to.toFixed(2)}`),
        numberCell(fromTraces.traces.filter((one) => one.used).length, 0),
      ]]
    ),
  };
}

/**
 * What is compared, in words.
 *
 * @param agreement the quantity and, for drag, its speed in m/s
 * @returns words with the speed's unit, in lower case
 */
export function quantityName({ quantity, speed }: TowAgreement): string {
  return quantity === "drag" ? `drag at ${speed!.toFixed(2)} m/s` : "best lift-to-drag";
}

/**
 * What is compared, and with which glides where they have no speed trace.
 *
 * @param one a quantity by both
 * @returns for instance "drag at 4.16 m/s, plain glides"
 */
export function agreementName(one: TowAgreement): string {
  return `${quantityName(one)}${one.kind === "glides" ? ", plain glides" : ""}`;
}

/**
 * Whether tow and glides agree, in words.
 *
 * @param one a quantity by both
 * @returns for instance "agree (E_n 0.4)"
 */
export function agreementWord({ en }: TowAgreement): string {
  return `${Math.abs(en) <= 1 ? "agree" : "differ"} (En ${Math.abs(en).toFixed(1)})`;
}

/**
 * Tow and glides side by side, and both together where they agree.
 *
 * @param evidence whole
 * @returns one row a quantity; no rows where no design has both
 */
export function agreementTable(evidence: TowEvidence): TableRecord {
  const { answer, designs } = evidence;
  const placeOf = (name: string) =>
    designs.find((one) => one.answer.design === name)?.place ?? designs.length;
  return {
    name: "tow-agreement",
    caption:
      "Tow and glides side by side, at the tow's lift and depth. En is their difference over its 95 % uncertainty: up to 1 they agree. Plain glides have no speed trace: they tell the drag at one speed.",
    columns: [
      left("design"),
      left("quantity"),
      right("tow"),
      right("glides"),
      left("the two"),
      right("together"),
    ],
    rows: answer.agreement.map((one) => [
      designCell(towEntryName(evidence, one), placeOf(one.design)),
      textCell(agreementName(one)),
      intervalCell(one.tow),
      intervalCell(one.traces),
      textCell(agreementWord(one)),
      intervalCell(one.combined),
    ]),
  };
}

/**
 * That several comparisons hold at once.
 *
 * @param answer whole
 * @returns one sentence; empty where there is one comparison or none
 */
export function familySentence({ comparisons }: TowAnswer): string {
  if (!comparisons.some((one) => one.family === "joint")) return "";
  return `The ${comparisons.length} comparisons with ${
    printable(comparisons[0]!.baseline)
  } are judged together, each more strictly: all their ratios and stretches of speed hold at once in 95 of 100 answers.`;
}
