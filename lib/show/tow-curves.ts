/**
 * Towed readings and fitted drag by speed, design by design.
 *
 * @module
 */
import { printable } from "../base/printable.ts";
import type { TowPointUse } from "../base/tow-answer.ts";
import type { TowEvidence } from "../decide/compare-tows.ts";
import type { TowedDesign } from "../decide/design-tow.ts";
import { towQuantity } from "../decide/tow-quantity.ts";
import { dot } from "../fit/symmetric-three.ts";
import { towDrag, towTerms } from "../fit/tow-curve.ts";
import type { TowFit } from "../fit/tow-fit.ts";
import type { TowSeries } from "../fit/tow-series.ts";
import { dragEstimate } from "../fit/tow-estimates.ts";
import { singleVariance } from "../fit/tow-variance.ts";

/** The law at one speed. */
export interface TowCurvePoint {
  /** m/s */
  readonly speed: number;
  /** N at the full lift. */
  readonly drag: number;
  /** N, ends of the 95 % interval at this speed alone, shared errors included. */
  readonly low: number;
  readonly high: number;
}

/** A reading as a point. */
export interface TowMark {
  readonly point: string;
  /** In tow.csv. */
  readonly row: number;
  /** m/s as read. */
  readonly speed: number;
  /** N: moved to the full lift where there is a law, else as towed. */
  readonly drag: number;
  readonly used: boolean;
  readonly flagged: boolean;
}

/** The numbers drawn for one design. */
export interface TowCurves {
  readonly design: string;
  readonly place: number;
  /** N that drag is told at; `null` without a law. */
  readonly lift: number | null;
  /** Over the speeds towed; empty without a law. */
  readonly curve: readonly TowCurvePoint[];
  /** The law past the speeds towed, where it leans on the planform: slower and faster. */
  readonly beyond: readonly (readonly TowCurvePoint[])[];
  readonly marks: readonly TowMark[];
}

/** Steps of a curve over the speeds towed, and of each piece beyond. */
const STEPS = 60, STEPS_BEYOND = 10;

/** How far the law is drawn past the speeds towed, as a share of the speed. */
const BEYOND = 0.1;

function curveOf(series: TowSeries, from: number, to: number, steps: number): TowCurvePoint[] {
  return Array.from({ length: steps + 1 }, (_, i) => from + (to - from) * i / steps)
    .flatMap((speed) => {
      const estimate = dragEstimate(series, speed);
      if (estimate === null) return [];
      const { value, low, high } = towQuantity(singleVariance(estimate), "N");
      return [{ speed, drag: value, low: low!, high: high! }];
    });
}

/**
 * A reading's drag had the wing carried the full lift: the law's own difference between that and the lift under the line.
 */
function atFullLift(fit: TowFit, speed: number, drag: number, lift: number): number {
  const share = lift / fit.data.craft.lift;
  const [a, d, e] = towTerms(fit, speed);
  return drag + towDrag(fit, speed) - dot([a, d * share, e * share ** 2], fit.parameters);
}

function markOf(fit: TowFit | null, one: TowPointUse, flagged: boolean): TowMark[] {
  const { speed, drag, lift, used } = one;
  if (speed === null || drag === null || lift === null) return [];
  const moved = fit === null ? drag : atFullLift(fit, speed, drag, lift);
  return [{ point: printable(one.point), row: one.row, speed, drag: moved, used, flagged }];
}

function curvesOf({ answer, name, place, series, range }: TowedDesign, odd: ReadonlySet<number>) {
  const fit = series?.fit ?? null;
  const drawn = series === null || range === null ? null : { series, ...range };
  return {
    design: printable(name),
    place,
    lift: fit?.data.craft.lift ?? null,
    curve: drawn === null ? [] : curveOf(series!, drawn.from, drawn.to, STEPS),
    beyond: drawn === null ? [] : [
      curveOf(series!, drawn.from * (1 - BEYOND), drawn.from, STEPS_BEYOND),
      curveOf(series!, drawn.to, drawn.to * (1 + BEYOND), STEPS_BEYOND),
    ],
    marks: answer.points.flatMap((one) => markOf(fit, one, odd.has(one.row))),
  };
}

/** Findings that point at a reading which counts but stands out. */
const ODD = ["stands-out", "slowest-drag-more"];

/**
 * The numbers that the figures of a tow draw.
 *
 * Each reading is moved to the full lift, since the line carries a part of it: only then does it belong to the curve.
 *
 * @param evidence of a comparison
 * @returns one entry a design; speeds in m/s, drags in N
 */
export function towCurves(evidence: TowEvidence): TowCurves[] {
  const odd = oddRows(evidence);
  return evidence.designs.map((one) => curvesOf(one, odd));
}

/**
 * Rows of tow.csv that count but stand out.
 *
 * @param evidence of a comparison
 * @returns their numbers
 */
export function oddRows({ answer }: TowEvidence): ReadonlySet<number> {
  return new Set(
    answer.findings.filter((one) => ODD.includes(one.code) && one.row !== null)
      .map((one) => one.row!),
  );
}

/**
 * The marks that a vertical axis must hold: those that count, and all of a design without a law. A reading that was left
 * out may be anything and must not squeeze the rest.
 *
 * @param one a design's numbers
 * @returns some of its marks
 */
export function marksInScale(one: TowCurves): readonly TowMark[] {
  return one.curve.length === 0 ? one.marks : one.marks.filter((mark) => mark.used);
}
