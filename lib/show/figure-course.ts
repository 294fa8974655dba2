/**
 * Sketch of a course beside the jetty: where each reading of a glide is taken.
 *
 * @module
 */
import * as Plot from "@observablehq/plot";
import type { FigureRecord } from "../base/records.ts";
import { type DrawingSize, figureRecord } from "./drawing.ts";

/** A point of the sketch: along the course and above the water, in a scale of its own. */
interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Flight of the board from the jetty's edge to the end, splash included. */
const FLIGHT: readonly Spot[] = [
  { x: 1.3, y: 1 },
  { x: 1.9, y: 0.78 },
  { x: 2.3, y: 0.08 },
  { x: 2.75, y: 0.36 },
  { x: 3.3, y: 0.62 },
  { x: 5, y: 0.52 },
  { x: 7, y: 0.36 },
  { x: 8.4, y: 0.2 },
];

const JETTY: readonly Spot[] = [{ x: 0, y: 0.9 }, { x: 1.3, y: 0.9 }, { x: 1.3, y: -0.35 }];
const START: Spot = { x: 3.3, y: 0.62 };
const END: Spot = { x: 8.4, y: 0.2 };
const MARKS = [2.9, 3.7, 8, 8.8];

function words(spots: readonly (Spot & { text: string })[], anchor: "start" | "middle" | "end") {
  return Plot.text(spots, {
    x: "x",
    y: "y",
    text: "text",
    textAnchor: anchor,
    fill: "currentColor",
  });
}

function sketch({ narrow }: DrawingSize): Plot.PlotOptions {
  const line = { stroke: "currentColor", strokeWidth: 1.5 };
  const thin = { stroke: "currentColor", strokeWidth: 1 };
  return {
    height: narrow ? 200 : 230,
    marginLeft: 8,
    marginRight: 8,
    marginTop: 8,
    marginBottom: 8,
    axis: null,
    x: { domain: [0, 10] },
    y: { domain: [-0.8, 1.25] },
    marks: [
      Plot.ruleY([0], { stroke: "currentColor", strokeOpacity: 0.5, strokeWidth: 2 }),
      Plot.line(JETTY, { x: "x", y: "y", stroke: "currentColor", strokeWidth: 4 }),
      Plot.line(FLIGHT, { x: "x", y: "y", curve: "catmull-rom", ...line, strokeDasharray: "6 3" }),
      Plot.ruleX(MARKS, { y1: -0.12, y2: 0.12, stroke: "currentColor", strokeWidth: 3 }),
      Plot.dot([START, END], { x: "x", y: "y", r: 4.5, fill: "currentColor" }),
      Plot.ruleX([START, END], { x: "x", y1: "y", y2: -0.5, ...thin, strokeDasharray: "2 3" }),
      Plot.arrow([{ x1: START.x, x2: END.x, y: -0.5 }, { x1: END.x, x2: START.x, y: -0.5 }], {
        x1: "x1",
        x2: "x2",
        y: "y",
        ...thin,
        headLength: 6,
      }),
      Plot.ruleY([START], { x1: START.x, x2: 9.3, y: "y", ...thin, strokeDasharray: "2 3" }),
      Plot.ruleY([END], { x1: END.x, x2: 9.3, y: "y", ...thin, strokeDasharray: "2 3" }),
      Plot.arrow([{ x: 9.2, y1: START.y, y2: END.y }], {
        x: "x",
        y1: "y1",
        y2: "y2",
        ...thin,
        headLength: 6,
      }),
      words([{ x: 0.1, y: 1.05, text: "jetty" }], "start"),
      words([{ x: 2.3, y: -0.25, text: "splash" }], "middle"),
      words(
        [{ x: START.x, y: 0.85, text: narrow ? "launch speed" : "launch speed, board clear" }],
        "start",
      ),
      words([{ x: 8.3, y: -0.25, text: "end speed" }], "end"),
      words([{ x: 5.85, y: -0.68, text: "distance" }], "middle"),
      words([{ x: 9.95, y: 0.85, text: "height lost" }], "end"),
      words([{ x: 0.1, y: 0.12, text: "water" }], "start"),
    ],
  };
}

/**
 * The sketch of the course: nothing measured stands in it.
 *
 * @returns the figure, wide and narrow
 */
export function courseFigure(): FigureRecord {
  return figureRecord({
    name: "course",
    title: "Where each reading of a glide is taken",
    description:
      "Seen from the bank: a jetty, the splash of the landing, then two pairs of marks. The launch speed is " +
      "read at the first pair, when the board is clear; the end speed at the second, just before the glide ends. " +
      "Distance and height lost lie between these two readings.",
    caption:
      "Everything before the first dot belongs to the launch, everything between the dots to the wing. The short " +
      "upright strokes are pairs of marks.",
    breakout: false,
    table: null,
  }, sketch);
}
