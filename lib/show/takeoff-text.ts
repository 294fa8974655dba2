/**
 * A whole takeoff answer as plain text for a terminal.
 *
 * @module
 */
import type { TakeoffEvidence } from "../decide/estimate-takeoff.ts";
import { findingsText } from "./findings-text.ts";
import {
  bestSpeedsSentence,
  heldSentence,
  inAirSentence,
  settingSentence,
  stallSentence,
  TAKEOFF_CAUTION,
  TAKEOFF_INTERVAL,
  TAKEOFF_WORDS,
  takeoffRatioSentence,
  takeoffSentence,
} from "./takeoff-sentence.ts";
import {
  takeoffChangesTable,
  takeoffInputsTable,
  whatMattersTable,
} from "./takeoff-doubt-tables.ts";
import { takeoffPartsTable, takeoffTable } from "./takeoff-table.ts";
import { excessSentence, measuredDragTable } from "./takeoff-measured-table.ts";
import { textTable, wrapped } from "./text-table.ts";

const QUESTION = "From which speed does each design carry me, and what does it take to get there?";

/** Where the rest is. */
const MORE =
  "Drag by its parts, what changes would do, what matters most and what was assumed: add --design and a name.\n";

/**
 * The text that `task answer takeoff` prints.
 *
 * @param evidence with all findings in its answer
 * @param told whether the data are marked as invented; N of pull or W of power that was asked about
 * @returns text ended by a line feed
 */
export function takeoffText(
  evidence: TakeoffEvidence,
  told: {
    readonly invented: boolean;
    readonly pull?: number | undefined;
    readonly power?: number | undefined;
  },
): string {
  const { answer } = evidence;
  const { pull, power } = told;
  const flying = answer.designs.filter((one) => one.takeoffSpeed !== null);
  const sentences = [
    settingSentence(answer.setting),
    ...evidence.designs.flatMap(({ answer: one, prepared }) => [
      takeoffSentence(one),
      bestSpeedsSentence(one),
      pull !== undefined
        ? heldSentence(one, pull)
        : power === undefined
        ? ""
        : heldSentence(one, power, "W"),
      inAirSentence(one),
      stallSentence(one, prepared.craft.largestLiftCoefficient),
      excessSentence(one),
    ]),
    ...answer.comparisons.map(takeoffRatioSentence),
  ].filter((one) => one !== "");
  const [alone, ...others] = flying;
  const perDesign = alone === undefined ? [] : others.length > 0 ? [MORE] : [
    textTable(takeoffPartsTable(evidence, alone.design)),
    textTable(takeoffChangesTable(evidence, alone.design)),
    textTable(whatMattersTable(evidence, alone.design)),
    textTable(takeoffInputsTable(evidence, alone.design)),
  ];
  const parts = [
    QUESTION + "\n",
    ...sentences.map((one) => wrapped(one) + "\n"),
    ...(flying.length === 0 ? [] : [
      textTable(takeoffTable(evidence)),
      ...(flying.some((one) => one.measured.length > 0)
        ? [textTable(measuredDragTable(evidence))]
        : []),
      ...perDesign,
      wrapped(TAKEOFF_INTERVAL) + "\n",
      wrapped(TAKEOFF_WORDS) + "\n",
    ]),
    ...(answer.findings.length > 0 ? ["Findings\n" + findingsText(answer.findings)] : []),
    wrapped(TAKEOFF_CAUTION) + "\n",
    ...(told.invented ? ["The data are invented.\n"] : []),
  ];
  return parts.join("\n");
}
