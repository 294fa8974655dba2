/**
 * Figure: difference of drag against speed, candidate less baseline, with a band that holds at all speeds at once.
 *
 * @module
 */
import * as Plot from "@observablehq/plot";
import { printable } from "../base/printable.ts";
import type { FigureRecord, TableRecord } from "../base/records.ts";
import { NO_BREAK_SPACE } from "../base/rounding.ts";
import { listInWords } from "../base/sentence-words.ts";
import type { TowEvidence } from "../decide/compare-tows.ts";
import type { BandPoint, SpeedStretch } from "../fit/tow-band.ts";
import { INK, PAPER } from "./design-style.ts";
import { cutToWidth, type DrawingSize, figureRecord } from "./drawing.ts";
import { bandMark, curveMark, extentOf, speedPlot } from "./speed-plot.ts";
import { designCell, numberCell } from "./table-cells.ts";
import { left, right, withEnds } from "./table-columns.ts";
import { namedComparison } from "./tow-entry-name.ts";
import { towHeadline } from "./tow-sentence.ts";

interface Difference {
  readonly design: string;
  readonly place: number;
  readonly points: readonly BandPoint[];
  readonly claims: readonly SpeedStretch[];
}

function differences(evidence: TowEvidence): Difference[] {
  return evidence.pairs.flatMap(({ answer, band }) => {
    const own = evidence.designs.find((one) => one.answer.design === answer.candidate);
    if (band === null || own === undefined) return [];
    return [{
      design: printable(namedComparison(evidence, answer).candidate),
      place: own.place,
      points: band.points,
      claims: [...band.candidateLess, ...band.candidateMore],
    }];
  });
}

const drawn = (points: readonly BandPoint[]) =>
  points.map(({ speed, difference, low, high }) => ({ x: speed, y: difference, low, high }));

function numbersTable(all: readonly Difference[], baseline: string, name: string): TableRecord {
  return {
    name: `${name}-curves`,
    caption: `Drag minus that of ${baseline}, with the 95\u00a0% band of the whole curve.`,
    columns: [left("design"), right("speed", "m/s"), ...withEnds("difference", "N")],
    rows: all.flatMap(({ design, place, points }) =>
      points.map(({ speed, difference, low, high }) => [
        designCell(design, place),
        numberCell(speed, 2),
        numberCell(difference, 2),
        numberCell(low, 2),
        numberCell(high, 2),
      ])
    ),
  };
}

function plotOf(all: readonly Difference[], baseline: string, size: DrawingSize) {
  const points = all.flatMap((one) => one.points);
  const [least, most] = extentOf([0, ...points.flatMap((one) => [one.low, one.high])], [0, 0]);
  // Room for the words on both sides of zero, even where the whole band lies on one.
  const span = Math.max(1, most - least);
  const values = [
    Math.min(least - 0.12 * span, -0.2 * span),
    Math.max(most, 0) + 0.2 * span,
  ] as const;
  const who = all.length === 1
    ? cutToWidth(all[0]!.design, size.narrow ? 110 : 240, size.fontSize)
    : null;
  const words = (text: string, side: "top" | "bottom") =>
    Plot.text([text], {
      frameAnchor: `${side}-left`,
      lineAnchor: side,
      textAnchor: "start",
      dx: 6,
      dy: side === "top" ? 4 : -5,
      fill: INK,
      stroke: PAPER,
      strokeWidth: 5,
    });
  return speedPlot(size, {
    speeds: extentOf(points.map((one) => one.speed), [3, 5]),
    values,
    label: size.narrow
      ? "difference (N)"
      : `drag minus that of ${cutToWidth(baseline, 240, size.fontSize)} (N)`,
    ends: all.map(({ design, place, points }) => ({
      design,
      place,
      end: points.at(-1)!.difference,
    })),
    marks: [
      ...all.map(({ points, place }) => bandMark(drawn(points), place)),
      Plot.ruleY([0], { stroke: INK, strokeWidth: 1.5 }),
      ...all.flatMap(({ points, place, claims }) =>
        claims.map(([from, to]) =>
          curveMark(
            drawn(points.filter(({ speed }) => speed >= from && speed <= to)),
            place,
            "claim",
          )
        )
      ),
      ...all.map(({ points, place }) => curveMark(drawn(points), place)),
      ...(all.length === 0 ? [] : [
        words(`↑ ${who === null ? "" : `${who} `}drags more`, "top"),
        words(`↓ ${who === null ? "" : `${who} `}drags less`, "bottom"),
      ]),
    ],
  });
}

function captionOf(evidence: TowEvidence, all: readonly Difference[]): string {
  const none = evidence.pairs.filter((one) => one.band === null)
    .map((one) => printable(namedComparison(evidence, one.answer).candidate));
  const claimed = all.some((one) => one.claims.length > 0);
  return [
    ...evidence.answer.comparisons.filter((one) => one.jointTest !== null)
      .map((one) => towHeadline(namedComparison(evidence, one))),
    all.length === 0
      ? ""
      : `The band holds the whole curve in about 95 of 100 sessions like this one${
        claimed ? "; the thick stretches, where it clears zero, are the claims" : ""
      }.`,
    none.length === 0
      ? ""
      : `No difference is drawn for ${listInWords(none)}: it can't be compared.`,
    evidence.pairs.length === 0 ? "There are no two designs to compare." : "",
  ].filter((one) => one !== "").join(" ");
}

/**
 * Difference of drag against speed. Errors that both designs share (one load cell, one log) have cancelled in it, so it tells
 * more than two curves side by side.
 *
 * @param evidence whole
 * @param name names the files; "drag-difference" unless said otherwise
 * @returns the figure, with the curves as its table
 */
export function figureDragDifference(
  evidence: TowEvidence,
  name = "drag-difference",
): FigureRecord {
  const all = differences(evidence);
  const baseline = printable(evidence.answer.comparisons[0]?.baseline ?? "the baseline");
  const caption = captionOf(evidence, all);
  const [first] = all;
  const over = first === undefined
    ? ""
    : ` from ${first.points[0]!.speed.toFixed(2)} to ${
      first.points.at(-1)!.speed.toFixed(2)
    }${NO_BREAK_SPACE}m/s`;
  return figureRecord({
    name,
    title: "Difference of drag against speed",
    description: `Drag of ${
      all.length === 0 ? "candidates" : listInWords(all.map((one) => one.design))
    } minus that of ${baseline}${over}. ${caption}`,
    caption,
    breakout: false,
    table: numbersTable(all, baseline, name),
  }, (size) => plotOf(all, baseline, size));
}
