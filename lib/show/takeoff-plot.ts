/**
 * The drawing that the figures of tow force and of power share: each design's curve with its band, and its takeoff.
 *
 * @module
 */
import * as Plot from "@observablehq/plot";
import { designColour, designStyle, PAPER } from "./design-style.ts";
import type { DrawingSize } from "./drawing.ts";
import { bandMark, curveMark, extentOf, speedPlot } from "./speed-plot.ts";
import type { TakeoffCurve } from "./takeoff-curves.ts";

/** Takeoff as a mark with both its intervals. */
function takeoffMarks({ takeoffSpeed, atTakeoff, place }: TakeoffCurve, size: DrawingSize) {
  const stroke = designColour(place);
  const [x, y] = [takeoffSpeed.value, atTakeoff.value];
  const cross = { stroke, strokeWidth: 2, clip: true };
  return [
    ...(takeoffSpeed.low === null || takeoffSpeed.high === null
      ? []
      : [Plot.ruleY([y], { x1: takeoffSpeed.low, x2: takeoffSpeed.high, ...cross })]),
    ...(atTakeoff.low === null || atTakeoff.high === null
      ? []
      : [Plot.ruleX([x], { y1: atTakeoff.low, y2: atTakeoff.high, ...cross })]),
    Plot.dot([{ x, y }], {
      x: "x",
      y: "y",
      r: size.narrow ? 5 : 6,
      symbol: designStyle(place).symbol,
      fill: stroke,
      stroke: PAPER,
      strokeWidth: 1.5,
    }),
  ];
}

/**
 * Options of the drawing.
 *
 * @param curves of the designs
 * @param size of the drawing
 * @param label of the upright axis
 * @returns options for `figureRecord`
 */
export function takeoffPlot(
  curves: readonly TakeoffCurve[],
  size: DrawingSize,
  label: string,
): Plot.PlotOptions {
  const all = curves.flatMap((one) => one.points);
  const speeds = extentOf([
    ...all.map((one) => one.x),
    ...curves.flatMap(({ takeoffSpeed: { low, value } }) => [low ?? value]),
  ], [2, 8]);
  const [, top] = extentOf([
    ...all.map((one) => one.high),
    ...curves.map((one) => one.atTakeoff.high ?? one.atTakeoff.value),
  ], [0, 100]);
  return speedPlot(size, {
    speeds,
    values: [0, 1.05 * top],
    label,
    ends: curves.map(({ design, place, points }) => ({
      design,
      place,
      end: points.at(-1)?.y ?? 0,
    })),
    marks: [
      ...curves.map(({ points, place }) => bandMark(points, place)),
      ...curves.map(({ points, place }) => curveMark(points, place)),
      ...curves.flatMap((one) => takeoffMarks(one, size)),
    ],
  });
}
