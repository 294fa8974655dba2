/**
 * The lift curve of a towed design: lift coefficient against pitch, and whether it goes with the planform.
 *
 * @module
 */
import type { Finding } from "../base/finding.ts";
import type { Quantity } from "../base/quantity.ts";
import type { Design } from "../base/session.ts";
import type { TowLiftCurve } from "../base/tow-views.ts";
import { columnUncertainty, standardUncertaintyOf } from "../check/column-uncertainty.ts";
import { liftFallsOff, type LiftLine, liftLine, type LiftPoint } from "../fit/lift-curve.ts";
import { type TowData, towedLift } from "../fit/tow-data.ts";
import { meanOf } from "../infer/sample.ts";
import { incidencePerLift } from "../model/lift-slope.ts";
import { studentTQuantile } from "../numeric/distributions.ts";
import type { PreparedDesignTow } from "./tow-errors.ts";
import { fallsOffFinding, liftSlopeFinding, noLiftCurve } from "./tow-lift-findings.ts";
import { towPoint } from "./tow-point.ts";
import type { PreparedPoint, PreparedTow } from "./tow-readings.ts";

/** A lift curve with what a figure of it needs. */
export interface LiftCurveFacts {
  /** `null` where there is none to tell. */
  readonly answer: TowLiftCurve | null;
  /** Lift coefficient with its 95 % interval at a pitch in rad. */
  readonly at: ((pitch: number) => { value: number; low: number; high: number }) | null;
  readonly findings: readonly Finding[];
}

/** Standard uncertainty of the expected slope, as a share: section 5 %, formula and surface 5 %, other parts that lift 7 %. Assumed. */
const EXPECTED = 0.1;

/** rad by which a level and a deck disagree where nobody states it. Common practice, no source. */
const USUAL_LEVEL = 0.5 * Math.PI / 180;

/** One-sided, of the points of greatest pitch. */
const FALLS_OFF = 0.01;

/**
 * Lift curve of one design from those of its readings that have a pitch.
 *
 * Lift is that of the whole craft under the line's pull, on the wing's area; pitch is whatever the level lay on, so that the
 * pitch of no lift holds camber and how the wing sits on its mast, and no more than the slope can be compared with a wing's.
 *
 * @param prepared its session
 * @param spec the design
 * @param used its readings, in the order of `ready`
 * @param ready its readings with their shared errors
 * @returns curve and findings; no finding at all where no pitch was measured
 */
export function towLiftCurve(
  prepared: PreparedTow,
  spec: Design,
  used: readonly PreparedPoint[],
  ready: PreparedDesignTow,
): LiftCurveFacts {
  const column = columnUncertainty(prepared.session.instruments, "pitch");
  const places = used.flatMap((one, i) => one.point.pitch === null ? [] : [i]);
  if (places.length === 0) return { answer: null, at: null, findings: [] };
  const points = places.map((i) => {
    const one = used[i]!;
    const pitch = one.point.pitch!;
    const { liftCoefficient, coefficientCovariance } = towPoint(prepared, spec, one, null);
    return {
      point: one.point.point,
      row: one.point.row,
      pitch,
      pitchUncertainty: standardUncertaintyOf(column, pitch, one.point.own.pitch ?? null),
      liftCoefficient: liftCoefficient!,
      liftCoefficientUncertainty: Math.sqrt(coefficientCovariance![0]![0]!),
      group: one.group,
    };
  });
  const wing = { aspectRatio: spec.span ** 2 / spec.area, depth: ready.prior.depth };
  const { phi } = ready.data.craft;
  const phis = places.map((i) => phi(used[i]!.speed));
  const perLift = phis.map((one) =>
    incidencePerLift({
      aspectRatio: wing.aspectRatio,
      depthOverChord: wing.depth * spec.span / spec.area,
      phi: one,
    })
  );
  const expected = slopeThrough(points.map((one, i) => [
    one.liftCoefficient * perLift[i]!,
    one.liftCoefficient,
  ]));
  const line = liftLine(points);
  if (!line.ok) {
    return {
      answer: null,
      at: null,
      findings: [noLiftCurve(spec.design, line.reason, points, expected)],
    };
  }
  // What all readings share: the same points with it taken off at plus and at minus one standard uncertainty.
  const shifted = (data: TowData): LiftLine | null => {
    const moved = liftLine(points.map((one, n) => {
      const reading = data.readings[places[n]!]!;
      const pressure = prepared.medium.density / 2 * reading.speed ** 2 * spec.area;
      return { ...one, liftCoefficient: towedLift(reading) / pressure };
    }));
    return moved.ok ? moved : null;
  };
  const changes = ready.errors.flatMap(({ shifted: [plus, minus] }) => {
    const [up, down] = [shifted(plus), shifted(minus)];
    return up === null || down === null ? [] : [{
      slope: (up.slope - down.slope) / 2,
      level: (levelAt(up, line.centre) - levelAt(down, line.centre)) / 2,
    }];
  });
  const share = Math.hypot(
    ...column.common.filter((one) => one.relative).map((one) => one.uncertainty),
  );
  const fixed = column.common.filter((one) => !one.relative).map((one) => one.uncertainty);
  changes.push({ slope: line.slope * share, level: 0 });
  const quantity = quantities(line, changes);
  const at = (pitch: number) => quantity.level(pitch);
  const level = fixed.length > 0 ? Math.hypot(...fixed) : USUAL_LEVEL;
  const slope = quantity.slope;
  const mean = meanOf(phis);
  const fall = liftFallsOff(points.map((one, i): LiftPoint => ({
    ...one,
    // Slow points turn the flow down more under the surface's waves: that is no stall.
    pitch: one.pitch - one.liftCoefficient * (phis[i]! - mean) / (Math.PI * wing.aspectRatio),
  })));
  const falls = fall !== null && fall.pValue < FALLS_OFF ? fall : null;
  const pitches = points.map((one) => one.pitch);
  const expectedSlope = known(expected, expected * EXPECTED, null, "1/rad");
  const answer: TowLiftCurve = {
    slope,
    slopePerDegree: perDegree(slope),
    zeroLiftPitch: quantity.zeroLift(level),
    expectedSlope,
    from: Math.min(...pitches),
    to: Math.max(...pitches),
    fallsOff: falls === null ? null : {
      rows: falls.places.map((i) => points[i]!.row),
      deficit: falls.deficit,
      pValue: falls.pValue,
    },
    points: points.map(({ group: _, ...one }) => one),
  };
  const disagreement = liftSlopeFinding(spec.design, answer);
  return {
    answer,
    at,
    findings: [
      ...(disagreement === null ? [] : [disagreement]),
      ...(falls === null || disagreement !== null
        ? []
        : [fallsOffFinding(spec.design, points[falls.places[0]!]!.row, falls.deficit)]),
    ],
  };
}

const levelAt = (line: LiftLine, pitch: number) => line.level + line.slope * (pitch - line.centre);

/** Least squares of y on x, both without errors. */
function slopeThrough(points: readonly (readonly [x: number, y: number])[]): number {
  const [x, y] = [meanOf(points.map((one) => one[0])), meanOf(points.map((one) => one[1]))];
  const squares = points.reduce((sum, one) => sum + (one[0] - x) ** 2, 0);
  return squares === 0
    ? points[0]![1] / points[0]![0]
    : points.reduce((sum, one) => sum + (one[0] - x) * (one[1] - y), 0) / squares;
}

function known(value: number, u: number, freedom: number | null, unit: string): Quantity {
  const half = studentTQuantile(0.975, freedom ?? Infinity) * u;
  return {
    value,
    standardUncertainty: u,
    degreesOfFreedom: freedom,
    low: value - half,
    high: value + half,
    level: 0.95,
    kind: "interval",
    unit,
  };
}

function perDegree(slope: Quantity): Quantity {
  const factor = Math.PI / 180;
  return {
    ...slope,
    value: slope.value * factor,
    standardUncertainty: slope.standardUncertainty! * factor,
    low: slope.low! * factor,
    high: slope.high! * factor,
    unit: "1/deg",
  };
}

/** Own scatter with its degrees of freedom and shared errors without limit, by Welch and Satterthwaite (GUM G.2b). */
function quantities(
  line: LiftLine,
  changes: readonly { readonly slope: number; readonly level: number }[],
) {
  const quantity = (
    value: number,
    { own, shared, unit }: { own: number; shared: number; unit: string },
  ) => {
    const variance = own + shared;
    const freedom = shared === 0 ? line.degreesOfFreedom : line.degreesOfFreedom *
      (variance / own) ** 2;
    return known(value, Math.sqrt(variance), freedom < 1e5 ? freedom : null, unit);
  };
  const squares = (of: (one: { slope: number; level: number }) => number) =>
    changes.reduce((sum, one) => sum + of(one) ** 2, 0);
  return {
    slope: quantity(line.slope, {
      own: line.slopeVariance,
      shared: squares((one) => one.slope),
      unit: "1/rad",
    }),
    level(pitch: number) {
      const far = pitch - line.centre;
      const { value, low, high } = quantity(levelAt(line, pitch), {
        own: line.levelVariance + far ** 2 * line.slopeVariance,
        shared: squares((one) => one.level + far * one.slope),
        unit: "1",
      });
      return { value, low: low!, high: high! };
    },
    zeroLift(level: number) {
      const far = line.zeroLiftPitch - line.centre;
      return quantity(line.zeroLiftPitch, {
        own: (line.levelVariance + far ** 2 * line.slopeVariance) / line.slope ** 2,
        shared: squares((one) => (one.level + far * one.slope) / line.slope) + level ** 2,
        unit: "rad",
      });
    },
  };
}
