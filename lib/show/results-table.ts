/**
 * The table beside the verdict: one row a design, the number that matters most first.
 *
 * @module
 */
import type { DesignGlide, GlideComparison } from "../base/answers.ts";
import type { Quantity } from "../base/quantity.ts";
import type { TableCell, TableRecord } from "../base/records.ts";
import {
  decimalsOf,
  formatInterval,
  formatNumber,
  formatProbability,
  formatQuantity,
  type RoundingOptions,
} from "../base/rounding.ts";
import type { GlideEvidence } from "../decide/glide-evidence.ts";
import { printable } from "./printable.ts";
import { refusedDesigns } from "./refused-designs.ts";
import { launchInWords } from "./verdict-sentence.ts";

const NONE = "–";

const empty: TableCell = { text: NONE, number: null, mark: null };

/** A cell of text. */
export function textCell(text: string): TableCell {
  return { text: printable(text), number: null, mark: null };
}

/** A number with a given count of decimals; a dash for what is not known. */
export function numberCell(value: number | null, decimals: number): TableCell {
  return value === null
    ? empty
    : { text: formatNumber(value, decimals), number: value, mark: null };
}

/** Value and interval ends of a quantity as three cells. */
export function intervalCells(q: Quantity | null, apartFrom?: number): TableCell[] {
  if (q === null) return [empty, empty, empty];
  const decimals = decimalsOf(q, apartFrom === undefined ? {} : { apartFrom });
  return [q.value, q.low, q.high].map((one) => numberCell(one, decimals));
}

function valueCell(q: Quantity | null): TableCell {
  return intervalCells(q)[0]!;
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
  const name = printable(one.design);
  const head: TableCell = { text: name, number: null, mark: { design: name, place } };
  const refused = comparison?.verdict === "refused";
  const probability = comparison?.probabilityCandidateBetter ?? null;
  return [
    head,
    textCell(comparison === undefined ? "baseline" : verdictWords(comparison, baseline)),
    ...intervalCells(comparison?.ratio ?? null, 1),
    probability === null
      ? empty
      : { text: formatProbability(probability), number: probability, mark: null },
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
  const interval = (label: string, unit: string) => [
    { label, unit, align: "right" as const },
    { label: "95\u00a0% from", unit, align: "right" as const },
    { label: "to", unit, align: "right" as const },
  ];
  return {
    name,
    caption: `Distance from the same launch, as a multiple of ${baseline}'s, and each design's ` +
      `own result.${launch}`,
    columns: [
      { label: "design", unit: "", align: "left" },
      { label: "verdict", unit: "", align: "left" },
      ...interval("ratio", ""),
      { label: "probability further", unit: "", align: "right" },
      ...interval("distance", "m"),
      { label: "glide ratio", unit: "", align: "right" },
      { label: "end speed", unit: "m/s", align: "right" },
      { label: "runs", unit: "", align: "right" },
    ],
    rows: answer.designs.map((one) =>
      row(
        one,
        evidence.designs.find((each) => each.design === one.design)?.place ?? 7,
        answer.comparisons.find((each) => each.candidate === one.design),
        baseline,
      )
    ),
  };
}

/** Value with interval in one cell: "1.18 (1.04 to 1.34)". */
function withInterval(q: Quantity | null, options: RoundingOptions = {}): TableCell {
  if (q === null) return empty;
  const value = formatQuantity(q, { ...options, unit: false });
  const known = q.low !== null || q.high !== null;
  const interval = known ? ` (${formatInterval(q, { ...options, unit: false })})` : "";
  return { text: value + interval, number: q.value, mark: null };
}

/**
 * The same in few columns, for a terminal.
 *
 * @param evidence whole
 * @param name names the files; "results" unless said otherwise
 */
export function shortResultsTable(evidence: GlideEvidence, name = "results"): TableRecord {
  const whole = resultsTable(evidence, name);
  const { answer } = evidence;
  const refused = refusedDesigns(answer);
  const right = (label: string, unit: string) => ({ label, unit, align: "right" as const });
  return {
    ...whole,
    columns: [
      ...whole.columns.slice(0, 2),
      right("ratio", ""),
      right("distance", "m"),
      right("glide ratio", ""),
      right("runs", ""),
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
