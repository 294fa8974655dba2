/**
 * Figure: what the load cell reads too much or too little under known loads, with the line through it and its doubt.
 *
 * @module
 */
import * as Plot from "@observablehq/plot";
import type { FigureRecord, TableRecord } from "../base/records.ts";
import { formatNumber, NO_BREAK_SPACE } from "../base/rounding.ts";
import type { Session } from "../base/session.ts";
import type { KnownLoad } from "../decide/tow-calibration.ts";
import { prepareTow } from "../decide/tow-readings.ts";
import { calibratedValue, type CalibrationLine } from "../fit/calibration-line.ts";
import { studentTQuantile } from "../numeric/distributions.ts";
import { INK, INK_SOFT, PAPER } from "./design-style.ts";
import { type DrawingSize, figureRecord } from "./drawing.ts";
import { extentOf, speedPlot } from "./speed-plot.ts";
import { numberCell, textCell } from "./table-cells.ts";
import { left, right } from "./table-columns.ts";

/** The line at one load. */
interface LinePoint {
  /** N */
  readonly load: number;
  /** N that the cell reads too much, by the line, and the ends of its 95 % interval. */
  readonly over: number;
  readonly low: number;
  readonly high: number;
}

/** The numbers drawn. */
export interface CalibrationDrawn {
  readonly line: CalibrationLine | null;
  readonly loads: readonly KnownLoad[];
  readonly curve: readonly LinePoint[];
  /** N: pulls that were measured, by the line; `null` without any. */
  readonly pulls: readonly [from: number, to: number] | null;
}

const STEPS = 40;

function curveOf(line: CalibrationLine, from: number, to: number): LinePoint[] {
  const t = studentTQuantile(0.975, line.degreesOfFreedom);
  return Array.from({ length: STEPS + 1 }, (_, i) => {
    const load = from + (to - from) * i / STEPS;
    const reading = line.centre + (load - line.valueAtCentre) / line.slope;
    const half = t * calibratedValue(line, reading).standardUncertainty / line.slope;
    const over = reading - load;
    return { load, over, low: over - half, high: over + half };
  });
}

/**
 * The numbers that the figure draws.
 *
 * @param session as read
 * @returns line, known loads, and the pulls that were measured with it
 */
export function calibrationDrawn(session: Session): CalibrationDrawn {
  const { calibration: { line, loads }, points } = prepareTow(session);
  const used = points.filter((one) => one.reason === null).map((one) => one.tension);
  const pulls = used.length === 0 ? null : extentOf(used, [0, 1]);
  const [from, to] = extentOf([
    0,
    ...loads.map((one) => one.applied),
    ...(line === null ? [] : pulls ?? []),
  ], [0, 1]);
  return { line, loads, curve: line === null ? [] : curveOf(line, from, to), pulls };
}

/** N off the line, in newtons of load. */
const offTheLine = (line: CalibrationLine, { reading, applied }: KnownLoad) =>
  calibratedValue(line, reading).value - applied;

function legend(size: DrawingSize): Plot.Markish[] {
  const ends = size.narrow ? [-104, -44] : [-112, -46];
  return ["before", "after"].flatMap((text, i) => [
    Plot.dot([i], {
      frameAnchor: "top-right",
      dx: ends[i]! - 8,
      dy: -22,
      r: 4,
      fill: i === 0 ? INK : PAPER,
      stroke: INK,
      strokeWidth: 1.5,
    }),
    Plot.text([text], {
      frameAnchor: "top-right",
      textAnchor: "start",
      lineAnchor: "middle",
      dx: ends[i]!,
      dy: -22,
      fill: INK,
    }),
  ]);
}

function plotOf({ loads, curve, pulls, line }: CalibrationDrawn, size: DrawingSize) {
  const marks = loads.map((one) => ({ x: one.applied, y: one.reading - one.applied, ...one }));
  const [least, most] = extentOf([
    0,
    ...marks.map((one) => one.y),
    ...curve.flatMap((one) => [one.low, one.high]),
  ], [0, 1]);
  const room = Math.max(0.2, 0.08 * (most - least));
  const look = { x: "x", y: "y", r: size.narrow ? 3.5 : 4, strokeWidth: 1.5, stroke: INK };
  const across = extentOf([...marks.map((one) => one.x), ...curve.map((one) => one.load)], [0, 1]);
  return speedPlot(size, {
    speeds: across,
    values: [least - room, most + room],
    across: "known load (N)",
    label: size.narrow ? "reads too much (N)" : "reading less known load (N)",
    ends: [],
    marks: [
      Plot.ruleY([0], { stroke: INK, strokeWidth: 1 }),
      ...(pulls === null || line === null ? [] : [
        Plot.ruleX(pulls, { stroke: INK_SOFT, strokeWidth: 1, strokeDasharray: "2 3" }),
        Plot.text(["pulls measured"], {
          x: (pulls[0] + pulls[1]) / 2,
          frameAnchor: "bottom",
          lineAnchor: "bottom",
          dy: -4,
          fill: INK_SOFT,
          stroke: PAPER,
          strokeWidth: 5,
        }),
      ]),
      Plot.areaY(curve, {
        x: "load",
        y1: "low",
        y2: "high",
        fill: INK,
        fillOpacity: 0.14,
      }),
      Plot.line(curve, { x: "load", y: "over", stroke: INK, strokeWidth: 2 }),
      Plot.dot(marks.filter((one) => one.when === "before"), { ...look, fill: INK }),
      Plot.dot(marks.filter((one) => one.when === "after"), { ...look, fill: PAPER }),
      ...legend(size),
    ],
  });
}

function numbersTable({ loads, line }: CalibrationDrawn, name: string): TableRecord {
  return {
    name: `${name}-loads`,
    caption:
      "Known loads on the cell, its readings off the zero, and how far each lies off the line.",
    columns: [
      left("when"),
      right("known load", "N"),
      right("reading off the zero", "N"),
      right("off the line", "N"),
    ],
    rows: loads.map((one) => [
      textCell(one.when),
      numberCell(one.applied, 2),
      numberCell(one.reading, 2),
      numberCell(line === null ? null : offTheLine(line, one), 2),
    ]),
  };
}

function captionOf({ line, loads, pulls }: CalibrationDrawn): string {
  if (line === null) {
    return "There is no calibration: known loads on the cell are missing or make no line, so its readings count as newtons.";
  }
  const percent = (1 / line.slope - 1) * 100;
  const u = 100 * line.slopeUncertainty / line.slope ** 2;
  const farthest = Math.max(...loads.map((one) => Math.abs(offTheLine(line, one))));
  const held = pulls !== null && pulls[0] >= Math.min(0, ...loads.map((one) => one.applied)) &&
    pulls[1] <= Math.max(...loads.map((one) => one.applied));
  const unit = `${NO_BREAK_SPACE}%`;
  return [
    `The cell reads ${formatNumber(Math.abs(percent), 2)}${unit} too ${
      percent < 0 ? "little" : "much"
    } (standard uncertainty ${formatNumber(u, 2)}${unit}), which every reading is corrected for. ` +
    `No known load lies more than ${formatNumber(farthest, 2)}${NO_BREAK_SPACE}N off the line.`,
    "The band is the line's 95\u00a0% interval. All readings share this doubt: more readings do not make it smaller, more known loads do.",
    pulls === null
      ? ""
      : held
      ? "The pulls measured lie among the known loads."
      : "Some pulls lie beyond the known loads: there the line is a guess.",
    loads.some((one) => one.when === "after")
      ? "Hollow marks were read after the session: if they stand off the full ones by more than those scatter, the cell changed."
      : "No load was hung on after the session, so that nobody can see whether the cell changed.",
  ].filter((one) => one !== "").join(" ");
}

/**
 * The load cell's calibration.
 *
 * @param session as read
 * @param name names the files; "calibration" unless said otherwise
 * @returns the figure, with the known loads as its table
 */
export function figureCalibration(session: Session, name = "calibration"): FigureRecord {
  const drawn = calibrationDrawn(session);
  const caption = captionOf(drawn);
  return figureRecord({
    name,
    title: "What the load cell reads too much",
    description: caption,
    caption,
    breakout: false,
    table: numbersTable(drawn, name),
  }, (size) => plotOf(drawn, size));
}
