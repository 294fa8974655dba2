/**
 * Marks that several figures share: an interval as a bar with end ticks, and runs by whether they count.
 *
 * Vertical places are units of the drawing, measured downwards.
 *
 * @module
 */
import { printable } from "../base/printable.ts";
import * as Plot from "@observablehq/plot";
import { designColour, designStyle, INK, PAPER } from "./design-style.ts";
import { cutToWidth, textWidth } from "./drawing.ts";

/** An interval in a row. */
export interface IntervalRow {
  readonly y: number;
  readonly low: number | null;
  readonly high: number | null;
  readonly place: number;
}

function places(rows: readonly { readonly place: number }[]): number[] {
  return [...new Set(rows.map((row) => row.place))];
}

/**
 * Bars of 3 units with end ticks.
 *
 * @param rows those without both ends are passed over
 * @returns marks
 */
export function intervalBars(rows: readonly IntervalRow[]): Plot.Markish[] {
  const whole = rows.filter((row) => row.low !== null && row.high !== null);
  return places(whole).flatMap((place) => {
    const mine = whole.filter((row) => row.place === place);
    const stroke = designColour(place);
    const ends = mine.flatMap(({ y, low, high }) => [
      { x: low, y1: y - 6, y2: y + 6 },
      { x: high, y1: y - 6, y2: y + 6 },
    ]);
    return [
      Plot.ruleY(mine, { x1: "low", x2: "high", y: "y", stroke, strokeWidth: 3 }),
      Plot.ruleX(ends, { x: "x", y1: "y1", y2: "y2", stroke, strokeWidth: 2 }),
    ];
  });
}

/**
 * Thin lines without ticks, for single runs.
 *
 * @param rows those without both ends are passed over
 * @returns marks
 */
export function thinIntervals(rows: readonly IntervalRow[]): Plot.Markish[] {
  const whole = rows.filter((row) => row.low !== null && row.high !== null);
  return places(whole).map((place) =>
    Plot.ruleY(whole.filter((row) => row.place === place), {
      x1: "low",
      x2: "high",
      y: "y",
      stroke: designColour(place),
      strokeWidth: 1.25,
      strokeOpacity: 0.75,
    })
  );
}

/** A run as a point. */
export interface RunPoint {
  readonly x: number;
  readonly y: number;
  readonly place: number;
  readonly used: boolean;
  readonly flagged: boolean;
}

/**
 * Runs: full marks count, hollow ones were left out, ringed ones stand out but count.
 *
 * @param points in units of the figure's scales
 * @param r radius in units of the drawing
 * @returns marks
 */
export function runMarks(points: readonly RunPoint[], r: number): Plot.Markish[] {
  const at = { x: "x", y: "y" };
  const drawn = places(points).flatMap((place) => {
    const mine = points.filter((point) => point.place === place);
    const { symbol } = designStyle(place);
    const colour = designColour(place);
    return [
      Plot.dot(mine.filter((one) => one.used), {
        ...at,
        r,
        symbol,
        fill: colour,
        stroke: PAPER,
        strokeWidth: 1,
      }),
      Plot.dot(mine.filter((one) => !one.used), {
        ...at,
        r,
        symbol,
        fill: PAPER,
        stroke: colour,
        strokeWidth: 1.75,
      }),
    ];
  });
  const ringed = points.filter((one) => one.used && one.flagged);
  return [...drawn, Plot.dot(ringed, { ...at, r: r + 4, stroke: INK, strokeWidth: 1.25 })];
}

/**
 * The large mark of a design's own result.
 *
 * @param points in units of the figure's scales
 * @param hollow true for what does not compare the designs
 * @returns marks
 */
export function meanMarks(
  points: readonly { readonly x: number; readonly y: number; readonly place: number }[],
  hollow = false,
): Plot.Markish[] {
  return points.map((point) =>
    Plot.dot([point], {
      x: "x",
      y: "y",
      r: 6.5,
      symbol: designStyle(point.place).symbol,
      fill: hollow ? PAPER : designColour(point.place),
      stroke: hollow ? designColour(point.place) : PAPER,
      strokeWidth: hollow ? 2 : 1,
    })
  );
}

/**
 * Words at both ends of a ratio's axis: who is ahead on which side. They stand at the frame's edges, since the line at 1
 * may be anywhere. Where there is no room for "further", an arrow and the name stand alone.
 *
 * @param names of baseline and candidate
 * @param units width of the frame
 * @param fontSize units
 * @returns two texts with the options of their marks
 */
export function sideWords(names: readonly [string, string], units: number, fontSize: number) {
  const half = units / 2 - fontSize / 2;
  const long = names.every((name) => textWidth(`← ${printable(name)} further`, fontSize) <= half);
  const further = long ? " further" : "";
  const room = half - textWidth("← " + further, fontSize);
  const options = (frameAnchor: "left" | "right") => ({
    frameAnchor,
    textAnchor: frameAnchor === "left" ? "start" as const : "end" as const,
    fill: INK,
    stroke: PAPER,
    strokeWidth: 5,
  });
  const [base, other] = names.map((name) => cutToWidth(name, room, fontSize));
  return [
    { text: `← ${base}${further}`, options: options("left") },
    { text: `${other}${further} →`, options: options("right") },
  ];
}
