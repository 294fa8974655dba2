/**
 * Wave drag of an endless vortex under the surface: a limit to check against, not a model of a wing.
 *
 * @module
 */

/** A straight vortex moved sideways under the surface. */
export interface SubmergedVortex {
  /** m2/s */
  readonly circulation: number;
  /** m */
  readonly depth: number;
  /** m/s */
  readonly speed: number;
  /** kg/m3 */
  readonly density: number;
  /** m/s2 */
  readonly gravity: number;
}

/**
 * Wave drag a metre of span of a two-dimensional vortex at depth h: `rho g Gamma^2/V^2 exp(-2 g h/V^2)`.
 *
 * Holds for spans far beyond the wave length `2 pi V^2/g`, 16 m at 5 m/s: never true for a hydrofoil, whose wave drag it makes too large.
 *
 * Source: Lamb, Hydrodynamics, sixth edition, article 247 (number from memory): waves of amplitude
 * `2 Gamma/V exp(-g h/V^2)`, drag a quarter of `rho g` times their square.
 *
 * @param vortex circulation in m2/s, depth in m, speed in m/s, density in kg/m3, gravity in m/s2
 * @returns N/m
 * @throws RangeError when depth, speed, density or gravity is not above zero
 *
 * @example
 * ```ts
 * import { vortexWaveDrag } from "lakeproof/model/vortex-wave-drag.ts";
 * const drag = vortexWaveDrag({ circulation: 1, depth: 0.5, speed: 5, density: 1025, gravity: 9.80665 });
 * if (Math.abs(drag - 271.609886) > 1e-6) throw new Error(`${drag}`);
 * ```
 */
export function vortexWaveDrag(vortex: SubmergedVortex): number {
  const { circulation, depth, speed, density, gravity } = vortex;
  if (!(depth > 0 && speed > 0 && density > 0 && gravity > 0 && Number.isFinite(circulation))) {
    throw new RangeError(
      `Cannot give wave drag as depth, speed, density and gravity must be above zero: ${
        JSON.stringify(vortex)
      }`,
    );
  }
  const ratio = circulation / speed;
  return density * gravity * ratio * ratio * Math.exp(-2 * gravity * depth / (speed * speed));
}
