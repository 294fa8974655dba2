/**
 * Lift against pitch: a straight line through points that are uncertain in both.
 *
 * Source: York and others 2004, American Journal of Physics 72, 367 (the line and its covariance).
 *
 * @module
 */
import type { Result } from "../base/quantity.ts";
import { lineWithErrors } from "../infer/line-with-errors.ts";
import { meanOf } from "../infer/sample.ts";
import { studentTUpperTail } from "../numeric/distributions.ts";

/** One reading with its own errors; what all readings share is carried apart. */
export interface LiftPoint {
  /** rad, bow up, from whatever the level was laid on. */
  readonly pitch: number;
  readonly pitchUncertainty: number;
  readonly liftCoefficient: number;
  readonly liftCoefficientUncertainty: number;
  /** Readings of one group are repeats. */
  readonly group: string;
}

/** A fitted line, counted from its middle, where slope and level are independent. */
export interface LiftLine {
  /** 1/rad */
  readonly slope: number;
  /** rad: mean pitch, weighted. */
  readonly centre: number;
  /** Lift coefficient there. */
  readonly level: number;
  /** Variances of slope and level by scatter, k in them. */
  readonly slopeVariance: number;
  readonly levelVariance: number;
  /** k: variance found over variance stated, not under 1. */
  readonly scatterScale: number;
  readonly degreesOfFreedom: number;
  /** rad where the line meets no lift. */
  readonly zeroLiftPitch: number;
}

/** Pitches that a line needs at least, how many times their own uncertainty they must spread, and the slope its own. */
const LEAST = { pitches: 3, spread: 2, slope: 2 } as const;

/**
 * Lift line by York's equations.
 *
 * Least squares of lift on pitch would take the pitch as exact and find too flat a line: half a degree of doubt where pitches
 * spread by two takes 6 % of the slope. The two errors of a point are independent: a wrong speed enters the lift
 * coefficient alone, and a level on the deck knows nothing of speed.
 *
 * @param points with their own errors
 * @returns the line, or why there is none
 *
 * @example
 * ```ts
 * import { liftLine } from "lakeproof/fit/lift-curve.ts";
 * const points = [0.02, 0.06, 0.1].map((pitch, i) => ({
 *   pitch, pitchUncertainty: 0.005, liftCoefficient: 4.2 * (pitch + 0.03), liftCoefficientUncertainty: 0.01, group: `${i}`,
 * }));
 * const line = liftLine(points);
 * if (!line.ok || Math.abs(line.slope - 4.2) > 1e-9 || Math.abs(line.zeroLiftPitch + 0.03) > 1e-9) throw new Error("line");
 * ```
 */
export function liftLine(points: readonly LiftPoint[]): Result<LiftLine> {
  const why = tooLittle(points);
  if (why !== null) return { ok: false, reason: why };
  const line = lineWithErrors(points.map((one) => ({
    x: one.pitch,
    y: one.liftCoefficient,
    xUncertainty: one.pitchUncertainty,
    yUncertainty: one.liftCoefficientUncertainty,
  })));
  if (!line.ok) return line;
  const { slope, intercept, slopeUncertainty, interceptUncertainty, degreesOfFreedom } = line;
  const k = Math.max(1, line.weightedSquares / degreesOfFreedom);
  if (!(Math.abs(slope) > LEAST.slope * Math.sqrt(k) * slopeUncertainty)) {
    return { ok: false, reason: "its lift does not change with pitch by more than its scatter" };
  }
  const centre = -line.covariance / slopeUncertainty ** 2;
  return {
    ok: true,
    slope,
    centre,
    level: intercept + slope * centre,
    slopeVariance: k * slopeUncertainty ** 2,
    levelVariance: k * (interceptUncertainty ** 2 - (centre * slopeUncertainty) ** 2),
    scatterScale: k,
    degreesOfFreedom,
    zeroLiftPitch: -intercept / slope,
  };
}

function tooLittle(points: readonly LiftPoint[]): string | null {
  const different = new Set(points.map((one) => one.pitch)).size;
  if (different < LEAST.pitches) {
    return `a lift curve needs ${LEAST.pitches} different pitches; there are ${different}`;
  }
  const mean = meanOf(points.map((one) => one.pitch));
  const spread = Math.sqrt(
    points.reduce((sum, one) => sum + (one.pitch - mean) ** 2, 0) / (points.length - 1),
  );
  const doubt = Math.sqrt(meanOf(points.map((one) => one.pitchUncertainty ** 2)));
  const degrees = (angle: number) => (angle * 180 / Math.PI).toFixed(1);
  return spread < LEAST.spread * doubt
    ? `its pitches spread by ${degrees(spread)} degrees, hardly more than the ${
      degrees(doubt)
    } degrees that one of them may be off`
    : null;
}

/** The points of greatest pitch against the line of the others. */
export interface LiftFallsOff {
  /** How much their mean lift coefficient lacks. */
  readonly deficit: number;
  /** One-sided: how often they would lack so much by chance. */
  readonly pValue: number;
  /** Places among the points. */
  readonly places: readonly number[];
}

/**
 * Whether the points of greatest pitch lift less than the line of the others says, as a wing does that begins to stall.
 *
 * @param points of one design
 * @returns deficit and p-value, or `null` where the others make no line, with four points or more
 */
export function liftFallsOff(points: readonly LiftPoint[]): LiftFallsOff | null {
  const groups = new Map<string, number[]>();
  points.forEach(({ group }, i) => groups.set(group, [...(groups.get(group) ?? []), i]));
  const pitchOf = (places: readonly number[]) => meanOf(places.map((i) => points[i]!.pitch));
  const places = [...groups.values()].sort((one, other) => pitchOf(other) - pitchOf(one))[0] ?? [];
  const others = points.filter((_, i) => !places.includes(i));
  if (others.length < 4) return null;
  const line = liftLine(others);
  if (!line.ok) return null;
  const far = pitchOf(places) - line.centre;
  const deficit = line.level + line.slope * far -
    meanOf(places.map((i) => points[i]!.liftCoefficient));
  const own = places.reduce((sum, i) => {
    const { pitchUncertainty: x, liftCoefficientUncertainty: y } = points[i]!;
    return sum + (y ** 2 + (line.slope * x) ** 2) * line.scatterScale;
  }, 0) / places.length ** 2;
  const variance = own + line.levelVariance + far ** 2 * line.slopeVariance;
  return {
    deficit,
    pValue: studentTUpperTail(deficit / Math.sqrt(variance), line.degreesOfFreedom),
    places,
  };
}
