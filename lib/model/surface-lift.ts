/**
 * What the surface takes off the lift slope: it costs incidence, not lift.
 *
 * @module
 */

/**
 * Lift of a section under the surface over its lift in unbounded water, at the same incidence, fast.
 *
 * The image of the same sign above slows the stream and bends it down. It is the limit of high speed: at V/sqrt(g c) of 10 it is 3 %
 * too high still; slow, the surface acts as a wall and lift gains instead.
 *
 * Source: one vortex at a quarter of the chord, its image, the flow tangent at three quarters: `(1 + 16 H^2)/(2 + 16 H^2)`, H depth
 * over chord (derived; common in texts on hydrofoils).
 *
 * @param depthOverChord 1
 * @returns 1
 * @throws RangeError when the depth is not above zero
 *
 * @example
 * ```ts
 * import { sectionLiftFactor } from "lakeproof/model/surface-lift.ts";
 * if (Math.abs(sectionLiftFactor(1) - 0.94444) > 5e-6) throw new Error("derived value");
 * ```
 */
export function sectionLiftFactor(depthOverChord: number): number {
  if (!(depthOverChord > 0)) {
    throw new RangeError(
      `Cannot give a lift factor as the depth must be above zero: ${depthOverChord} chords`,
    );
  }
  if (depthOverChord === Infinity) return 1;
  const squared = 16 * depthOverChord * depthOverChord;
  return (1 + squared) / (2 + squared);
}

/** A wing that carries a lift coefficient. */
export interface LiftingWing {
  /** 1 */
  readonly liftCoefficient: number;
  /** m */
  readonly span: number;
  /** m2 */
  readonly area: number;
  /** m; `Infinity` for no surface. */
  readonly depth: number;
  /** Free-surface factor of the induced drag at this speed, 1. */
  readonly phi: number;
  /** Span efficiency, 1. */
  readonly spanEfficiency: number;
}

/**
 * Incidence from zero lift that a wing needs for its lift coefficient.
 *
 * Section slope 2 pi, lowered by the surface; downwash by phi, which holds the surface at any speed. For the section the fast limit
 * stands as a bound: at takeoff depths it is half a per cent.
 *
 * Source: lifting line, `alpha = C_L (1/(2 pi f) + phi/(pi AR e))`, f from {@link sectionLiftFactor}.
 *
 * @param wing lift coefficient, planform, depth, phi
 * @returns rad
 *
 * @example
 * ```ts
 * import { incidenceFromZeroLift } from "lakeproof/model/surface-lift.ts";
 * const wing = { liftCoefficient: 0.5, span: 1, area: 0.15, depth: Infinity, phi: 1, spanEfficiency: 1 };
 * const slope = 0.5 / incidenceFromZeroLift(wing);
 * // Elliptic wing: 2 pi/(1 + 2/AR).
 * if (Math.abs(slope - 2 * Math.PI / (1 + 2 * 0.15)) > 1e-12) throw new Error(`${slope}`);
 * ```
 */
export function incidenceFromZeroLift(wing: LiftingWing): number {
  const { liftCoefficient, span, area, depth, phi, spanEfficiency } = wing;
  const factor = sectionLiftFactor(depth * span / area);
  const aspect = span * span / area;
  return liftCoefficient *
    (1 / (2 * Math.PI * factor) + phi / (Math.PI * aspect * spanEfficiency));
}
