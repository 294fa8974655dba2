/**
 * The polar of towed designs: drag coefficient against lift coefficient, as numbers to draw.
 *
 * @module
 */
import { printable } from "../base/printable.ts";
import type { TowEvidence } from "../decide/compare-tows.ts";
import type { DragSplit } from "../decide/drag-split.ts";
import type { TowedDesign } from "../decide/design-tow.ts";
import { towQuantity } from "../decide/tow-quantity.ts";
import { towDrag, towTermSlopes } from "../fit/tow-curve.ts";
import { dot } from "../fit/symmetric-three.ts";
import type { TowEstimate } from "../fit/tow-series.ts";
import { dragToLiftEstimate } from "../fit/tow-estimates.ts";
import { singleVariance } from "../fit/tow-variance.ts";
import type { TowFit } from "../fit/tow-fit.ts";
import { studentTQuantile } from "../numeric/distributions.ts";
import { ELLIPSE_95, ellipsePoints } from "../numeric/error-ellipse.ts";

/** The law at one lift coefficient. */
export interface PolarPoint {
  /** m/s of the full lift there. */
  readonly speed: number;
  readonly liftCoefficient: number;
  readonly dragCoefficient: number;
  /** Ends of the 95 % interval of the law, shared errors included; without those of area and density. */
  readonly low: number;
  readonly high: number;
  /** Between these fall 95 of 100 further readings with the same instruments. */
  readonly readingLow: number;
  readonly readingHigh: number;
}

/** A reading with its ellipse. */
export interface PolarReading {
  readonly point: string;
  readonly liftCoefficient: number;
  readonly dragCoefficient: number;
  readonly used: boolean;
  /** Around the 95 % ellipse of its independent errors; empty where it was not used. */
  readonly ellipse: readonly (readonly [liftCoefficient: number, dragCoefficient: number])[];
}

/** The numbers drawn for one design. */
export interface TowPolar {
  readonly design: string;
  readonly place: number;
  /** Over the speeds towed, fastest first; empty without a law. */
  readonly curve: readonly PolarPoint[];
  /** Past them: faster and slower. */
  readonly beyond: readonly (readonly PolarPoint[])[];
  readonly readings: readonly PolarReading[];
}

/** Steps of a curve over the speeds towed, and of each piece beyond. */
const STEPS = 60, STEPS_BEYOND = 10;

/** How far the law is drawn past the speeds towed, as a share of the speed, which is half that of the lift coefficient. */
const BEYOND = 0.05;

/** Variance of a further reading about the law, on the logarithm of the drag: like the reading nearest in speed. */
function readingVariance(fit: TowFit, speed: number): number {
  const drag = towDrag(fit, speed);
  const nearest = fit.data.readings.reduce((one, other) =>
    Math.abs(other.speed - speed) < Math.abs(one.speed - speed) ? other : one
  );
  const { angle, uncertainty: { speed: uSpeed, tension: uTension, angle: uAngle } } = nearest;
  const pull = drag / Math.cos(angle);
  const slope = dot(towTermSlopes(fit, speed), fit.parameters);
  const across = (Math.cos(angle) * Math.hypot(uTension.fixed, uTension.share * pull)) ** 2 +
    (pull * Math.sin(angle) * uAngle) ** 2 +
    (slope * Math.hypot(uSpeed.fixed, uSpeed.share * speed)) ** 2;
  return fit.scatterScale * across / drag ** 2;
}

/** Half the logarithm's width of where a further reading falls: what all readings share moves it along with the law. */
function readingReach(fit: TowFit, estimate: TowEstimate, speed: number): number {
  const variance = estimate.dataVariance + estimate.planformVariance + estimate.sweepVariance +
    readingVariance(fit, speed);
  return studentTQuantile(0.975, fit.degreesOfFreedom) * Math.sqrt(variance);
}

function polarOf(split: DragSplit, from: number, to: number, steps: number): PolarPoint[] {
  const { series, spec: { area }, medium: { density } } = split;
  const { lift } = series.fit.data.craft;
  return Array.from({ length: steps + 1 }, (_, i) => from + (to - from) * i / steps)
    .flatMap((speed) => {
      const liftCoefficient = 2 * lift / (density * area * speed ** 2);
      const estimate = dragToLiftEstimate(series, { liftCoefficient, density, area });
      if (estimate === null) return [];
      const { value, low, high } = towQuantity(singleVariance(estimate), "1");
      const reach = Math.exp(readingReach(series.fit, estimate, speed));
      return [{
        speed,
        liftCoefficient,
        dragCoefficient: liftCoefficient * value,
        low: liftCoefficient * low!,
        high: liftCoefficient * high!,
        readingLow: liftCoefficient * value / reach,
        readingHigh: liftCoefficient * value * reach,
      }];
    });
}

function designPolar({ answer, name, place, range, split }: TowedDesign): TowPolar {
  const drawn = range === null || split === null ? null : { split, ...range };
  return {
    design: printable(name),
    place,
    curve: drawn === null ? [] : polarOf(drawn.split, drawn.to, drawn.from, STEPS),
    beyond: drawn === null ? [] : [
      polarOf(drawn.split, drawn.to * (1 + BEYOND), drawn.to, STEPS_BEYOND),
      polarOf(drawn.split, drawn.from, drawn.from * (1 - BEYOND), STEPS_BEYOND),
    ],
    readings: answer.points.flatMap((one): PolarReading[] => {
      const { liftCoefficient, dragCoefficient, coefficientCovariance, used } = one;
      if (liftCoefficient === null || dragCoefficient === null) return [];
      return [{
        point: printable(one.point),
        liftCoefficient,
        dragCoefficient,
        used,
        ellipse: used && coefficientCovariance !== null
          ? ellipsePoints([liftCoefficient, dragCoefficient], coefficientCovariance, {
            scale: ELLIPSE_95,
          })
          : [],
      }];
    }),
  };
}

/**
 * The numbers that the polar draws.
 *
 * Coefficients follow from the fitted forces, never the other way round: the curve is the law in force, told in coefficients,
 * and not a line through these points, whose shared speed would fake one.
 *
 * @param evidence of a comparison
 * @returns one entry a design
 */
export function towPolars({ designs }: TowEvidence): TowPolar[] {
  return designs.map(designPolar);
}
