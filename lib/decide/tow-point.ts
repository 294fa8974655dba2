/**
 * One reading as a point to draw: forces, coefficients, and how their errors hang together.
 *
 * @module
 */
import type { Design } from "../base/session.ts";
import type { TowPointUse } from "../base/tow-answer.ts";
import { standardUncertaintyOf } from "../check/column-uncertainty.ts";
import { weightInWater } from "../model/buoyancy.ts";
import { effectiveMass } from "../model/effective-mass.ts";
import { USUAL_THICKNESS_RATIO, wetVolumeOf } from "./glide-craft.ts";
import type { PreparedPoint, PreparedTow } from "./tow-readings.ts";

/**
 * Forces and coefficients of a reading.
 *
 * Coefficients follow from the forces, never the other way round. Lift and drag coefficient share a speed, so their errors
 * move together along a ray from the origin: drawn as two bars they would hide it.
 *
 * @param prepared its session
 * @param spec its design
 * @param one the reading
 * @param residual N off the law, where it was used for one
 * @returns the point; without forces where the reading has none
 */
export function towPoint(
  prepared: PreparedTow,
  spec: Design,
  one: PreparedPoint,
  residual: number | null,
): TowPointUse {
  const { point, reason } = one;
  const use = {
    point: point.point,
    row: point.row,
    used: residual !== null,
    window: one.window,
    reason: reason ?? (residual === null ? "no law from these readings" : null),
  };
  const wing = spec.span > 0 && spec.area > 0 && (spec.wetVolume ?? 0) >= 0;
  if (!(one.speed > 0 && one.tension > 0 && one.mass > 0 && wing)) {
    return {
      ...use,
      speed: point.speed,
      drag: null,
      lift: null,
      liftCoefficient: null,
      dragCoefficient: null,
      coefficientCovariance: null,
      residual,
    };
  }
  const { columns, medium: { density, gravity } } = prepared;
  const { speed, tension, angle, mass } = one;
  const moving = effectiveMass({
    mass,
    density,
    span: spec.span,
    area: spec.area,
    thicknessRatio: spec.thicknessRatio ?? USUAL_THICKNESS_RATIO,
  });
  const drag = tension * Math.cos(angle) - moving * (point.speedChange ?? 0);
  const lift = weightInWater({ mass, wetVolume: wetVolumeOf(spec), density, gravity }) -
    tension * Math.sin(angle);
  const pressure = density / 2 * speed ** 2 * spec.area;
  const u = (column: "speed" | "line_tension" | "line_angle", value: number) =>
    standardUncertaintyOf(columns[column], value, point.own[column] ?? null);
  const uSpeed = u("speed", speed) / speed;
  const uTension = u("line_tension", tension);
  const uAngle = u("line_angle", angle);
  // Rows: lift, drag; by tension and by angle, N.
  const [sin, cos] = [Math.sin(angle), Math.cos(angle)];
  const byTension = [-sin * uTension, cos * uTension];
  const byAngle = [-tension * cos * uAngle, -tension * sin * uAngle];
  const coefficients = [lift / pressure, drag / pressure];
  const covariance = [0, 1].map((i) =>
    [0, 1].map((j) =>
      (byTension[i]! * byTension[j]! + byAngle[i]! * byAngle[j]!) / pressure ** 2 +
      4 * uSpeed ** 2 * coefficients[i]! * coefficients[j]!
    )
  );
  return {
    ...use,
    speed,
    drag,
    lift,
    liftCoefficient: coefficients[0]!,
    dragCoefficient: coefficients[1]!,
    coefficientCovariance: covariance,
    residual,
  };
}
