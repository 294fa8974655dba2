/**
 * Figure: the polar. Drag coefficient against lift coefficient, with the law, its bands and every reading's ellipse.
 *
 * @module
 */
import * as Plot from "@observablehq/plot";
import type { FigureRecord, TableRecord } from "../base/records.ts";
import { listInWords } from "../base/sentence-words.ts";
import type { TowEvidence } from "../decide/compare-tows.ts";
import { designColour } from "./design-style.ts";
import { type DrawingSize, figureRecord } from "./drawing.ts";
import { runMarks } from "./interval-marks.ts";
import { bandMark, curveMark, extentOf, speedPlot } from "./speed-plot.ts";
import { designCell, numberCell } from "./table-cells.ts";
import { left, right, withEnds } from "./table-columns.ts";
import { type PolarPoint, type PolarReading, type TowPolar, towPolars } from "./tow-polar.ts";

const drawn = (points: readonly PolarPoint[]) =>
  points.map((one) => ({
    x: one.liftCoefficient,
    y: one.dragCoefficient,
    low: one.low,
    high: one.high,
  }));

/** Edges of the band of further readings. */
function readingEdges(points: readonly PolarPoint[], place: number): Plot.Markish[] {
  return (["readingLow", "readingHigh"] as const).map((edge) =>
    Plot.line(points, {
      x: "liftCoefficient",
      y: edge,
      stroke: designColour(place),
      strokeWidth: 0.75,
      strokeOpacity: 0.8,
      clip: true,
    })
  );
}

function ellipseMark(readings: readonly PolarReading[], place: number): Plot.Markish {
  const points = readings.flatMap(({ ellipse }, reading) =>
    ellipse.map(([x, y]) => ({ x, y, reading }))
  );
  return Plot.line(points, {
    x: "x",
    y: "y",
    z: "reading",
    stroke: designColour(place),
    strokeWidth: 1,
    strokeOpacity: 0.9,
    fill: designColour(place),
    fillOpacity: 0.05,
    clip: true,
  });
}

function plotOf(all: readonly TowPolar[], size: DrawingSize) {
  const readings = all.flatMap((one) =>
    one.readings.filter((reading) => reading.used || one.curve.length === 0)
  );
  const curves = all.flatMap((one) => [...one.curve, ...one.beyond.flat()]);
  const tips = readings.flatMap((one) => one.ellipse);
  const [low, high] = extentOf([
    ...curves.map((one) => one.liftCoefficient),
    ...readings.map((one) => one.liftCoefficient),
    ...tips.map(([x]) => x),
  ], [0.1, 0.6]);
  const [least, most] = extentOf([
    ...curves.map((one) => one.dragCoefficient),
    ...all.flatMap(({ curve }) => curve.flatMap((one) => [one.readingLow, one.readingHigh])),
    ...readings.map((one) => one.dragCoefficient),
    ...tips.map(([, y]) => y),
  ], [0.02, 0.06]);
  const [bottom, top] = [0.9 * Math.min(least, most), 1.03 * most];
  const frame = speedPlot(size, {
    speeds: [low, high],
    values: [bottom, top],
    label: size.narrow ? "drag coefficient" : "drag coefficient of the whole craft",
    across: "lift coefficient",
    ends: all.flatMap(({ design, place, curve, beyond, readings }) => {
      const end = beyond[1]?.at(-1) ?? curve.at(-1) ?? readings.at(-1);
      return end === undefined ? [] : [{ design, place, end: end.dragCoefficient }];
    }),
    marks: [
      ...all.map(({ curve, place }) => bandMark(drawn(curve), place)),
      ...all.flatMap(({ curve, place }) => readingEdges(curve, place)),
      ...all.map(({ readings, place }) => ellipseMark(readings, place)),
      ...all.flatMap(({ beyond, place }) =>
        beyond.map((piece) => curveMark(drawn(piece), place, "beyond"))
      ),
      ...all.map(({ curve, place }) => curveMark(drawn(curve), place)),
      ...runMarks(
        all.flatMap(({ readings, place }) =>
          readings.filter((one) =>
            one.dragCoefficient <= top && one.dragCoefficient >= bottom &&
            one.liftCoefficient <= high && one.liftCoefficient >= low
          )
            .map((one) => ({
              x: one.liftCoefficient,
              y: one.dragCoefficient,
              place,
              used: one.used,
              flagged: false,
            }))
        ),
        size.narrow ? 1.5 : 1.75,
      ),
    ],
  });
  // Coefficients have a digit more than speeds and forces.
  return { ...frame, marginLeft: size.narrow ? 42 : 50 };
}

function captionOf(all: readonly TowPolar[]): string {
  const laws = all.filter((one) => one.curve.length > 0);
  const without = all.filter((one) => one.curve.length === 0);
  const least = laws.map((one) => {
    const best = one.curve.reduce((a, b) =>
      b.dragCoefficient / b.liftCoefficient < a.dragCoefficient / a.liftCoefficient ? b : a
    );
    return `${one.design} ${best.liftCoefficient.toFixed(2)}`;
  });
  return [
    least.length === 0
      ? ""
      : `Lift coefficient of the best lift-to-drag among those towed: ${listInWords(least)}.`,
    laws.length === 0
      ? ""
      : "Each tilted ellipse is a reading with the 95\u00a0% region of its own " +
        "errors: lift and drag coefficient share a speed, so both are wrong together, along a ray from the origin. " +
        "The curve is the law fitted to the forces and not a line through these points. Filled: its 95\u00a0% interval. " +
        "Between the thin lines fall 95 of 100 further readings with the same instruments. Dotted: past the speeds " +
        "towed. An error of area or density would scale both axes for all readings, and is in none of these.",
    without.length === 0
      ? ""
      : `No curve is drawn for ${
        listInWords(without.map((one) => one.design))
      }: no law fits these readings.`,
    all.some((one) => one.readings.some((each) => !each.used))
      ? "Hollow marks count in no law."
      : "",
    all.every((one) => one.readings.length === 0) ? "There is no reading to draw." : "",
  ].filter((one) => one !== "").join(" ");
}

function numbersTable(all: readonly TowPolar[], name: string): TableRecord {
  return {
    name: `${name}-curves`,
    caption:
      "The polar of each design: its fitted law with its 95\u00a0% interval, and between which ends 95 of 100 further " +
      "readings fall.",
    columns: [
      left("design"),
      right("speed", "m/s"),
      right("lift coefficient"),
      ...withEnds("drag coefficient"),
      right("readings from"),
      right("to"),
    ],
    rows: all.flatMap(({ design, place, curve }) =>
      curve.map((one) => [
        designCell(design, place),
        numberCell(one.speed, 2),
        numberCell(one.liftCoefficient, 3),
        ...[one.dragCoefficient, one.low, one.high, one.readingLow, one.readingHigh]
          .map((value) => numberCell(value, 4)),
      ])
    ),
  };
}

/**
 * The polar of towed designs.
 *
 * @param evidence whole
 * @param name names the files; "polar" unless said otherwise
 * @returns the figure, with the curves as its table
 */
export function figurePolar(evidence: TowEvidence, name = "polar"): FigureRecord {
  const all = towPolars(evidence);
  const caption = captionOf(all);
  return figureRecord({
    name,
    title: "Drag coefficient against lift coefficient by design",
    description: caption,
    caption,
    breakout: false,
    table: numbersTable(all, name),
  }, (size) => plotOf(all, size));
}
