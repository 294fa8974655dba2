/**
 * Predicted drag beside the measured, as a table and as sentences.
 *
 * @module
 */
import { printable } from "../base/printable.ts";
import type { TableRecord } from "../base/records.ts";
import { formatNumber, formatPercent, NO_BREAK_SPACE } from "../base/rounding.ts";
import { atSentenceStart } from "../base/sentence-words.ts";
import type { DesignTakeoff } from "../base/takeoff-answer.ts";
import type { TakeoffEvidence } from "../decide/estimate-takeoff.ts";
import { designCell, numberCell, textCell } from "./table-cells.ts";
import { left, right } from "./table-columns.ts";
import { quantityCell } from "./takeoff-table.ts";

/**
 * Predicted drag beside the measured: one row a design and speed.
 *
 * @param evidence whole
 * @returns measured, predicted, and the excess with its interval
 */
export function measuredDragTable({ designs }: TakeoffEvidence): TableRecord {
  return {
    name: "takeoff-measured",
    caption:
      "Measured drag beside the predicted, at the lift and depth of the measurement. A glide's is the mean over its speeds. Excess: what " +
      "finish, junctions and what hangs below cost, and what the model does not know.",
    columns: [
      left("design"),
      left("measured by"),
      right("speed", "m/s"),
      right("measured", "N"),
      right("predicted", "N"),
      right("excess", "N"),
    ],
    rows: designs.flatMap(({ answer: { design, measured }, prepared: { place } }) =>
      measured.map((one) => [
        designCell(design, place),
        textCell(`${one.from}, ${one.session}`),
        numberCell(one.speed, 2),
        quantityCell(one.measured),
        quantityCell(one.predicted),
        quantityCell(one.excess),
      ])
    ),
  };
}

/**
 * Where measured and predicted drag of one design part.
 *
 * @param one a design's answer
 * @returns one or two sentences; empty where nothing was measured
 */
export function excessSentence({ design, measured }: DesignTakeoff): string {
  if (measured.length === 0) return "";
  const name = printable(design);
  const apart = measured.filter(({ excess }) => excess.low! > 0 || excess.high! < 0);
  if (apart.length === 0) {
    const shares = measured.map((one) => one.excess.value / one.predicted.value);
    const [low, high] = [Math.min(...shares), Math.max(...shares)];
    const side = low > 0 ? " above" : high < 0 ? " below" : "";
    const range = formatPercent(Math.abs(low), 0) === formatPercent(Math.abs(high), 0)
      ? formatPercent(Math.abs(low), 0)
      : `${formatPercent(Math.min(Math.abs(low), Math.abs(high)), 0)} to ${
        formatPercent(Math.max(Math.abs(low), Math.abs(high)), 0)
      }`;
    return side === ""
      ? `What was measured of ${name} lies on both sides of the prediction and agrees with it.`
      : `What was measured of ${name} lies ${range}${side} the prediction, at ${
        measured.length === 1 ? "the one speed" : `${measured.length} speeds`
      }: no more than the prediction's own doubt, so no excess is shown.`;
  }
  const largest = apart.reduce((a, b) =>
    Math.abs(b.excess.value) / b.excess.standardUncertainty! >
        Math.abs(a.excess.value) / a.excess.standardUncertainty!
      ? b
      : a
  );
  const { excess, speed, measured: own } = largest;
  const more = excess.value > 0;
  return `${atSentenceStart(name)} drags ${
    more ? "more" : "less"
  } than predicted at ${apart.length} of ${measured.length} ${
    measured.length === 1 ? "speed" : "speeds"
  } measured: at ${formatNumber(speed, 2)}${NO_BREAK_SPACE}m/s by ${
    formatNumber(Math.abs(excess.value), 0)
  }${NO_BREAK_SPACE}N of ${formatNumber(own.value, 0)}${NO_BREAK_SPACE}N. ${
    more
      ? "A better finish or junction may buy part of it; the table of changes says how much a finish can."
      : "The flow stays laminar longer than assumed, or the model is too cautious."
  }`;
}
