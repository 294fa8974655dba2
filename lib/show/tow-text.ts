/**
 * A whole tow answer as plain text for a terminal: where designs differ, what each can do, findings.
 *
 * @module
 */
import type { TableRecord } from "../base/records.ts";
import type { TowEvidence } from "../decide/compare-tows.ts";
import { findingsText } from "./findings-text.ts";
import { partsSentence, wingSentence } from "./parts-sentence.ts";
import { designCell, numberCell, textCell } from "./table-cells.ts";
import { left, right } from "./table-columns.ts";
import { textTable, wrapped } from "./text-table.ts";
import { towDrawnTable, towRobustTable } from "./tow-views-table.ts";
import {
  doubtSentence,
  lawSentence,
  liftCurveSentence,
  TOW_CAUTION,
  TOW_INTERVAL,
  towComparisonSentence,
} from "./tow-sentence.ts";
import { currentSentence } from "./tow-current-sentence.ts";
import { namedComparison, namedTow, towEntryName } from "./tow-entry-name.ts";
import { agreementTable, familySentence, intervalCell, tracesTable } from "./tow-traces-text.ts";

const QUESTION = "How much drag does each design have, at which speed?";

/**
 * What each design can do: one row a design.
 *
 * @param evidence whole
 * @returns best lift-to-drag, its speed, the speed of least power, the speeds towed
 */
export function towResultsTable(evidence: TowEvidence): TableRecord {
  const { designs } = evidence;
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
        designCell(towEntryName(evidence, answer), place),
        intervalCell(answer.bestLiftToDrag),
        intervalCell(answer.speedOfBestLiftToDrag),
        intervalCell(answer.leastPowerSpeed),
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
export function towDragTable(evidence: TowEvidence): TableRecord {
  const { designs } = evidence;
  return {
    name: "tow-drag",
    caption: "Drag at the speeds towed.",
    columns: [left("design"), right("speed", "m/s"), right("drag", "N")],
    rows: designs.flatMap(({ answer, place }) =>
      answer.dragAt.map(({ speed, drag }) => [
        designCell(towEntryName(evidence, answer), place),
        numberCell(speed, 2),
        intervalCell(drag),
      ])
    ),
  };
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
  const sentences = answer.comparisons.map((one) =>
    wrapped(towComparisonSentence(namedComparison(evidence, one))) + "\n"
  );
  const family = familySentence(answer);
  if (family !== "") sentences.push(wrapped(family) + "\n");
  const current = currentSentence(answer);
  if (current !== "") sentences.push(wrapped(current) + "\n");
  const traces = tracesTable(evidence), agreement = agreementTable(evidence);
  const glidedOnly = traces.rows.length > 0 &&
    designs.every((one) => one.answer.points.length === 0);
  const towed = designs.length > 0 && !glidedOnly;
  const told = designs.some((one) => one.answer.dragAt.length > 0);
  const notes = designs.map((one) => namedTow(evidence, one.answer)).flatMap((answer) => [
    lawSentence(answer),
    answer.liftCurve === null ? "" : liftCurveSentence(answer.design, answer.liftCurve),
    doubtSentence(answer),
    [partsSentence(answer), wingSentence(answer)].filter((one) => one !== "").join(" "),
  ])
    .filter((line) => line !== "").map((line) => wrapped(line, "  ", "- "));
  const views = [towRobustTable(evidence), towDrawnTable(evidence)]
    .filter((one) => one.rows.length > 0).map((one) => textTable(one));
  const parts = [
    QUESTION + "\n",
    ...sentences,
    ...(towed ? [textTable(towResultsTable(evidence))] : []),
    ...(traces.rows.length > 0 ? [textTable(traces)] : []),
    ...(agreement.rows.length > 0 ? [textTable(agreement)] : []),
    ...(told ? [textTable(towDragTable(evidence)), wrapped(TOW_INTERVAL) + "\n"] : []),
    ...views,
    ...(notes.length > 0 ? [notes.join("\n") + "\n"] : []),
    ...(answer.findings.length > 0 ? ["Findings\n" + findingsText(answer.findings)] : []),
    wrapped(TOW_CAUTION) + "\n",
    ...(invented ? ["The data are invented.\n"] : []),
  ];
  return parts.join("\n");
}
