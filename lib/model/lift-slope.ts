/**
 * How steeply a straight wing's lift should grow with its incidence, from its planform and the surface above it.
 *
 * @module
 */

/** A straight wing under a surface. */
export interface WingUnderSurface {
  /** Span squared over area, 1. */
  readonly aspectRatio: number;
  /** Depth over mean chord, 1; `Infinity` for no surface. */
  readonly depthOverChord: number;
  /** Factor of the surface on drag due to lift at this speed, as `ellipticLinePhi` gives it; 1 for no surface. */
  readonly phi: number;
  /** Lift coefficient of the section by its incidence, 1/rad; {@link SECTION_SLOPE} unless known. */
  readonly sectionSlope?: number;
}

/** 1/rad: a tenth a degree, as textbooks have it for good sections; thin-section theory says 2 pi. From memory. */
export const SECTION_SLOPE = 0.1 * 180 / Math.PI;

/**
 * Incidence that a wing needs for a lift coefficient of 1, counted from where it lifts nothing; its inverse is the slope of
 * the lift curve.
 *
 * Three things take lift from a section: the flow that its own wake turns down, by `1/(pi AR)` in unbounded water and phi
 * times as much under a surface (the surface's waves and image count in lift as they count in drag, drag due to lift being lift
 * times that angle); the short span of a real surface of finite chord, by the root; and a surface so near that the image of
 * the section slows its flow. The last is the limit of fast running; slow wings under waves are not in it. Straight wings
 * without much sweep; fuselage and stabiliser, which lift too, are not in it either.
 *
 * Source: Helmbold 1942, `1/slope = sqrt(1/a^2 + 1/(pi AR)^2) + 1/(pi AR)` for unbounded water (Anderson, Fundamentals of
 * Aerodynamics, section on the numerical lifting line); section under a surface `a (1 + 16 n^2)/(2 + 16 n^2)`, n = depth over
 * chord, Hough and Moran, Journal of Ship Research 13 (1969); all from memory.
 *
 * @param wing aspect ratio, depth, phi
 * @returns rad a unit of lift coefficient
 * @throws RangeError when a number is not above zero
 *
 * @example A wing of aspect ratio 6, 0.4 m deep on 0.15 m of chord: 4 a radian, 0.07 a degree
 * ```ts
 * import { incidencePerLift } from "lakeproof/model/lift-slope.ts";
 * const slope = 1 / incidencePerLift({ aspectRatio: 6, depthOverChord: 2.7, phi: 1.15 });
 * if (Math.abs(slope - 4.1) > 0.1) throw new Error(`${slope}`);
 * ```
 */
export function incidencePerLift(wing: WingUnderSurface): number {
  const { aspectRatio, depthOverChord, phi, sectionSlope = SECTION_SLOPE } = wing;
  for (const [name, value] of Object.entries({ aspectRatio, depthOverChord, phi, sectionSlope })) {
    if (!(value > 0)) {
      throw new RangeError(`Cannot give a lift slope as ${name} must be above zero: ${value}`);
    }
  }
  const near = 16 * depthOverChord ** 2;
  const section = sectionSlope * (near === Infinity ? 1 : (1 + near) / (2 + near));
  const turned = 1 / (Math.PI * aspectRatio);
  return Math.hypot(1 / section, turned) + phi * turned;
}
