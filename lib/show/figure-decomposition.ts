/**
 * Figure: how the ratio of raw distances splits into what the foils do and what the launches did.
 *
 * @module
 */
import * as Plot from "@observablehq/plot";
import type { FigureRecord, TableRecord } from "../base/records.ts";
import { formatInterval, formatNumber, formatQuantity } from "../base/rounding.ts";
import { printable } from "../base/printable.ts";
import type { GlideEvidence } from "../decide/glide-evidence.ts";
import { INK, INK_SOFT } from "./design-style.ts";
import { type Decomposition, type DecompositionRow, decompositions } from "./decomposition-rows.ts";
import { type DrawingSize, figureRecord } from "./drawing.ts";
import { intervalBars, meanMarks, sideWords } from "./interval-marks.ts";
import { ratioAxis, ratioAxisMarks, ratioScale } from "./ratio-axis.ts";
import { rowFrame } from "./row-frame.ts";
import { designCell, numberCell, textCell } from "./table-cells.ts";
import { left, right } from "./table-columns.ts";

const PITCH = 30;

interface PlacedRow extends DecompositionRow {
  readonly y: number;
  readonly place: number;
}

function placed(parts: readonly Decomposition[]): PlacedRow[] {
  let y = 0;
  return parts.flatMap((part) => {
    y += 26;
    const rows = part.rows.map((row, at) => ({ ...row, place: part.place, y: y + at * PITCH }));
    y += (part.rows.length - 1) * PITCH + 22;
    return rows;
  });
}

function plotOf(parts: readonly Decomposition[], size: DrawingSize) {
  const { narrow, fontSize, width } = size;
  const rows = placed(parts);
  const inner = (rows.at(-1)?.y ?? 40) + 14;
  const [marginLeft, marginRight] = narrow ? [98, 54] : [160, 66];
  const units = width - marginLeft - marginRight;
  const ends = parts.flatMap((part) => [part.low, part.high]).filter((end) => end !== null);
  const axis = ratioAxis([...rows.map((row) => row.to), ...ends], units, narrow ? 34 : 38);
  const sums = rows.filter((row) => row.kind !== "step").map((row) => ({ ...row, x: row.to }));
  const steps = rows.filter((row) => row.kind === "step");
  const intervals = rows.flatMap((row, at) => {
    const part = parts[Math.floor(at / 5)]!;
    return row.kind !== "same launch" || part.low === null || part.high === null
      ? []
      : [{ y: row.y, low: part.low, high: part.high, place: row.place }];
  });
  const joins = rows.flatMap((row, at) => {
    const next = rows[at + 1];
    return next === undefined || at % 5 === 4 ? [] : [{ x: row.to, y1: row.y, y2: next.y }];
  });
  const heads = parts.map((part, at) => ({ part, y: rows[at * 5]!.y - 24 }));
  return {
    ...rowFrame(size, inner, { top: 12, bottom: 46, left: marginLeft, right: marginRight }),
    x: ratioScale(axis),
    marks: [
      ...ratioAxisMarks(axis, narrow ? "times as far" : "times the baseline's distance"),
      ...heads.flatMap(({ part, y }) =>
        sideWords([part.baseline, part.candidate], units, fontSize).map((word) =>
          Plot.text([word.text], { ...word.options, y: [y] })
        )
      ),
      Plot.link(joins, {
        x1: "x",
        x2: "x",
        y1: "y1",
        y2: "y2",
        stroke: INK_SOFT,
        strokeWidth: 1,
        strokeDasharray: "2 3",
      }),
      Plot.link(steps, {
        x1: "from",
        x2: "to",
        y1: "y",
        y2: "y",
        stroke: INK_SOFT,
        strokeWidth: 9,
        strokeOpacity: 0.55,
        strokeLinecap: "butt",
      }),
      ...intervalBars(intervals),
      ...meanMarks(sums.filter((row) => row.kind === "same launch")),
      ...meanMarks(sums.filter((row) => row.kind === "as flown"), true),
      ...[true, false].flatMap((bold) => {
        const some = rows.filter((row) => row.kind === "same launch" === bold);
        const look = { y: "y", fill: INK, fontWeight: bold ? 600 : 400 };
        return [
          Plot.text(some, {
            ...look,
            frameAnchor: "left",
            dx: 4 - marginLeft,
            textAnchor: "start",
            text: narrow ? "short" : "label",
          }),
          Plot.text(some, {
            ...look,
            frameAnchor: "right",
            dx: marginRight - 6,
            textAnchor: "end",
            text: (row: DecompositionRow) =>
              (row.kind === "step" ? "× " : "= ") + formatNumber(row.factor, 2),
          }),
        ];
      }),
    ],
  };
}

function numbersTable(parts: readonly Decomposition[], name: string): TableRecord {
  return {
    name: `${name}-numbers`,
    caption: "What each part multiplies the ratio of distances by.",
    columns: [
      left("design"),
      left("part"),
      right("factor"),
      right("ratio so far"),
    ],
    rows: parts.flatMap((part) =>
      part.rows.map((row) => [
        designCell(part.candidate, part.place),
        textCell(row.label),
        numberCell(row.factor, 3),
        numberCell(row.to, 3),
      ])
    ),
  };
}

/**
 * Launch effect, drag effect and energy effect, step by step.
 *
 * @param evidence whole
 * @param name names the files; "decomposition" unless said otherwise
 * @returns the figure, with the factors as its table
 */
export function figureDecomposition(evidence: GlideEvidence, name = "decomposition"): FigureRecord {
  const parts = decompositions(evidence);
  const sentences = evidence.answer.comparisons.flatMap((one) => {
    if (one.raw === null || one.ratio === null) return [];
    const { dragEffect, energyEffect, launchEffect, ratio } = one.raw;
    const n = (value: number) => formatNumber(value, 2);
    return [
      `${printable(one.candidate)} against ${printable(one.baseline)}: drag ${
        n(dragEffect)
      } times ` +
      `speed to spend ${n(energyEffect)} gives ${formatQuantity(one.ratio, { apartFrom: 1 })} ` +
      `(${formatInterval(one.ratio, { apartFrom: 1 })}) from the same launch; times the launches ` +
      `${n(launchEffect)} gives ${n(ratio)} as flown.`,
    ];
  });
  return figureRecord({
    name,
    title: "What the foil did, what the launch did",
    description: sentences.join(" "),
    caption: "Read downwards: drag and speed left to spend make the ratio from the same launch " +
      "(full mark, with its interval); launch speed, height lost and early stops then turn it " +
      "into the ratio as flown (hollow mark). Only the full mark compares the foils.",
    breakout: false,
    table: numbersTable(parts, name),
  }, (size) => plotOf(parts, size));
}
