/**
 * Tables of what a takeoff rests on: what matters most, what a change would do, inputs with their doubts.
 *
 * @module
 */
import { printable } from "../base/printable.ts";
import type { TableRecord } from "../base/records.ts";
import { formatPercent, unitText } from "../base/rounding.ts";
import type { TakeoffDefault } from "../base/takeoff-answer.ts";
import type { TakeoffEvidence } from "../decide/estimate-takeoff.ts";
import { FORMULA_FACTORS } from "../fit/takeoff-doubts.ts";
import { EMPTY_CELL, formattedCell, textCell } from "./table-cells.ts";
import { left, right } from "./table-columns.ts";

const RESULTS: Readonly<Record<string, string>> = {
  takeoffSpeed: "takeoff speed",
  towForceAtTakeoff: "tow force at takeoff",
  leastDrag: "least drag",
  leastPower: "least power",
};

/** Inputs with less than this share of every result stay out of the table. */
const LEAST_SHARE = 0.01;

/**
 * What matters most: shares of each result's doubt by input, one row an input.
 *
 * @param evidence whole
 * @param design its name
 * @returns shares of the variance of four results, largest first by takeoff speed and least drag together
 */
export function whatMattersTable({ designs }: TakeoffEvidence, design: string): TableRecord {
  const own = designs.find((one) => one.answer.design === design)?.answer.whatMattersMost ?? [];
  const names = [...new Set(own.flatMap((one) => one.inputs.map((each) => each.input)))];
  const shareOf = (at: number, name: string) =>
    own[at]?.inputs.find((one) => one.input === name)?.share ?? 0;
  const all = (name: string) => own.map((_, at) => shareOf(at, name));
  const kept = names.filter((name) => Math.max(...all(name)) >= LEAST_SHARE)
    .sort((a, b) =>
      all(b).reduce((sum, one) => sum + one, 0) - all(a).reduce((sum, one) => sum + one, 0)
    );
  return {
    name: "takeoff-what-matters",
    caption: `Where the doubt about ${
      printable(design)
    } comes from: share of each result's variance, first order. Inputs under 1\u00a0% everywhere are left out.`,
    columns: [left("input"), ...own.map((one) => right(RESULTS[one.quantity] ?? one.quantity))],
    rows: kept.map((name) => [
      textCell(name),
      ...all(name).map((share) => formattedCell(formatPercent(share, 0), share)),
    ]),
  };
}

/** Per cent with its sign; what rounds to nothing has none. */
function signed(share: number): string {
  const text = formatPercent(Math.abs(share), 1);
  return Math.abs(share) < 5e-4 ? text : `${share < 0 ? "−" : "+"}${text}`;
}

/**
 * What a changed craft would cost or save: one row a change.
 *
 * @param evidence whole
 * @param design its name
 * @returns relative changes of four results
 */
export function takeoffChangesTable({ designs }: TakeoffEvidence, design: string): TableRecord {
  const own = designs.find((one) => one.answer.design === design)?.answer.changes ?? [];
  const cell = (share: number | null) =>
    share === null ? EMPTY_CELL : formattedCell(signed(share), share);
  return {
    name: "takeoff-changes",
    caption: `What a changed ${printable(design)} would need, by the model alone.`,
    columns: [
      left("change"),
      right("takeoff speed"),
      right("tow force at takeoff"),
      right("least drag"),
      right("least power"),
    ],
    rows: own.map((one) => [
      textCell(one.change),
      cell(one.takeoffSpeed),
      cell(one.towForceAtTakeoff),
      cell(one.leastDrag),
      cell(one.leastPower),
    ]),
  };
}

/** An input in the unit that people use for it. */
function asPeopleSay(one: TakeoffDefault): TakeoffDefault {
  if (one.unit === "K") return { ...one, value: one.value - 273.15, unit: "°C" };
  if (one.unit === "m3") return { ...one, value: one.value * 1000, unit: "l" };
  return one;
}

/**
 * The inputs of one design: value, how well it is known, and whether anyone stated it.
 *
 * @param evidence whole
 * @param design its name
 * @returns one row an input
 */
export function takeoffInputsTable({ answer }: TakeoffEvidence, design: string): TableRecord {
  const own = answer.inputs.filter((one) => one.design === design).map(asPeopleSay);
  return {
    name: "takeoff-inputs",
    caption: `What the numbers of ${
      printable(design)
    } rest on. Standard uncertainty, as a share or in the value's own unit: the truth lies within it two times in three. Where nobody stated it, it is a judgement.`,
    columns: [
      left("input"),
      right("value"),
      left("unit"),
      right("standard uncertainty"),
      left("from"),
    ],
    rows: own.map((one) => [
      textCell(one.input),
      formattedCell(String(Number(one.value.toPrecision(4))), one.value),
      textCell(
        FORMULA_FACTORS.includes(one.input)
          ? "times the formula"
          : one.unit === "1"
          ? ""
          : unitText(one.unit),
      ),
      formattedCell(
        one.kind === "share"
          ? formatPercent(one.standardUncertainty, one.standardUncertainty < 0.01 ? 2 : 0)
          : `${Number(one.standardUncertainty.toPrecision(2))}`,
        one.standardUncertainty,
      ),
      textCell(one.stated ? "the session" : "usual"),
    ]),
  };
}
