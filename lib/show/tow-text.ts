/**
 * A whole tow answer as plain text for a terminal: where designs differ, what each can do, findings.
 *
 * @module
 */
import { printable } from "../base/printable.ts";
import type { Quantity } from "../base/quantity.ts";
import type { TableCell, TableRecord } from "../base/records.ts";
import {
  formatInterval,
  formatNumber,
  formatPercent,
  formatProbability,
  formatQuantity,
  NO_BREAK_SPACE,
} from "../base/rounding.ts";
import type { TowComparison } from "../base/tow-answer.ts";
import type { TowEvidence } from "../decide/compare-tows.ts";
import { findingsText } from "./findings-text.ts";
import { designCell, EMPTY_CELL, formattedCell, numberCell, textCell } from "./table-cells.ts";
import { left, right } from "./table-columns.ts";
import { textTable, wrapped } from "./text-table.ts";

const QUESTION = "How much drag does each design have, at which speed?";

const INTERVAL =
  "In brackets stands the 95 % interval: in about 95 of 100 sessions like this one it holds the true value. Drag and " +
  "lift-to-drag are those of the whole craft: wing, struts, spray and the rider in the air.";

const CAUTION =
  "Towing can hurt: a line under load whips back, and a foil cuts. Keep a quick release and a lookout, and follow local " +
  "rules and what licensed boat handlers say. A wing that tows well has not been shown to hold.";

/** Value and interval, or the one end that is known. */
function cell(q: Quantity | null): TableCell {
  if (q === null) return EMPTY_CELL;
  const interval = formatInterval(q, { unit: false });
  return q.kind === "interval"
    ? formattedCell(`${formatQuantity(q, { unit: false })} (${interval})`, q.value)
    : formattedCell(interval, q.value);
}

/**
 * What each design can do: one row a design.
 *
 * @param evidence whole
 * @returns best lift-to-drag, its speed, the speed of least power, the speeds towed
 */
export function towResultsTable({ designs }: TowEvidence): TableRecord {
  return {
    name: "tow-results",
    caption: "What each design can do, as far as the speeds towed tell.",
    columns: [
      left("design"),
      right("best lift-to-drag"),
      right("at", "m/s"),
      right("least power at", "m/s"),
      right("towed", "m/s"),
      right("readings"),
    ],
    rows: designs.map(({ answer, place }) => {
      const { law } = answer;
      const towed = law === null ? "–" : `${law.from.toFixed(2)} to ${law.to.toFixed(2)}`;
      return [
        designCell(answer.design, place),
        cell(answer.bestLiftToDrag),
        cell(answer.speedOfBestLiftToDrag),
        cell(answer.leastPowerSpeed),
        textCell(towed),
        numberCell(answer.points.filter((one) => one.used).length, 0),
      ];
    }),
  };
}

/**
 * Drag at the speeds towed: one row a design and speed.
 *
 * @param evidence whole
 * @returns speed, and drag with its interval
 */
export function towDragTable({ designs }: TowEvidence): TableRecord {
  return {
    name: "tow-drag",
    caption: "Drag at the speeds towed.",
    columns: [left("design"), right("speed", "m/s"), right("drag", "N")],
    rows: designs.flatMap(({ answer, place }) =>
      answer.dragAt.map(({ speed, drag }) => [
        designCell(answer.design, place),
        numberCell(speed, 2),
        cell(drag),
      ])
    ),
  };
}

const stretches = (ranges: TowComparison["candidateLessDrag"]) =>
  ranges.map(([from, to]) =>
    from === to ? `at ${from.toFixed(2)}` : `from ${from.toFixed(2)} to ${to.toFixed(2)}`
  )
    .join(" and ") + `${NO_BREAK_SPACE}m/s`;

/**
 * One comparison in words: where the candidate drags less or more, and the ratio of the best.
 *
 * @param one as decided
 * @returns one or two sentences
 */
export function towComparisonSentence(one: TowComparison): string {
  const [candidate, baseline] = [printable(one.candidate), printable(one.baseline)];
  const {
    candidateLessDrag: less,
    candidateMoreDrag: more,
    jointTest,
    bestLiftToDragRatio: ratio,
  } = one;
  if (jointTest === null) return `${candidate} and ${baseline} can't be compared.`;
  const parts = [
    ...(less.length > 0 ? [`drags less than ${baseline} ${stretches(less)}`] : []),
    ...(more.length > 0
      ? [`${less.length > 0 ? "more" : `drags more than ${baseline}`} ${stretches(more)}`]
      : []),
  ];
  const where = parts.length === 0
    ? `Between ${candidate} and ${baseline} no difference of drag is seen at any speed.`
    : `${candidate} ${parts.join(", ")}; elsewhere these readings cannot tell.`;
  const chance = `Chance alone would part them so far in ${
    formatProbability(jointTest.pValue)
  } of such sessions.`;
  const best = ratio === null
    ? "Their best lift-to-drag is not compared: one of the two best speeds was not towed."
    : `Best lift-to-drag of ${candidate} over that of ${baseline}: ${
      formatQuantity(ratio, { apartFrom: 1 })
    } (${formatInterval(ratio, { apartFrom: 1 })}).`;
  return `${where} ${chance} ${best}`;
}

/** The largest parts of a design's doubt in one sentence; empty where there are none. */
function doubtSentence({ answer }: TowEvidence["designs"][number]): string {
  const largest = [...answer.uncertaintyShares].sort((one, other) => other.share - one.share)
    .slice(0, 3).filter((one) => one.share > 0.05);
  if (largest.length === 0) return "";
  return `Where the doubt about ${printable(answer.design)} comes from: ${
    largest.map((one) => `${one.source} ${formatPercent(one.share)}`).join(", ")
  }.`;
}

/** The law in numbers, with the lift it holds at. */
function lawSentence({ answer: { design, law } }: TowEvidence["designs"][number]): string {
  if (law === null) return "";
  const u = [0, 1, 2].map((i) => Math.sqrt(law.covariance[i]![i]!));
  const shown = (value: number, i: number) =>
    formatQuantity({
      value,
      standardUncertainty: u[i]!,
      degreesOfFreedom: null,
      low: null,
      high: null,
      level: 0.95,
      kind: "interval",
      unit: "1",
    });
  return `Law of ${printable(design)} from ${law.from.toFixed(2)} to ${
    law.to.toFixed(2)
  } m/s at a lift of ${formatNumber(law.lift, 0)} N: drag = a v² + d + e φ/v² with a = ${
    shown(law.a, 0)
  }, d = ${shown(law.d, 1)}, e = ${
    shown(law.e, 2)
  } in N, m and s (φ: water surface). Constants of this law over these speeds, not physics.`;
}

/**
 * The text that `task answer tow` prints.
 *
 * @param evidence with all findings in its answer
 * @param invented whether the data are marked as invented
 * @returns text ended by a line feed
 */
export function towText(evidence: TowEvidence, invented: boolean): string {
  const { answer, designs } = evidence;
  const sentences = answer.comparisons.map((one) => wrapped(towComparisonSentence(one)) + "\n");
  const told = designs.some((one) => one.answer.dragAt.length > 0);
  const notes = designs.flatMap((one) => [lawSentence(one), doubtSentence(one)])
    .filter((line) => line !== "").map((line) => wrapped(line, "  ", "- "));
  const parts = [
    QUESTION + "\n",
    ...sentences,
    ...(designs.length > 0 ? [textTable(towResultsTable(evidence))] : []),
    ...(told ? [textTable(towDragTable(evidence)), wrapped(INTERVAL) + "\n"] : []),
    ...(notes.length > 0 ? [notes.join("\n") + "\n"] : []),
    ...(answer.findings.length > 0 ? ["Findings\n" + findingsText(answer.findings)] : []),
    wrapped(CAUTION) + "\n",
    ...(invented ? ["The data are invented.\n"] : []),
  ];
  return parts.join("\n");
}
