/**
 * Figure: how far each towed reading lies off its design's law, against speed, with the scatter that is to be expected.
 *
 * @module
 */
import * as Plot from "@observablehq/plot";
import { printable } from "../base/printable.ts";
import type { FigureRecord, TableRecord } from "../base/records.ts";
import { NO_BREAK_SPACE } from "../base/rounding.ts";
import { listInWords } from "../base/sentence-words.ts";
import type { TowEvidence } from "../decide/compare-tows.ts";
import { INK } from "./design-style.ts";
import { type DrawingSize, figureRecord } from "./drawing.ts";
import { runMarks } from "./interval-marks.ts";
import { bandMark, extentOf, speedPlot } from "./speed-plot.ts";
import { designCell, numberCell, textCell } from "./table-cells.ts";
import { left, right } from "./table-columns.ts";
import { oddRows } from "./tow-curves.ts";

/** A reading off the law. */
export interface TowResidual {
  readonly point: string;
  readonly row: number;
  /** m/s as read. */
  readonly speed: number;
  /** N above the law. */
  readonly residual: number;
  /** N, standard: by what was stated for the reading, widened where all scatter more than stated. */
  readonly expected: number;
  readonly flagged: boolean;
}

/** One design's residuals, slowest first. */
export interface TowResiduals {
  readonly design: string;
  readonly place: number;
  /** How many times as much as stated the readings scatter; 1 where no more. */
  readonly wider: number;
  readonly points: readonly TowResidual[];
}

/** Standard uncertainties that the band reaches: 95 of 100 readings lie within. */
const REACH = 2;

/**
 * The numbers that the figure draws.
 *
 * @param evidence of a comparison
 * @returns one entry a design with a law
 */
export function towResiduals(evidence: TowEvidence): TowResiduals[] {
  const odd = oddRows(evidence);
  return evidence.designs.flatMap(({ answer, name, place, series }) => {
    if (series === null) return [];
    const { fit } = series;
    const used = answer.points.filter((one) => one.used && one.speed !== null);
    const points = used.map((one, i): TowResidual => ({
      point: printable(one.point),
      row: one.row,
      speed: one.speed!,
      residual: fit.residuals[i]!,
      expected: Math.sqrt(fit.scatterScale / fit.weights[i]!),
      flagged: odd.has(one.row),
    })).sort((one, other) => one.speed - other.speed);
    return [{
      design: printable(name),
      place,
      wider: Math.sqrt(fit.scatterScale),
      points,
    }];
  });
}

const outsideOf = ({ points }: TowResiduals) =>
  points.filter((one) => Math.abs(one.residual) > REACH * one.expected).length;

function plotOf(all: readonly TowResiduals[], size: DrawingSize) {
  const points = all.flatMap((one) => one.points.map((each) => ({ ...each, place: one.place })));
  const most = 1.1 * Math.max(
    0.5,
    ...points.flatMap((one) => [Math.abs(one.residual), REACH * one.expected]),
  );
  return speedPlot(size, {
    speeds: extentOf(points.map((one) => one.speed), [3, 5]),
    values: [-most, most],
    label: size.narrow ? "off the law (N)" : "drag above the law (N)",
    ends: all.map(({ design, place, points }) => ({
      design,
      place,
      end: REACH * (points.at(-1)?.expected ?? 0),
    })),
    marks: [
      ...all.map(({ points, place }) =>
        bandMark(
          points.map(({ speed, expected }) => ({
            x: speed,
            y: 0,
            low: -REACH * expected,
            high: REACH * expected,
          })),
          place,
        )
      ),
      Plot.ruleY([0], { stroke: INK, strokeWidth: 1.5 }),
      ...runMarks(
        points.map((one) => ({ ...one, x: one.speed, y: one.residual, used: true })),
        size.narrow ? 3.5 : 4,
      ),
    ],
  });
}

function numbersTable(all: readonly TowResiduals[], name: string): TableRecord {
  return {
    name: `${name}-points`,
    caption: "How far each reading lies off the law, and the standard scatter to be expected.",
    columns: [
      left("design"),
      left("reading"),
      right("speed", "m/s"),
      right("off the law", "N"),
      right("expected", "N"),
    ],
    rows: all.flatMap(({ design, place, points }) =>
      points.map((one) => [
        designCell(design, place),
        textCell(one.point),
        numberCell(one.speed, 2),
        numberCell(one.residual, 2),
        numberCell(one.expected, 2),
      ])
    ),
  };
}

function captionOf(all: readonly TowResiduals[]): string {
  if (all.length === 0) return "No law fits these readings, so there is nothing that they lie off.";
  const counts = all.map((one) =>
    `${outsideOf(one) || "none"} of the ${one.points.length} of ${one.design}`
  );
  const wide = all.filter((one) => one.wider > 1.05);
  const total = all.reduce((sum, one) => sum + outsideOf(one), 0);
  return [
    `Outside the shaded scatter ${total === 1 ? "lies" : "lie"} ${
      listInWords(counts)
    }; one reading in twenty may. Look for a bend: marks of one design above the line at both ends and below it in the ` +
    "middle would say that the law has the wrong shape.",
    wide.length === 0
      ? ""
      : `The shading is wider than stated, since the readings scatter more: ${
        listInWords(
          wide.map((one) => `${one.wider.toFixed(1)}${NO_BREAK_SPACE}times for ${one.design}`),
        )
      }.`,
    all.some((one) => one.points.some((each) => each.flagged))
      ? "Ringed readings stand out but count."
      : "",
  ].filter((one) => one !== "").join(" ");
}

/**
 * Residuals of the tow fits against speed.
 *
 * @param evidence whole
 * @param name names the files; "tow-residuals" unless said otherwise
 * @returns the figure, with the residuals as its table
 */
export function figureTowResiduals(evidence: TowEvidence, name = "tow-residuals"): FigureRecord {
  const all = towResiduals(evidence);
  const caption = captionOf(all);
  return figureRecord({
    name,
    title: "How far readings lie off their law",
    description: caption,
    caption,
    breakout: false,
    table: numbersTable(all, name),
  }, (size) => plotOf(all, size));
}
