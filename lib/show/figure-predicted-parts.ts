/**
 * Figure: predicted drag of one design by its parts over speed, stacked, with what was measured above it.
 *
 * @module
 */
import * as Plot from "@observablehq/plot";
import { printable } from "../base/printable.ts";
import type { FigureRecord, TableRecord } from "../base/records.ts";
import { formatNumber, NO_BREAK_SPACE } from "../base/rounding.ts";
import type { MeasuredDrag } from "../base/takeoff-answer.ts";
import type { TakeoffDesign } from "../decide/design-takeoff.ts";
import type { TakeoffEvidence } from "../decide/estimate-takeoff.ts";
import { NORMAL_95 } from "../fit/takeoff-band.ts";
import { flightInWater } from "../model/steady-craft.ts";
import type { SteadyCurve } from "../model/steady-curve.ts";
import { designColour, designStyle, INK, PAPER } from "./design-style.ts";
import { type DrawingSize, figureRecord, pushApart, textWidth } from "./drawing.ts";
import { excessSentence } from "./takeoff-measured-table.ts";
import { numberCell } from "./table-cells.ts";
import { right } from "./table-columns.ts";

/** A layer of the stack. */
export interface PredictedLayer {
  readonly label: string;
  /** Opacity of the ink. */
  readonly shade: number;
  /** N by speed, bottom and top of the layer. */
  readonly points: readonly { readonly x: number; readonly from: number; readonly to: number }[];
}

const LAYERS: readonly (readonly [string, number, readonly (keyof SteadyCurve)[]])[] = [
  ["induced, waves", 0.62, ["inducedAndWave"]],
  ["section, with lift", 0.46, ["viscousLift"]],
  ["wing friction", 0.32, ["wingFriction"]],
  ["struts, spray", 0.2, ["struts", "spray", "junction"]],
  ["else", 0.12, ["extra"]],
  ["rider in air", 0.06, ["air"]],
];

/**
 * The stack that the figure draws, from the bottom up.
 *
 * @param design with its curve
 * @returns layers that are not empty
 */
export function predictedLayers({ band }: TakeoffDesign): PredictedLayer[] {
  if (band === null) return [];
  const { curve } = band;
  const below = new Float64Array(curve.speed.length);
  return LAYERS.flatMap(([label, shade, parts]) => {
    const points = [...curve.speed].map((x, i) => {
      const own = parts.reduce((sum, part) => sum + curve[part][i]!, 0);
      const from = below[i]!;
      below[i] = from + own;
      return { x, from, to: below[i]! };
    });
    return points.some((one) => one.to > one.from) ? [{ label, shade, points }] : [];
  });
}

/** Measurements that belong to the stack: told at nearly its lift. */
function pointsOf({ answer, prepared: { craft } }: TakeoffDesign): MeasuredDrag[] {
  if (answer.measured.length === 0) return [];
  const { load } = flightInWater(craft);
  return answer.measured.filter((one) => Math.abs(one.lift / load - 1) < 0.03);
}

function tableOf(layers: readonly PredictedLayer[], name: string, design: string): TableRecord {
  const speeds = layers[0]?.points.map((one) => one.x) ?? [];
  return {
    name: `${name}-layers`,
    caption: `Predicted drag of ${design} by its parts and by speed, at running depth.`,
    columns: [right("speed", "m/s"), ...layers.map((one) => right(one.label, "N"))],
    rows: speeds.map((speed, i) => [
      numberCell(speed, 2),
      ...layers.map(({ points }) => numberCell(points[i]!.to - points[i]!.from, 1)),
    ]),
  };
}

/** Edges of the 95 % band of the whole. */
function edgesOf({ band }: TakeoffDesign) {
  if (band === null) return [];
  const { curve, logUncertainty } = band;
  return [-1, 1].map((side) =>
    [...curve.speed].map((x, i) => ({
      x,
      y: curve.total[i]! * Math.exp(side * NORMAL_95 * logUncertainty[i]!),
    }))
  );
}

function plotOf(
  { layers, edges, measured, place }: {
    readonly layers: readonly PredictedLayer[];
    readonly edges: readonly (readonly { readonly x: number; readonly y: number }[])[];
    readonly measured: readonly MeasuredDrag[];
    readonly place: number;
  },
  size: DrawingSize,
): Plot.PlotOptions {
  const { narrow, fontSize } = size;
  const speeds = layers[0]?.points.map((one) => one.x) ?? [3, 8];
  const [slowest, fastest] = [speeds[0]!, speeds.at(-1)!];
  const top = 1.06 * Math.max(
    1,
    ...(layers.at(-1)?.points.map((one) => one.to) ?? [100]),
    ...measured.map((one) => one.measured.high ?? one.measured.value),
    ...edges.flat().map((one) => one.y),
  );
  const [height, marginTop, marginBottom] = [narrow ? 300 : 360, 34, 46];
  const inner = height - marginTop - marginBottom;
  const places = pushApart(
    layers.map(({ points }) =>
      marginTop + inner * (1 - (points.at(-1)!.from + points.at(-1)!.to) / 2 / top)
    ),
    fontSize + 2,
    marginTop,
    height - marginBottom - 6,
  );
  const ticks = narrow ? 4 : 6;
  const colour = designColour(place);
  return {
    width: size.width,
    height,
    marginTop,
    marginBottom,
    marginRight: 14 + Math.max(0, ...layers.map((one) => textWidth(one.label, fontSize))),
    marginLeft: narrow ? 34 : 40,
    x: { domain: [slowest, fastest] },
    y: { domain: [0, top] },
    marks: [
      ...layers.map(({ points, shade }) =>
        Plot.areaY(points, { x: "x", y1: "from", y2: "to", fill: INK, fillOpacity: shade })
      ),
      ...layers.slice(0, -1).map(({ points }) =>
        Plot.line(points, { x: "x", y: "to", stroke: PAPER, strokeWidth: 1 })
      ),
      ...layers.slice(-1).map(({ points }) =>
        Plot.line(points, { x: "x", y: "to", stroke: colour, strokeWidth: 2.25 })
      ),
      ...edges.map((edge) =>
        Plot.line(edge, {
          x: "x",
          y: "y",
          stroke: colour,
          strokeWidth: 1.25,
          strokeDasharray: "2 3",
        })
      ),
      Plot.axisX({ ticks, label: "speed through the water (m/s)", labelOffset: 40, tickSize: 4 }),
      Plot.axisY({
        ticks,
        label: narrow ? "drag (N)" : "drag of the whole craft (N)",
        tickSize: 4,
      }),
      Plot.ruleX(measured.filter((one) => one.measured.low !== null), {
        x: "speed",
        y1: (one: MeasuredDrag) => one.measured.low!,
        y2: (one: MeasuredDrag) => one.measured.high!,
        stroke: colour,
        strokeWidth: 2,
      }),
      Plot.dot(measured, {
        x: "speed",
        y: (one: MeasuredDrag) => one.measured.value,
        r: narrow ? 4 : 4.5,
        symbol: designStyle(place).symbol,
        fill: colour,
        stroke: PAPER,
        strokeWidth: 1,
      }),
      ...layers.map(({ label }, at) =>
        Plot.text([label], {
          frameAnchor: "top-right",
          textAnchor: "start",
          lineAnchor: "middle",
          dx: 8,
          dy: places[at]! - marginTop,
          fill: INK,
        })
      ),
    ],
  };
}

/**
 * Drag of one design by its parts.
 *
 * @param evidence whole
 * @param design its name
 * @param name names the files; "predicted-parts" unless said otherwise
 * @returns the figure, with the layers as its table
 */
export function figurePredictedParts(
  evidence: TakeoffEvidence,
  design: string,
  name = "predicted-parts",
): FigureRecord {
  const own = evidence.designs.find((one) => one.answer.design === design);
  const layers = own === undefined ? [] : predictedLayers(own);
  const measured = own === undefined ? [] : pointsOf(own);
  const shown = printable(design);
  const least = own?.answer.partsAt[1];
  const share = least === undefined
    ? ""
    : `At its least-drag speed of ${
      formatNumber(least.speed, 1)
    }${NO_BREAK_SPACE}m/s ${shown} is predicted ${
      formatNumber(least.total, 0)
    }${NO_BREAK_SPACE}N of drag: ${
      formatNumber(least.inducedAndWave, 0)
    }${NO_BREAK_SPACE}N for its lift and waves, ${
      formatNumber(least.wingFriction + least.viscousLift, 0)
    }${NO_BREAK_SPACE}N of the wing's own friction and form, ${
      formatNumber(least.struts + least.spray + least.junction + least.extra, 0)
    }${NO_BREAK_SPACE}N of struts and what goes with them, ${
      formatNumber(least.air, 0)
    }${NO_BREAK_SPACE}N of the rider in the air.`;
  const caption = layers.length === 0
    ? `${shown} does not fly under this load: there is nothing to draw.`
    : [
      share,
      "Dotted: the 95\u00a0% band of the whole prediction.",
      measured.length === 0 ? "" : `Marks with bars were measured. ${excessSentence(own!.answer)}`,
    ].filter((one) => one !== "").join(" ");
  return figureRecord({
    name,
    title: "Predicted drag by its parts",
    description: caption,
    caption,
    breakout: false,
    table: tableOf(layers, name, shown),
  }, (size) =>
    plotOf({
      layers,
      edges: own === undefined ? [] : edgesOf(own),
      measured,
      place: own?.prepared.place ?? 1,
    }, size));
}
