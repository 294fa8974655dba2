/**
 * Figure: distance of each candidate over the baseline's from the same launch, with its interval, and every run moved to
 * that launch below it.
 *
 * @module
 */
import * as Plot from "@observablehq/plot";
import type { FigureRecord, TableRecord } from "../base/records.ts";
import { formatInterval, formatQuantity, NO_BREAK_SPACE } from "../base/rounding.ts";
import { printable } from "../base/printable.ts";
import type { DesignEvidence, GlideEvidence } from "../decide/glide-evidence.ts";
import { placeOf } from "./design-place.ts";
import { INK, PAPER } from "./design-style.ts";
import { cutToWidth, type DrawingSize, figureRecord } from "./drawing.ts";
import { intervalBars, meanMarks, runMarks, sideWords } from "./interval-marks.ts";
import { ratioAxis, ratioAxisMarks, ratioScale } from "./ratio-axis.ts";
import { joinedHeadline } from "./joined-headline.ts";
import { rowFrame } from "./row-frame.ts";
import { designCell, intervalCells } from "./table-cells.ts";
import { left, withEnds } from "./table-columns.ts";

/** A run moved to the common launch. */
export interface MovedRun {
  readonly run: string;
  /** Over the baseline's distance. */
  readonly ratio: number;
  readonly flagged: boolean;
}

/** One candidate's interval and the runs behind it, all as multiples of the baseline's distance. */
export interface RatioGroup {
  readonly candidate: string;
  readonly place: number;
  readonly baselinePlace: number;
  readonly value: number;
  readonly low: number | null;
  readonly high: number | null;
  /** Runs of the candidate, moved to the common launch. */
  readonly runs: readonly MovedRun[];
  /** Runs of the baseline, moved likewise. */
  readonly baselineRuns: readonly MovedRun[];
}

function movedRuns(design: DesignEvidence | undefined, baseline: number): MovedRun[] {
  return (design?.runs ?? []).flatMap(({ run, used, flag, movedDistance }) =>
    !used || movedDistance === null || !(movedDistance > 0)
      ? []
      : [{ run: printable(run), ratio: movedDistance / baseline, flagged: flag !== null }]
  );
}

/**
 * The numbers that the figure draws.
 *
 * @param evidence of a comparison
 * @returns one entry a candidate; all are ratios over the baseline's distance
 */
export function ratioGroups(evidence: GlideEvidence): RatioGroup[] {
  return evidence.answer.comparisons.flatMap((one) => {
    const find = (name: string) => evidence.designs.find((each) => each.design === name);
    const [base, other] = [find(one.baseline), find(one.candidate)];
    if (one.ratio === null || base === undefined) return [];
    const distance = Math.exp(base.logDistance);
    return [{
      candidate: printable(one.candidate),
      place: placeOf(evidence, one.candidate),
      baselinePlace: base.place,
      value: one.ratio.value,
      low: one.ratio.low,
      high: one.ratio.high,
      runs: movedRuns(other, distance),
      baselineRuns: movedRuns(base, distance),
    }];
  });
}

/** Runs lie on four lines by their index, so that equal ones do not hide each other. */
const SPREAD = [0, 12, 6, 18];

function plotOf(groups: readonly RatioGroup[], baseline: string, size: DrawingSize) {
  const { narrow, fontSize, width } = size;
  const groupHeight = 104;
  const margins = { top: 32, bottom: 46, left: narrow ? 12 : 16, right: 16 };
  const inner = Math.max(1, groups.length) * groupHeight - 8;
  const units = width - margins.left - margins.right;
  const all = groups.flatMap((one) => [
    one.value,
    ...[one.low, one.high].filter((end) => end !== null),
    ...[...one.runs, ...one.baselineRuns].map((run) => run.ratio),
  ]);
  const axis = ratioAxis(all, units, narrow ? 34 : 40);
  const within = (ratio: number) => Math.min(axis.high, Math.max(axis.low, ratio));
  const words = { fill: INK, stroke: PAPER, strokeWidth: 5 };
  const onlyName = groups.length === 1 ? groups[0]!.candidate : "candidate";
  return {
    ...rowFrame(size, inner, margins),
    x: ratioScale(axis),
    marks: [
      ...ratioAxisMarks(
        axis,
        narrow ? "times as far" : "times the baseline's distance, same launch",
      ),
      ...sideWords([baseline, onlyName], units, fontSize).map((word) =>
        Plot.text([word.text], { ...word.options, y: [0], dy: -16 })
      ),
      ...groups.flatMap((group, at) => {
        const top = at * groupHeight + 26;
        const { place } = group;
        const interval = group.low === null || group.high === null
          ? []
          : [{ low: within(group.low), high: within(group.high), y: top, place }];
        const points = (runs: RatioGroup["runs"], y: number, place: number) =>
          runs.map((run, index) => ({
            x: within(run.ratio),
            y: y + SPREAD[index % SPREAD.length]!,
            place,
            used: true,
            flagged: run.flagged,
          }));
        return [
          ...intervalBars(interval),
          ...runMarks(points(group.runs, top + 20, place), narrow ? 4 : 4.5),
          ...runMarks(points(group.baselineRuns, top + 48, group.baselinePlace), narrow ? 4 : 4.5),
          ...meanMarks([{ x: within(group.value), y: top, place }]),
          Plot.text([cutToWidth(group.candidate, narrow ? 90 : 160, fontSize)], {
            x: [within(group.value)],
            y: [top],
            dy: -17,
            ...words,
          }),
        ];
      }),
    ],
  };
}

function numbersTable(evidence: GlideEvidence, name: string): TableRecord {
  return {
    name: `${name}-numbers`,
    caption: "Distance over the baseline's from the same launch, with its 95\u00a0% interval.",
    columns: [
      left("design"),
      ...withEnds("ratio"),
    ],
    rows: evidence.answer.comparisons.map((one) => [
      designCell(one.candidate, placeOf(evidence, one.candidate)),
      ...intervalCells(one.ratio, 1),
    ]),
  };
}

/**
 * Ratios of distance from the same launch.
 *
 * @param evidence whole
 * @param name names the files; "ratios" unless said otherwise
 * @returns the figure, with ratios and intervals as its table
 */
export function figureRatios(evidence: GlideEvidence, name = "ratios"): FigureRecord {
  const groups = ratioGroups(evidence);
  const { comparisons } = evidence.answer;
  const baseline = printable(comparisons[0]?.baseline ?? "baseline");
  const numbers = comparisons.flatMap((one) =>
    one.ratio === null ? [] : [
      `${printable(one.candidate)} covers ${
        formatQuantity(one.ratio, { apartFrom: 1 })
      } times the ` +
      `distance of ${baseline} (${formatInterval(one.ratio, { apartFrom: 1 })}).`,
    ]
  );
  return figureRecord({
    name,
    title: "Ratio of distance from the same launch",
    description: `With 95${NO_BREAK_SPACE}% intervals: ${numbers.join(" ")}`,
    caption: `${joinedHeadline(comparisons)} An interval that reaches over the line at 1 ` +
      "can't tell. Below each interval lie the candidate's runs and then the baseline's, all " +
      "moved to the same launch.",
    breakout: false,
    table: numbersTable(evidence, name),
  }, (size) => plotOf(groups, baseline, size));
}
