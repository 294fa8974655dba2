/**
 * Figure: lift-to-drag of the whole craft against speed, with each design's best point.
 *
 * @module
 */
import * as Plot from "@observablehq/plot";
import type { FigureRecord, TableRecord } from "../base/records.ts";
import type { DesignTow } from "../base/tow-answer.ts";
import type { TowEvidence } from "../decide/compare-tows.ts";
import { designColour, designStyle, PAPER } from "./design-style.ts";
import { type DrawingSize, figureRecord } from "./drawing.ts";
import { runMarks } from "./interval-marks.ts";
import { bandMark, type BandPointDrawn, curveMark, extentOf, speedPlot } from "./speed-plot.ts";
import { designCell, numberCell } from "./table-cells.ts";
import { left, right, withEnds } from "./table-columns.ts";
import { type TowCurvePoint, type TowCurves, towCurves } from "./tow-curves.ts";
import { bestSentence } from "./tow-sentence.ts";

interface Series extends TowCurves {
  readonly answer: DesignTow;
}

/** Lift over drag: the greatest drag is the least ratio. */
const ratios = (points: readonly TowCurvePoint[], lift: number): BandPointDrawn[] =>
  points.map(({ speed, drag, low, high }) => ({
    x: speed,
    y: lift / drag,
    low: lift / high,
    high: lift / low,
  }));

function seriesOf(evidence: TowEvidence): Series[] {
  return towCurves(evidence).map((one, at) => ({ ...one, answer: evidence.answer.designs[at]! }));
}

function numbersTable(all: readonly Series[], name: string): TableRecord {
  return {
    name: `${name}-curves`,
    caption: "Lift-to-drag of the whole craft by speed, with its 95\u00a0% band.",
    columns: [left("design"), right("speed", "m/s"), ...withEnds("lift-to-drag")],
    rows: all.flatMap(({ design, place, curve, lift }) =>
      ratios(curve, lift ?? 0).map(({ x, y, low, high }) => [
        designCell(design, place),
        numberCell(x, 2),
        numberCell(y, 2),
        numberCell(low, 2),
        numberCell(high, 2),
      ])
    ),
  };
}

/** Half length of the ticks at the ends of an upright bar in m/s, of a level one as a ratio; radius of the mark in units. */
interface Ticks {
  readonly speed: number;
  readonly ratio: number;
  readonly r: number;
}

/** The best point: a mark with both intervals; hollow, at the edge with the bound below it, where it was not towed. */
function bestMarks({ answer, place }: Series, ticks: Ticks): Plot.Markish[] {
  const { bestLiftToDrag: best, speedOfBestLiftToDrag: speed } = answer;
  if (best === null || speed === null || best.low === null) return [];
  const look = { stroke: designColour(place), strokeWidth: 2.5 };
  const inside = best.kind === "interval";
  const point = { x: speed.value, y: best.value };
  const level = (y: number | null, x1: number | null, x2: number | null) =>
    y === null || x1 === null || x2 === null ? [] : [Plot.ruleY([y], { x1, x2, ...look })];
  const upright = (x: number | null, y1: number | null, y2: number | null) =>
    x === null || y1 === null || y2 === null ? [] : [Plot.ruleX([x], { y1, y2, ...look })];
  return [
    ...upright(point.x, best.low, best.high ?? point.y),
    ...[best.low, best.high].flatMap((end) =>
      level(end, point.x - ticks.speed, point.x + ticks.speed)
    ),
    ...level(point.y, speed.low, speed.high),
    ...[speed.low, speed.high].flatMap((end) =>
      inside ? upright(end, point.y - ticks.ratio, point.y + ticks.ratio) : []
    ),
    Plot.dot([point], {
      x: "x",
      y: "y",
      r: ticks.r,
      symbol: designStyle(place).symbol,
      fill: inside ? look.stroke : PAPER,
      stroke: inside ? PAPER : look.stroke,
      strokeWidth: inside ? 1 : 2,
    }),
  ];
}

function plotOf(all: readonly Series[], size: DrawingSize) {
  const laws = all.flatMap((one) => one.lift === null ? [] : [{ ...one, lift: one.lift }]);
  const drawn = laws.map((one) => ({
    ...one,
    towed: ratios(one.curve, one.lift),
    past: one.beyond.map((piece) => ratios(piece, one.lift)),
    readings: one.marks.filter((mark) => mark.drag > 0)
      .map((mark) => ({ ...mark, x: mark.speed, y: one.lift / mark.drag, place: one.place })),
  }));
  const speeds = drawn.flatMap((one) => [...one.towed, ...one.past.flat(), ...one.readings])
    .map((one) => one.x);
  const top = 1.08 * Math.max(
    1,
    ...drawn.flatMap((one) => [
      ...one.towed.map((point) => point.high),
      ...one.past.flat().map((point) => point.y),
      ...one.readings.filter((reading) => reading.used).map((reading) => reading.y),
    ]),
  );
  const low = 0.9 *
    Math.min(
      top / 2,
      ...drawn.flatMap((one) => [
        ...one.towed.map((point) => point.low),
        ...one.past.flat().map((point) => point.y),
        ...one.readings.filter((reading) => reading.used).map((reading) => reading.y),
      ]),
    );
  const [slowest, fastest] = extentOf(speeds, [3, 5]);
  const ticks = {
    r: size.narrow ? 4 : 5.5,
    speed: 0.011 * (fastest - slowest),
    ratio: 0.018 * (top - low),
  };
  return speedPlot(size, {
    speeds: [slowest, fastest],
    values: [low, top],
    label: size.narrow ? "lift-to-drag" : "lift-to-drag of the whole craft",
    ends: drawn.map(({ design, place, towed, past }) => ({
      design,
      place,
      end: (past[1]?.at(-1) ?? towed.at(-1))?.y ?? 0,
    })),
    marks: [
      ...drawn.map(({ towed, place }) => bandMark(towed, place)),
      ...drawn.flatMap(({ past, place }) => past.map((one) => curveMark(one, place, "beyond"))),
      ...drawn.map(({ towed, place }) => curveMark(towed, place)),
      ...runMarks(
        drawn.flatMap((one) => one.readings).filter((one) => one.y <= top && one.y >= low),
        size.narrow ? 2.5 : 3,
      ),
      ...drawn.flatMap((one) => bestMarks(one, ticks)),
    ],
  });
}

function captionOf(all: readonly Series[]): string {
  const laws = all.filter((one) => one.lift !== null);
  const best = laws.flatMap((one) => one.answer.bestLiftToDrag ?? []);
  return [
    ...all.map((one) => bestSentence(one.answer)),
    best.some((one) => one.kind === "interval")
      ? "The marks with bars are the best points, the bars the 95\u00a0% intervals of ratio and speed."
      : "",
    best.some((one) => one.kind !== "interval")
      ? "A large hollow mark stands at the edge of the speeds towed: the best is at least what its bar begins at."
      : "",
    laws.length === 0
      ? "No law fits these readings, so nothing is drawn."
      : "Small marks are readings at the full lift; dotted is past the speeds towed.",
  ].filter((one) => one !== "").join(" ");
}

/**
 * Lift-to-drag of the whole craft against speed.
 *
 * @param evidence whole
 * @param name names the files; "lift-to-drag" unless said otherwise
 * @returns the figure, with the curves as its table
 */
export function figureLiftToDrag(evidence: TowEvidence, name = "lift-to-drag"): FigureRecord {
  const all = seriesOf(evidence);
  const caption = captionOf(all);
  return figureRecord({
    name,
    title: "Lift-to-drag against speed by design",
    description: caption,
    caption,
    breakout: false,
    table: numbersTable(all, name),
  }, (size) => plotOf(all, size));
}
