/**
 * The table beside the verdict: one row a design, the number that matters most first.
 *
 * @module
 */
import type { DesignGlide, GlideComparison } from "../base/answers.ts";
import type { Quantity } from "../base/quantity.ts";
import type { TableCell, TableRecord } from "../base/records.ts";
import {
  formatInterval,
  formatProbability,
  formatQuantity,
  type RoundingOptions,
} from "../base/rounding.ts";
import { printable } from "../base/printable.ts";
import type { GlideEvidence } from "../decide/glide-evidence.ts";
import { placeOf } from "./design-place.ts";
import { refusedDesigns } from "./refused-designs.ts";
import {
  designCell,
  EMPTY_CELL,
  formattedCell,
  intervalCells,
  numberCell,
  textCell,
} from "./table-cells.ts";
import { left, right, withEnds } from "./table-columns.ts";
import { launchInWords } from "./verdict-sentence.ts";

function valueCell(q: Quantity | null): TableCell {
  return intervalCells(q)[0];
}

function verdictWords({ verdict, fragile }: GlideComparison, baseline: string): string {
  const hangs = fragile ? ", on single runs" : "";
  switch (verdict) {
    case "candidate-better":
      return `further than ${baseline}${hangs}`;
    case "baseline-better":
      return `less far than ${baseline}${hangs}`;
    case "cannot-tell-yet":
      return "cannot tell yet";
    case "refused":
      return "can't be answered";
  }
}

function row(
  one: DesignGlide,
  place: number,
  comparison: GlideComparison | undefined,
  baseline: string,
): TableCell[] {
  const refused = comparison?.verdict === "refused";
  const probability = comparison?.probabilityCandidateBetter ?? null;
  return [
    designCell(one.design, place),
    textCell(comparison === undefined ? "baseline" : verdictWords(comparison, baseline)),
    ...intervalCells(comparison?.ratio ?? null, 1),
    probability === null ? EMPTY_CELL : formattedCell(formatProbability(probability), probability),
    ...intervalCells(refused ? null : one.distance),
    valueCell(refused ? null : one.glideRatio),
    valueCell(one.endSpeed),
    numberCell(one.runsUsed, 0),
  ];
}

/**
 * Results by design.
 *
 * @param evidence whole
 * @param name names the files; "results" unless said otherwise
 * @returns a table; ratio and its interval are against the baseline, from the same launch
 */
export function resultsTable(evidence: GlideEvidence, name = "results"): TableRecord {
  const { answer } = evidence;
  const baseline = printable(answer.comparisons[0]?.baseline ?? "the baseline");
  const launch = answer.launch === null ? "" : ` Common launch: ${launchInWords(answer.launch)}.`;
  return {
    name,
    caption: `Distance from the same launch, as a multiple of ${baseline}'s, and each design's ` +
      `own result.${launch}`,
    columns: [
      left("design"),
      left("verdict"),
      ...withEnds("ratio"),
      right("probability further"),
      ...withEnds("distance", "m"),
      right("glide ratio"),
      right("end speed", "m/s"),
      right("runs"),
    ],
    rows: answer.designs.map((one) =>
      row(
        one,
        placeOf(evidence, one.design),
        answer.comparisons.find((each) => each.candidate === one.design),
        baseline,
      )
    ),
  };
}

/** Value with interval in one cell: "1.18 (1.04 to 1.34)". */
function withInterval(q: Quantity | null, options: RoundingOptions = {}): TableCell {
  if (q === null) return EMPTY_CELL;
  const value = formatQuantity(q, { ...options, unit: false });
  const known = q.low !== null || q.high !== null;
  const interval = known ? ` (${formatInterval(q, { ...options, unit: false })})` : "";
  return formattedCell(value + interval, q.value);
}

/**
 * The same in few columns, for a terminal.
 *
 * @param evidence whole
 * @param name names the files; "results" unless said otherwise
 * @returns one row a design, each quantity with its interval in one cell
 */
export function shortResultsTable(evidence: GlideEvidence, name = "results"): TableRecord {
  const whole = resultsTable(evidence, name);
  const { answer } = evidence;
  const refused = refusedDesigns(answer);
  return {
    ...whole,
    columns: [
      ...whole.columns.slice(0, 2),
      right("ratio"),
      right("distance", "m"),
      right("glide ratio"),
      right("runs"),
    ],
    rows: answer.designs.map((one, at) => {
      const comparison = answer.comparisons.find((each) => each.candidate === one.design);
      return [
        ...whole.rows[at]!.slice(0, 2),
        withInterval(comparison?.ratio ?? null, { apartFrom: 1 }),
        withInterval(refused.has(one.design) ? null : one.distance),
        valueCell(refused.has(one.design) ? null : one.glideRatio),
        numberCell(one.runsUsed, 0),
      ];
    }),
  };
}
