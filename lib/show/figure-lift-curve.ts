/**
 * Figure: lift coefficient against pitch, with the line, its band and both errors of every reading.
 *
 * @module
 */
import * as Plot from "@observablehq/plot";
import { printable } from "../base/printable.ts";
import type { FigureRecord, TableRecord } from "../base/records.ts";
import type { TowLiftCurve, TowLiftPoint } from "../base/tow-views.ts";
import type { TowEvidence } from "../decide/compare-tows.ts";
import type { LiftCurveFacts } from "../decide/tow-lift-curve.ts";
import { designColour } from "./design-style.ts";
import { type DrawingSize, figureRecord } from "./drawing.ts";
import { runMarks } from "./interval-marks.ts";
import { bandMark, type BandPointDrawn, curveMark, extentOf, speedPlot } from "./speed-plot.ts";
import { designCell, numberCell, textCell } from "./table-cells.ts";
import { left, right } from "./table-columns.ts";
import { liftCurveSentence } from "./tow-sentence.ts";

const DEGREE = Math.PI / 180;

/** One design with a lift curve. */
interface Series {
  readonly design: string;
  readonly place: number;
  readonly curve: TowLiftCurve;
  /** By pitch in degrees. */
  readonly line: readonly BandPointDrawn[];
  /** The slope expected from the planform, through the middle of the line. */
  readonly expected: readonly BandPointDrawn[];
}

const STEPS = 40;

function lineOf(curve: TowLiftCurve, at: NonNullable<LiftCurveFacts["at"]>): BandPointDrawn[] {
  return Array.from({ length: STEPS + 1 }, (_, i) => {
    const pitch = curve.from + (curve.to - curve.from) * i / STEPS;
    const { value, low, high } = at(pitch);
    return { x: pitch / DEGREE, y: value, low, high };
  });
}

function seriesOf({ designs }: TowEvidence): Series[] {
  return designs.flatMap(({ answer, name, place, liftCurve }) => {
    const { liftCurve: curve } = answer;
    const at = liftCurve?.at ?? null;
    if (curve === null || at === null) return [];
    const line = lineOf(curve, at);
    const middle = line[STEPS / 2]!;
    const slope = curve.expectedSlope.value * DEGREE;
    const expected = [line[0]!, line.at(-1)!].map(({ x }) => {
      const y = middle.y + slope * (x - middle.x);
      return { x, y, low: y, high: y };
    });
    return [{ design: printable(name), place, curve, line, expected }];
  });
}

/** Bars of one standard uncertainty both ways. */
function errorBars(points: readonly TowLiftPoint[], place: number): Plot.Markish[] {
  const look = { stroke: designColour(place), strokeWidth: 1, strokeOpacity: 0.7 };
  const drawn = points.map((one) => ({
    x: one.pitch / DEGREE,
    y: one.liftCoefficient,
    x1: (one.pitch - one.pitchUncertainty) / DEGREE,
    x2: (one.pitch + one.pitchUncertainty) / DEGREE,
    y1: one.liftCoefficient - one.liftCoefficientUncertainty,
    y2: one.liftCoefficient + one.liftCoefficientUncertainty,
  }));
  return [
    Plot.ruleY(drawn, { y: "y", x1: "x1", x2: "x2", ...look }),
    Plot.ruleX(drawn, { x: "x", y1: "y1", y2: "y2", ...look }),
  ];
}

function plotOf(all: readonly Series[], size: DrawingSize) {
  const points = all.flatMap(({ curve, place }) =>
    curve.points.map((one) => ({ ...one, place, falls: curve.fallsOff?.rows.includes(one.row) }))
  );
  const across = extentOf(
    points.flatMap((one) => [
      (one.pitch - one.pitchUncertainty) / DEGREE,
      (one.pitch + one.pitchUncertainty) / DEGREE,
    ]),
    [0, 5],
  );
  const top = 1.06 * Math.max(
    0.5,
    ...points.map((one) => one.liftCoefficient + one.liftCoefficientUncertainty),
    ...all.flatMap((one) => one.line.map((each) => each.high)),
  );
  return speedPlot(size, {
    speeds: across,
    values: [0, top],
    across: size.narrow ? "pitch (degrees, bow up)" : "pitch of the board (degrees, bow up)",
    label: size.narrow ? "lift coefficient" : "lift coefficient of the whole craft",
    ends: all.map(({ design, place, line }) => ({ design, place, end: line.at(-1)!.y })),
    marks: [
      ...all.map(({ line, place }) => bandMark(line, place)),
      ...all.map(({ expected, place }) => curveMark(expected, place, "beyond")),
      ...all.map(({ line, place }) => curveMark(line, place)),
      ...all.flatMap(({ curve, place }) => errorBars(curve.points, place)),
      ...runMarks(
        points.map((one) => ({
          x: one.pitch / DEGREE,
          y: one.liftCoefficient,
          place: one.place,
          used: true,
          flagged: one.falls === true,
        })),
        size.narrow ? 3 : 3.5,
      ),
    ],
  });
}

function numbersTable(all: readonly Series[], name: string): TableRecord {
  return {
    name: `${name}-points`,
    caption: "Pitch and lift coefficient of each reading with their own standard uncertainties.",
    columns: [
      left("design"),
      left("reading"),
      right("pitch", "degrees"),
      right("±"),
      right("lift coefficient"),
      right("±"),
    ],
    rows: all.flatMap(({ design, place, curve }) =>
      curve.points.map((one) => [
        designCell(design, place),
        textCell(one.point),
        numberCell(one.pitch / DEGREE, 1),
        numberCell(one.pitchUncertainty / DEGREE, 1),
        numberCell(one.liftCoefficient, 3),
        numberCell(one.liftCoefficientUncertainty, 3),
      ])
    ),
  };
}

function captionOf(all: readonly Series[]): string {
  if (all.length === 0) {
    return "There is no lift curve: it needs the pitch at three or more speeds of a design.";
  }
  return [
    ...all.map(({ design, curve }) => liftCurveSentence(design, curve)),
    "Bars are each reading's own standard uncertainty both ways, the band each line's 95\u00a0% interval. Dotted: the slope " +
    "expected from the planform, through the middle of the line. Pitch counts from whatever the level lay on, so only the " +
    "slope says something of the wing.",
    all.some((one) => one.curve.fallsOff !== null)
      ? "Ringed readings lift less than the line of the others says: the wing may begin to stall there."
      : "",
  ].filter((one) => one !== "").join(" ");
}

/**
 * Lift coefficient against pitch.
 *
 * @param evidence whole
 * @param name names the files; "lift-curve" unless said otherwise
 * @returns the figure, with the points as its table
 */
export function figureLiftCurve(evidence: TowEvidence, name = "lift-curve"): FigureRecord {
  const all = seriesOf(evidence);
  const caption = captionOf(all);
  return figureRecord({
    name,
    title: "Lift coefficient against pitch by design",
    description: caption,
    caption,
    breakout: false,
    table: numbersTable(all, name),
  }, (size) => plotOf(all, size));
}
