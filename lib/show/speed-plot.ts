/**
 * The frame of a figure over speed: both axes with their grid, and the designs' labels at the ends of their curves.
 *
 * @module
 */
import * as Plot from "@observablehq/plot";
import { designColour, designStyle, INK } from "./design-style.ts";
import { cutToWidth, type DrawingSize, pushApart, textWidth } from "./drawing.ts";

/** A label to the right of a curve. */
export interface EndLabel {
  readonly design: string;
  readonly place: number;
  /** Where its curve ends, in the unit of the vertical axis. */
  readonly end: number;
}

/** What a figure over speed is made of. */
export interface SpeedPlotParts {
  /** m/s */
  readonly speeds: readonly [from: number, to: number];
  readonly values: readonly [from: number, to: number];
  readonly label: string;
  /** Of the horizontal axis where it is not speed. */
  readonly across?: string;
  readonly ends: readonly EndLabel[];
  /** Between the grid and the labels. */
  readonly marks: readonly Plot.Markish[];
}

/**
 * From the least to the greatest of some numbers.
 *
 * @param values any
 * @param otherwise where there are none
 * @returns both ends
 */
export function extentOf(
  values: readonly number[],
  otherwise: readonly [number, number],
): readonly [number, number] {
  return values.length === 0 ? otherwise : [Math.min(...values), Math.max(...values)];
}

/** Letters of a design's name stand in so many units. */
const nameRoom = (narrow: boolean) => narrow ? 76 : 120;

/**
 * Options of a plot over speed.
 *
 * @param size of the drawing
 * @param parts domains, labels, marks
 * @returns options for `figureRecord`
 */
export function speedPlot(size: DrawingSize, parts: SpeedPlotParts): Plot.PlotOptions {
  const { narrow, fontSize } = size;
  const { speeds: [slowest, fastest], values: [least, most], ends } = parts;
  const pad = Math.max(0.05, 0.02 * (fastest - slowest));
  const names = ends.map((one) => cutToWidth(one.design, nameRoom(narrow), fontSize));
  const [height, marginTop, marginBottom] = [narrow ? 290 : 350, 34, 46];
  const inner = height - marginTop - marginBottom;
  const pixel = (value: number) => marginTop + inner * (most - value) / (most - least);
  const places = pushApart(
    ends.map((one) => pixel(Math.max(least, Math.min(most, one.end)))),
    fontSize + 2,
    marginTop,
    height - marginBottom - 6,
  );
  const ticks = narrow ? 4 : 6;
  const grid = { ticks, stroke: INK, strokeOpacity: 0.1 };
  return {
    width: size.width,
    height,
    marginTop,
    marginBottom,
    marginRight: 26 + Math.max(0, ...names.map((name) => textWidth(name, fontSize))),
    marginLeft: (narrow ? 34 : 40) + (most >= 1000 ? 12 : 0),
    x: { domain: [slowest - pad, fastest + pad] },
    y: { domain: [least, most] },
    marks: [
      Plot.gridX(grid),
      Plot.gridY(grid),
      Plot.axisX({
        ticks,
        label: parts.across ?? "speed through the water (m/s)",
        labelOffset: 40,
        tickSize: 4,
      }),
      Plot.axisY({ ticks, label: parts.label, tickSize: 4 }),
      ...parts.marks,
      ...ends.flatMap(({ place }, at) => {
        const dy = places[at]! - marginTop;
        return [
          Plot.dot([at], {
            frameAnchor: "top-right",
            dx: 12,
            dy,
            r: narrow ? 4 : 4.5,
            symbol: designStyle(place).symbol,
            fill: designColour(place),
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
      }),
    ],
  };
}

/** A curve with its band. */
export interface BandPointDrawn {
  readonly x: number;
  readonly y: number;
  readonly low: number;
  readonly high: number;
}

/**
 * A band in a design's colour.
 *
 * @param points along the curve
 * @param place of the design
 * @returns the mark
 */
export function bandMark(points: readonly BandPointDrawn[], place: number): Plot.Markish {
  return Plot.areaY(points, {
    x: "x",
    y1: "low",
    y2: "high",
    fill: designColour(place),
    fillOpacity: 0.16,
    clip: true,
  });
}

/**
 * A curve in a design's colour and dash.
 *
 * @param points along the curve
 * @param place of the design
 * @param form `beyond` for the thin dots past the speeds towed, `claim` for the thick stretch of a claim
 * @returns the mark
 */
export function curveMark(
  points: readonly BandPointDrawn[],
  place: number,
  form: "towed" | "beyond" | "claim" = "towed",
): Plot.Markish {
  const dash = { towed: designStyle(place).dash, beyond: "1.5 4", claim: null }[form];
  return Plot.line(points, {
    x: "x",
    y: "y",
    stroke: designColour(place),
    strokeWidth: { towed: 2.25, beyond: 1.5, claim: 6 }[form],
    // A claim at a single speed is a dot.
    strokeLinecap: points.length === 1 ? "round" : "butt",
    clip: form !== "claim",
    ...(dash === null ? {} : { strokeDasharray: dash }),
  });
}
