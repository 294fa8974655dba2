/**
 * Predicted tow force and power by speed, design by design: the numbers that the figures of a takeoff draw.
 *
 * @module
 */
import { printable } from "../base/printable.ts";
import type { Quantity } from "../base/quantity.ts";
import type { TableRecord } from "../base/records.ts";
import type { TakeoffEvidence } from "../decide/estimate-takeoff.ts";
import { NORMAL_95 } from "../fit/takeoff-band.ts";
import type { BandPointDrawn } from "./speed-plot.ts";
import { designCell, numberCell } from "./table-cells.ts";
import { left, right, withEnds } from "./table-columns.ts";

/** What is drawn over speed. */
export type TakeoffCurveKind = "tension" | "power";

/** One design's curve. */
export interface TakeoffCurve {
  readonly design: string;
  readonly place: number;
  /** From stall speed on, running depth. */
  readonly points: readonly BandPointDrawn[];
  readonly takeoffSpeed: Quantity;
  /** N or W at takeoff depth; the interval of the power is that of the force. */
  readonly atTakeoff: {
    readonly value: number;
    readonly low: number | null;
    readonly high: number | null;
  };
}

/**
 * Curves of the designs that fly.
 *
 * @param evidence whole
 * @param kind tow force or power
 * @returns one a design, with its 95 % band
 */
export function takeoffCurves(evidence: TakeoffEvidence, kind: TakeoffCurveKind): TakeoffCurve[] {
  return evidence.designs.flatMap(({ answer, prepared: { place }, band }) => {
    const { takeoffSpeed, towForceAtTakeoff: force } = answer;
    const [there] = answer.partsAt;
    if (band === null || takeoffSpeed === null || force === null || there === undefined) return [];
    const { curve, logUncertainty } = band;
    const points = [...curve.speed].map((x, i) => {
      const y = curve[kind][i]!;
      const factor = Math.exp(NORMAL_95 * logUncertainty[i]!);
      return { x, y, low: y / factor, high: y * factor };
    });
    const share = kind === "tension" ? 1 : there.power / there.tension;
    const scaled = (one: number | null) => one === null ? null : one * share;
    return [{
      design: printable(answer.design),
      place,
      points,
      takeoffSpeed,
      atTakeoff: { value: force.value * share, low: scaled(force.low), high: scaled(force.high) },
    }];
  });
}

/**
 * The curves as a table.
 *
 * @param curves of the designs
 * @param of name of the table, what is told, its unit
 * @returns one row a design and speed
 */
export function takeoffCurvesTable(
  curves: readonly TakeoffCurve[],
  of: { readonly name: string; readonly label: string; readonly unit: string },
): TableRecord {
  return {
    name: `${of.name}-curves`,
    caption: `Predicted ${of.label} by speed at running depth, with its 95\u00a0% band.`,
    columns: [left("design"), right("speed", "m/s"), ...withEnds(of.label, of.unit)],
    rows: curves.flatMap(({ design, place, points }) =>
      points.map(({ x, y, low, high }) => [
        designCell(design, place),
        numberCell(x, 2),
        numberCell(y, 1),
        numberCell(low, 1),
        numberCell(high, 1),
      ])
    ),
  };
}
