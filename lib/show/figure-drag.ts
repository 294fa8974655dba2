/**
 * Figure: drag against speed. Each design's fitted law with its band, and every reading.
 *
 * @module
 */
import type { FigureRecord, TableRecord } from "../base/records.ts";
import { formatNumber, NO_BREAK_SPACE } from "../base/rounding.ts";
import { listInWords } from "../base/sentence-words.ts";
import type { TowEvidence } from "../decide/compare-tows.ts";
import { type DrawingSize, figureRecord } from "./drawing.ts";
import { runMarks } from "./interval-marks.ts";
import { bandMark, curveMark, extentOf, speedPlot } from "./speed-plot.ts";
import { designCell, numberCell } from "./table-cells.ts";
import { left, right, withEnds } from "./table-columns.ts";
import { marksInScale, type TowCurvePoint, type TowCurves, towCurves } from "./tow-curves.ts";

const drawn = (points: readonly TowCurvePoint[]) =>
  points.map(({ speed, drag, low, high }) => ({ x: speed, y: drag, low, high }));

function numbersTable(series: readonly TowCurves[], name: string): TableRecord {
  return {
    name: `${name}-curves`,
    caption: "Drag by speed, each design's fitted law with its 95\u00a0% band.",
    columns: [left("design"), right("speed", "m/s"), ...withEnds("drag", "N")],
    rows: series.flatMap(({ design, place, curve }) =>
      curve.map(({ speed, drag, low, high }) => [
        designCell(design, place),
        numberCell(speed, 2),
        numberCell(drag, 1),
        numberCell(low, 1),
        numberCell(high, 1),
      ])
    ),
  };
}

function topOf(series: readonly TowCurves[]): number {
  return 1.06 *
    Math.max(
      1,
      ...series.flatMap((one) => [
        ...one.curve.map((point) => point.high),
        ...one.beyond.flat().map((point) => point.drag),
        ...marksInScale(one).map((mark) => mark.drag),
      ]),
    );
}

function plotOf(series: readonly TowCurves[], size: DrawingSize) {
  const all = series.flatMap((one) => [...one.curve, ...one.beyond.flat(), ...one.marks]);
  const top = topOf(series);
  return speedPlot(size, {
    speeds: extentOf(all.map((one) => one.speed), [3, 5]),
    values: [0, top],
    label: size.narrow ? "drag (N)" : "drag of the whole craft (N)",
    ends: series.flatMap(({ design, place, curve, beyond, marks }) => {
      const end = beyond[1]?.at(-1) ?? curve.at(-1) ?? marks.at(-1);
      return end === undefined ? [] : [{ design, place, end: end.drag }];
    }),
    marks: [
      ...series.map(({ curve, place }) => bandMark(drawn(curve), place)),
      ...series.flatMap(({ beyond, place }) =>
        beyond.map((piece) => curveMark(drawn(piece), place, "beyond"))
      ),
      ...series.map(({ curve, place }) => curveMark(drawn(curve), place)),
      ...runMarks(
        series.flatMap(({ marks, place }) =>
          marks.filter((one) => one.drag <= top)
            .map((one) => ({ ...one, place, x: one.speed, y: one.drag }))
        ),
        size.narrow ? 3.5 : 4,
      ),
    ],
  });
}

/** Where the drag is least: the best speed, or the edge of the speeds towed that lies nearest to it. */
function leastOf({ curve, lift, place }: TowCurves, { designs }: TowEvidence) {
  const { bestLiftToDrag: best, speedOfBestLiftToDrag: speed } =
    designs.find((one) => one.place === place)!.answer;
  return lift !== null && best?.kind === "interval" && speed !== null
    ? { speed: speed.value, drag: lift / best.value }
    : curve.reduce((a, b) => b.drag < a.drag ? b : a);
}

function captionOf(series: readonly TowCurves[], evidence: TowEvidence): string {
  const laws = series.filter((one) => one.curve.length > 0);
  const without = series.filter((one) => one.curve.length === 0);
  const marks = series.flatMap((one) => one.marks);
  const top = topOf(series);
  const above = marks.filter((one) => one.drag > top).length;
  const lowest = laws.map((one) => {
    const { speed, drag } = leastOf(one, evidence);
    return `${one.design} ${formatNumber(drag, 1)}${NO_BREAK_SPACE}N at ${
      formatNumber(speed, 2)
    }${NO_BREAK_SPACE}m/s`;
  });
  return [
    lowest.length === 0 ? "" : `Least drag among the speeds towed: ${listInWords(lowest)}.`,
    marks.length === 0 ? "There is no reading to draw." : "",
    laws.length === 0
      ? ""
      : "Each mark is one reading, moved to the full lift as the line carries a " +
        "part of it; the band is each curve's 95\u00a0% interval speed by speed, with what all readings share. Dotted, " +
        "without a band, past the speeds towed: there the law leans on the planform.",
    laws.length > 1
      ? "Bands may overlap where the designs do differ, since both share the errors of one load cell: the difference has a figure of its own."
      : "",
    without.length === 0
      ? ""
      : `No curve is drawn for ${
        listInWords(without.map((one) => one.design))
      }: no law fits these ` +
        "readings, and the marks, as towed, compare with nothing.",
    marks.some((one) => !one.used)
      ? "Hollow marks count in no law, each for the reason in the table of readings."
      : "",
    above === 0
      ? ""
      : `${above} of them ${above === 1 ? "lies" : "lie"} above the top of the drawing.`,
    marks.some((one) => one.used && one.flagged) ? "Ringed readings stand out but count." : "",
  ].filter((one) => one !== "").join(" ");
}

/**
 * Drag against speed.
 *
 * @param evidence whole
 * @param name names the files; "drag" unless said otherwise
 * @returns the figure, with the curves as its table
 */
export function figureDrag(evidence: TowEvidence, name = "drag"): FigureRecord {
  const series = towCurves(evidence);
  const caption = captionOf(series, evidence);
  const count = series.reduce((sum, one) => sum + one.marks.length, 0);
  const names = series.length === 0 ? "" : ` of ${listInWords(series.map((one) => one.design))}`;
  return figureRecord({
    name,
    title: "Drag against speed by design",
    description: `${count} towed readings${names}. ${caption}`,
    caption,
    breakout: false,
    table: numbersTable(series, name),
  }, (size) => plotOf(series, size));
}
