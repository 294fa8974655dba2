/**
 * Figure: distance against launch speed. Each design's fitted curve with its band, and every run as flown.
 *
 * @module
 */
import * as Plot from "@observablehq/plot";
import type { FigureRecord, TableRecord } from "../base/records.ts";
import { formatNumber, formatQuantity, NO_BREAK_SPACE } from "../base/rounding.ts";
import { printable } from "../base/printable.ts";
import { listInWords } from "../base/sentence-words.ts";
import type { DesignEvidence, GlideEvidence } from "../decide/glide-evidence.ts";
import { curveLabelPlaces } from "./curve-labels.ts";
import { designColour, designStyle, INK, PAPER } from "./design-style.ts";
import { type DistanceSeries, distanceSeries } from "./distance-series.ts";
import { cutToWidth, type DrawingSize, figureRecord, textWidth } from "./drawing.ts";
import { runMarks } from "./interval-marks.ts";
import { refusedDesigns } from "./refused-designs.ts";
import { designCell, numberCell } from "./table-cells.ts";
import { left, right, withEnds } from "./table-columns.ts";
import { settingText } from "./verdict-sentence.ts";

function numbersTable(series: readonly DistanceSeries[], name: string): TableRecord {
  return {
    name: `${name}-curves`,
    caption: "Distance by launch speed, each design's fitted curve with its 95\u00a0% band.",
    columns: [
      left("design"),
      right("launch speed", "m/s"),
      ...withEnds("distance", "m"),
    ],
    rows: series.flatMap(({ design, place, curve }) =>
      curve.map((point) => [
        designCell(design, place),
        numberCell(point.launchSpeed, 2),
        numberCell(point.distance, 2),
        numberCell(point.low, 2),
        numberCell(point.high, 2),
      ])
    ),
  };
}

function extent(values: readonly number[]): [number, number] {
  return [Math.min(...values), Math.max(...values)];
}

function plotOf(series: readonly DistanceSeries[], launch: number | null, size: DrawingSize) {
  const { narrow, fontSize, width } = size;
  const curves = series.flatMap((one) => one.curve);
  const points = series.flatMap((one) => one.points);
  const speeds = [...curves, ...points].map((one) => one.launchSpeed);
  const [slowest, fastest] = speeds.length === 0 ? [3, 5] : extent(speeds);
  const pad = Math.max(0.05, 0.02 * (fastest - slowest));
  const x: [number, number] = [slowest - pad, fastest + pad];
  const top = 1.08 * Math.max(1, ...[...curves, ...points].map((one) => one.distance));
  const names = series.map((one) => cutToWidth(one.design, narrow ? 76 : 120, fontSize));
  const marginRight = 26 + Math.max(0, ...names.map((name) => textWidth(name, fontSize)));
  const [height, marginTop, marginBottom] = [narrow ? 300 : 360, 44, 46];
  const inner = height - marginTop - marginBottom;
  const pixel = (distance: number) => marginTop + inner * (1 - distance / top);
  const places = curveLabelPlaces(series, launch, (distance) => pixel(Math.min(distance, top)), {
    gap: fontSize + 2,
    low: marginTop,
    high: height - marginBottom - 6,
  });
  const halo = { stroke: PAPER, strokeWidth: 5, fill: INK };
  const labelMark = (at: number) => {
    const { symbol } = designStyle(series[at]!.place);
    const dy = places.get(at)! - marginTop;
    return [
      Plot.dot([at], {
        frameAnchor: "top-right",
        dx: 12,
        dy,
        r: narrow ? 4 : 4.5,
        symbol,
        fill: designColour(series[at]!.place),
      }),
      Plot.text([names[at]!], {
        frameAnchor: "top-right",
        textAnchor: "start",
        lineAnchor: "middle",
        dx: 21,
        dy,
        fill: INK,
      }),
    ];
  };
  const r = narrow ? 4 : 4.5;
  return {
    height,
    marginTop,
    marginBottom,
    marginRight,
    marginLeft: narrow ? 34 : 40,
    x: { domain: x },
    y: { domain: [0, top] },
    marks: [
      Plot.gridX({ ticks: narrow ? 4 : 6, stroke: INK, strokeOpacity: 0.1 }),
      Plot.gridY({ ticks: narrow ? 4 : 6, stroke: INK, strokeOpacity: 0.1 }),
      Plot.axisX({
        ticks: narrow ? 4 : 6,
        label: "launch speed (m/s)",
        labelOffset: 40,
        tickSize: 4,
      }),
      Plot.axisY({
        ticks: narrow ? 4 : 6,
        label: narrow ? "distance (m)" : "distance flown (m)",
        tickSize: 4,
      }),
      ...series.map(({ curve, place }) =>
        Plot.areaY(curve, {
          x: "launchSpeed",
          y1: "low",
          y2: "high",
          fill: designColour(place),
          fillOpacity: 0.16,
          clip: true,
        })
      ),
      ...(launch === null ? [] : [
        Plot.ruleX([launch], { stroke: INK, strokeWidth: 1.5 }),
        Plot.text([`same launch, ${settingText(launch)}${NO_BREAK_SPACE}m/s`], {
          x: launch,
          frameAnchor: "top",
          lineAnchor: "bottom",
          textAnchor: launch < (x[0] + x[1]) / 2 ? "start" : "end",
          dy: -5,
          dx: launch < (x[0] + x[1]) / 2 ? -2 : 2,
          ...halo,
        }),
      ]),
      ...series.map(({ curve, place }) =>
        Plot.line(curve, {
          x: "launchSpeed",
          y: "distance",
          stroke: designColour(place),
          strokeWidth: 2.25,
          strokeLinecap: "butt",
          clip: true,
          ...(designStyle(place).dash === null
            ? {}
            : { strokeDasharray: designStyle(place).dash! }),
        })
      ),
      ...runMarks(
        series.flatMap(({ points, place }) =>
          points.map((one) => ({ ...one, place, x: one.launchSpeed, y: one.distance }))
        ),
        r,
      ),
      ...series.flatMap((_, at) => places.has(at) ? labelMark(at) : []),
    ],
    width,
  };
}

function atLaunch(design: DesignEvidence, evidence: GlideEvidence): string | null {
  const result = evidence.answer.designs.find((one) => one.design === design.design);
  if (result?.distance === null || result?.distance === undefined) return null;
  return `${printable(design.design)} ${formatQuantity(result.distance)}`;
}

function captionOf(evidence: GlideEvidence, series: readonly DistanceSeries[]): string {
  const { launch } = evidence.answer;
  const refused = evidence.designs.filter((one) => refusedDesigns(evidence.answer).has(one.design));
  const reached = evidence.designs.filter((one) => !refused.includes(one)).map((one) =>
    atLaunch(one, evidence)
  ).filter((one) => one !== null);
  const points = series.flatMap((one) => one.points);
  const sentences = [
    launch === null || reached.length === 0
      ? ""
      : `At the same launch, the upright line, the curves reach ${listInWords(reached)}.`,
    "Each mark is one run as flown, with its own launch and its own height lost; the curves all " +
    (launch === null
      ? "lose the same height."
      : `lose ${formatNumber(launch.drop, 2)}${NO_BREAK_SPACE}m.`),
    refused.length === 0
      ? ""
      : `No curve is drawn for ${listInWords(refused.map((one) => printable(one.design)))}: ` +
        "these runs can't be compared.",
    points.some((one) => !one.used) ? "Hollow marks were left out." : "",
    points.some((one) => one.used && one.flagged) ? "Ringed runs stand out but count." : "",
  ];
  return sentences.filter((one) => one !== "").join(" ");
}

/**
 * Distance against launch speed.
 *
 * @param evidence whole
 * @param name names the files; "distance" unless said otherwise
 * @returns the figure, with the curves as its table
 */
export function figureDistance(evidence: GlideEvidence, name = "distance"): FigureRecord {
  const series = distanceSeries(evidence);
  const launch = evidence.answer.launch?.speed ?? null;
  const points = series.flatMap((one) => one.points);
  const names = listInWords(series.map((one) => one.design));
  const left = points.filter((one) => !one.used).length;
  return figureRecord({
    name,
    title: "Distance against launch speed by design",
    description: `${points.length} runs of ${names}` +
      `${left === 0 ? "" : `, ${left} of them left out`}, with one fitted curve a design and its ` +
      `95${NO_BREAK_SPACE}% band. ${captionOf(evidence, series)}`,
    caption: captionOf(evidence, series),
    breakout: false,
    table: numbersTable(series, name),
  }, (size) => plotOf(series, launch, size));
}
