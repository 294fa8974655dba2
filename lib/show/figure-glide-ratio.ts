/**
 * Figure: glide ratio of every run, corrected for the speed it gained or lost, with intervals, and each design's own.
 *
 * @module
 */
import * as Plot from "@observablehq/plot";
import type { FigureRecord, TableRecord } from "../base/records.ts";
import { formatInterval, formatQuantity, NO_BREAK_SPACE } from "../base/rounding.ts";
import { printable } from "../base/printable.ts";
import { listInWords } from "../base/sentence-words.ts";
import type { GlideEvidence } from "../decide/glide-evidence.ts";
import { INK, PAPER } from "./design-style.ts";
import { cutToWidth, type DrawingSize, figureRecord, textWidth } from "./drawing.ts";
import { intervalBars, meanMarks, runMarks, thinIntervals } from "./interval-marks.ts";
import { refusedDesigns } from "./refused-designs.ts";
import { rowFrame } from "./row-frame.ts";
import { designCell, intervalCells, textCell } from "./table-cells.ts";
import { left, withEnds } from "./table-columns.ts";

/** One row of the figure: a design's own ratio, or one run. */
export interface GlideRatioRow {
  readonly design: string;
  readonly place: number;
  /** `null` for the design as a whole. */
  readonly run: string | null;
  readonly used: boolean;
  readonly flagged: boolean;
  readonly value: number;
  readonly low: number | null;
  readonly high: number | null;
  /** The value as a person reads it. */
  readonly text: string;
}

/**
 * The numbers that the figure draws: each design, then its runs.
 *
 * @param evidence of a comparison
 * @returns rows from the top; ratios of distance over height spent
 */
export function glideRatioRows(evidence: GlideEvidence): GlideRatioRow[] {
  const refused = refusedDesigns(evidence.answer);
  return evidence.designs.flatMap((one) => {
    const own = refused.has(one.design)
      ? null
      : evidence.answer.designs.find((each) => each.design === one.design)?.glideRatio;
    const base = { design: printable(one.design), place: one.place };
    const head: GlideRatioRow[] = own === null || own === undefined ? [] : [{
      ...base,
      run: null,
      used: true,
      flagged: false,
      value: own.value,
      low: own.low,
      high: own.high,
      text: formatQuantity(own),
    }];
    const runs = one.runs.flatMap((run): GlideRatioRow[] =>
      run.glideRatio === null ? [] : [{
        ...base,
        run: printable(run.run),
        used: run.used,
        flagged: run.used && run.flag !== null,
        value: run.glideRatio.value,
        low: run.glideRatio.low,
        high: run.glideRatio.high,
        text: formatQuantity(run.glideRatio),
      }]
    );
    return [...head, ...runs];
  });
}

/** Height of a run's row by how many there are, in units. */
function pitch(rows: number): number {
  return Math.max(8, Math.min(15, 400 / Math.max(1, rows)));
}

/** Places of the rows from the top, in units: more room above and below a design's own row. */
function rowPlaces(rows: readonly GlideRatioRow[], fontSize: number): number[] {
  const step = pitch(rows.length);
  let place = 0;
  let before: GlideRatioRow | undefined;
  return rows.map((row) => {
    const newDesign = before === undefined || before.design !== row.design;
    if (newDesign) place += before === undefined ? fontSize : fontSize + 14;
    else place += before!.run === null ? Math.max(step, 14) : step;
    before = row;
    return place;
  });
}

/**
 * The range of the axis: a run that spent hardly any energy has a glide ratio without meaning, often huge; it is drawn at
 * the edge with its number instead of squeezing all others together.
 */
function axisRange(rows: readonly GlideRatioRow[]): [number, number] {
  const sorted = rows.map((row) => row.value).sort((a, b) => a - b);
  const middle = sorted[Math.floor(sorted.length / 2)];
  if (middle === undefined || !(middle > 0)) return [0, 20];
  const shown = rows.filter((row) => row.value > 0 && row.value < 2.5 * middle);
  const values = shown.map((row) => row.value);
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const reach = Math.max(0.75 * (most - least), 0.25 * most);
  const low = Math.min(...shown.map((row) => Math.max(row.low ?? row.value, least - reach)));
  const high = Math.max(...shown.map((row) => Math.min(row.high ?? row.value, most + reach)));
  const margin = 0.04 * (high - low) + 0.01 * high;
  return [Math.max(0, low - margin), high + margin];
}

function plotOf(rows: readonly GlideRatioRow[], size: DrawingSize) {
  const { narrow, fontSize } = size;
  const places = rowPlaces(rows, fontSize);
  const inner = (places.at(-1) ?? 40) + 12;
  const heads = rows.filter((row) => row.run === null);
  const names = heads.map((row) => cutToWidth(row.design, narrow ? 84 : 140, fontSize));
  const marginLeft = 16 + Math.max(0, ...names.map((name) => textWidth(name, fontSize)));
  const x = axisRange(rows);
  const within = (value: number) => Math.min(x[1], Math.max(x[0], value));
  const drawn = rows.map((row, at) => ({
    ...row,
    x: within(row.value),
    y: places[at]!,
    low: row.low === null ? null : within(row.low),
    high: row.high === null ? null : within(row.high),
  }));
  const runs = drawn.filter((row) => row.run !== null);
  const means = drawn.filter((row) => row.run === null);
  const beyond = runs.filter((row) => row.value !== row.x);
  return {
    ...rowFrame(size, inner, { top: 10, bottom: 46, left: marginLeft, right: 18 }),
    x: { domain: x },
    marks: [
      Plot.gridX({ ticks: narrow ? 4 : 6, stroke: INK, strokeOpacity: 0.1 }),
      Plot.axisX({
        ticks: narrow ? 4 : 6,
        label: "glide ratio of the whole craft",
        labelOffset: 40,
        tickSize: 4,
      }),
      ...thinIntervals(runs.filter((row) => row.value === row.x)),
      ...intervalBars(means),
      ...runMarks(runs, narrow ? 4 : 4.5),
      ...meanMarks(means),
      ...[true, false].map((above) =>
        Plot.text(beyond.filter((row) => row.value > row.x === above), {
          x: "x",
          y: "y",
          text: (row: GlideRatioRow) => above ? `${row.text} →` : `← ${row.text}`,
          textAnchor: above ? "end" : "start",
          dx: above ? -13 : 13,
          fill: INK,
          stroke: PAPER,
          strokeWidth: 5,
        })
      ),
      ...means.map((row, at) =>
        Plot.text([names[at]!], {
          frameAnchor: "left",
          y: [row.y],
          dx: 6 - marginLeft,
          textAnchor: "start",
          fill: INK,
        })
      ),
    ],
  };
}

function numbersTable(evidence: GlideEvidence, name: string): TableRecord {
  return {
    name: `${name}-numbers`,
    caption: "Glide ratio of each design and run with its 95\u00a0% interval.",
    columns: [
      left("design"),
      left("run"),
      ...withEnds("glide ratio"),
    ],
    rows: evidence.designs.flatMap((one) => {
      const head = designCell(one.design, one.place);
      const own = evidence.answer.designs.find((each) => each.design === one.design)?.glideRatio;
      return [
        [head, textCell("all"), ...intervalCells(own ?? null)],
        ...one.runs.map((run) => [head, textCell(run.run), ...intervalCells(run.glideRatio)]),
      ];
    }),
  };
}

/**
 * Glide ratios, corrected for the speed gained or lost.
 *
 * @param evidence whole
 * @param name names the files; "glide-ratio" unless said otherwise
 * @returns the figure, with the ratios as its table
 */
export function figureGlideRatio(evidence: GlideEvidence, name = "glide-ratio"): FigureRecord {
  const rows = glideRatioRows(evidence);
  const own = evidence.answer.designs.flatMap(({ design, glideRatio }) =>
    glideRatio === null ? [] : [{ design: printable(design), ratio: glideRatio }]
  );
  const numbers = own.map(({ design, ratio }) =>
    `${design} ${formatQuantity(ratio)} (${formatInterval(ratio)})`
  );
  const hollow = rows.some((row) => !row.used) ? " Hollow marks were left out." : "";
  const ringed = rows.some((row) => row.flagged) ? " Ringed runs stand out but count." : "";
  const range = axisRange(rows);
  const beyond =
    rows.some((row) => row.run !== null && (row.value < range[0] || row.value > range[1]))
      ? " A run that spent hardly any height has a ratio without meaning: it stands at the edge with " +
        "its number."
      : "";
  return figureRecord({
    name,
    title: "Glide ratio by run and design",
    description: `Glide ratio with 95${NO_BREAK_SPACE}% interval: ${listInWords(numbers)}. ` +
      `${rows.filter((row) => row.run !== null).length} single runs below them.`,
    caption: "Corrected for the speed spent, runs launched fast and slow can stand side by side. " +
      "The large mark is the design from the same launch down to its end; below it its runs, " +
      `each over its own speeds.${hollow}${ringed}${beyond}`,
    breakout: false,
    table: numbersTable(evidence, name),
  }, (size) => plotOf(rows, size));
}
