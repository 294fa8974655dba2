/**
 * Skin friction of a flat plate, smooth or rough, and of a foil section.
 *
 * @module
 */

/** Where a hand-finished foil's flow turns turbulent, at best knowledge: one standard uncertainty is a factor of 1.65. */
export const TRANSITION_REYNOLDS = 2e5;

function requireReynolds(reynolds: number): void {
  if (!(reynolds > 0 && reynolds < Infinity)) {
    throw new RangeError(
      `Cannot give friction as the Reynolds number must be above zero: ${reynolds}`,
    );
  }
}

/**
 * Friction coefficient of a laminar plate, on one side's area.
 *
 * Source: Blasius 1908; `4 f''(0)/sqrt(Re)` with f''(0) = 0.33205734, hence 1.328229.
 *
 * @param reynolds on the plate's length, 1
 * @returns 1
 * @throws RangeError when the Reynolds number is not above zero
 *
 * @example
 * ```ts
 * import { laminarFriction } from "lakeproof/model/friction-line.ts";
 * if (Math.abs(laminarFriction(1e6) - 1.328229e-3) > 1e-12) throw new Error("Blasius");
 * ```
 */
export function laminarFriction(reynolds: number): number {
  requireReynolds(reynolds);
  return 1.328229 / Math.sqrt(reynolds);
}

/**
 * Friction coefficient of a plate turbulent from its leading edge, on one side's area.
 *
 * Source: Prandtl-Schlichting, `0.455/(log10 Re)^2.58` (Schlichting, Boundary-Layer Theory). The ship correlation line of
 * 1957 holds form drag already: it is 16 % higher at 1e5, 7 % at 5e5, 5 % at 1e6.
 *
 * @param reynolds on the plate's length, 1e4 to 1e9, 1
 * @returns 1
 * @throws RangeError below 1e4 or above 1e9, where the line means nothing
 *
 * @example
 * ```ts
 * import { turbulentFriction } from "lakeproof/model/friction-line.ts";
 * if (Math.abs(turbulentFriction(1e6) - 4.4708e-3) > 5e-8) throw new Error("printed value");
 * ```
 */
export function turbulentFriction(reynolds: number): number {
  requireReynolds(reynolds);
  if (!(reynolds >= 1e4 && reynolds <= 1e9)) {
    throw new RangeError(
      `Cannot give turbulent friction as the Reynolds number must be 1e4 to 1e9: ${reynolds}`,
    );
  }
  return 0.455 / Math.log10(reynolds) ** 2.58;
}

/**
 * Friction coefficient of the ship correlation line, to compare with: it holds form drag already, so a form factor on top counts form twice.
 *
 * Source: ITTC 1957, `0.075/(log10 Re - 2)^2`.
 *
 * @param reynolds on the length, 1e4 to 1e10, 1
 * @returns 1
 * @throws RangeError outside 1e4 to 1e10
 *
 * @example
 * ```ts
 * import { shipCorrelationFriction } from "lakeproof/model/friction-line.ts";
 * if (Math.abs(shipCorrelationFriction(1e7) - 0.003) > 1e-12) throw new Error("printed value");
 * ```
 */
export function shipCorrelationFriction(reynolds: number): number {
  requireReynolds(reynolds);
  if (!(reynolds >= 1e4 && reynolds <= 1e10)) {
    throw new RangeError(
      `Cannot give friction of the ship line as the Reynolds number must be 1e4 to 1e10: ${reynolds}`,
    );
  }
  return 0.075 / (Math.log10(reynolds) - 2) ** 2;
}

/** Shortest plate that the rough line knows, in grains. */
const LEAST_GRAINS = 100;

/**
 * Friction coefficient of a rough plate, turbulent from its leading edge and rough enough that viscosity no longer counts, on one
 * side's area.
 *
 * Source: Prandtl and Schlichting, in Schlichting, Boundary-Layer Theory: `(1.89 + 1.62 log10(L/ks))^-2.5` for L/ks of 1e2 to 1e6 (from
 * memory).
 *
 * @param lengthOverGrain plate's length over the height of the sand grains that do the same, 1
 * @returns 1
 * @throws RangeError below 100 grains, where the line means nothing
 *
 * @example
 * ```ts
 * import { roughFriction } from "lakeproof/model/friction-line.ts";
 * if (Math.abs(roughFriction(1e4) - 0.004934) > 5e-7) throw new Error(`${roughFriction(1e4)}`);
 * ```
 */
export function roughFriction(lengthOverGrain: number): number {
  if (!(lengthOverGrain >= LEAST_GRAINS)) {
    throw new RangeError(
      `Cannot give friction of a rough plate as its length must be 100 grains or more: ${lengthOverGrain}`,
    );
  }
  return (1.89 + 1.62 * Math.log10(lengthOverGrain)) ** -2.5;
}

/**
 * Friction coefficient of a plate that is laminar up to a transition Reynolds number and turbulent behind, on one side's area.
 *
 * The turbulent line with the difference of the laminar run taken off, so that it is continuous at transition (the often printed
 * `-1700/Re` belongs to 5.27e5, not to 5e5). Below about 2e5 all laminar is optimistic: bubbles.
 *
 * With grains, what the rough line has above the smooth one comes on top, over the share of the plate behind transition. The larger of
 * the two bites early: grains of 30 micrometres on 150 mm at 4 m/s still lie nearly within the smooth film of the flow, and cost less than the
 * line says. What grains do to transition itself is not in it: say a lower `transition` with them.
 *
 * Source: Prandtl's transition correction, in Schlichting, Boundary-Layer Theory; written here so that it is continuous.
 *
 * @param reynolds on the plate's length, 1
 * @param transition Reynolds number of transition, 1; `Infinity` for all laminar
 * @param lengthOverGrain plate's length over its grains, 1; `Infinity` for a smooth one
 * @returns 1
 * @throws RangeError when any is not above zero, or the line's range is left
 *
 * @example
 * ```ts
 * import { plateFriction } from "lakeproof/model/friction-line.ts";
 * const friction = plateFriction(5e5);
 * if (!(friction > 0.0038 && friction < 0.0039)) throw new Error(`${friction}`);
 * ```
 */
export function plateFriction(
  reynolds: number,
  transition: number = TRANSITION_REYNOLDS,
  lengthOverGrain = Infinity,
): number {
  requireReynolds(reynolds);
  if (!(transition > 0)) {
    throw new RangeError(
      `Cannot give friction as the transition Reynolds number must be above zero: ${transition}`,
    );
  }
  if (reynolds <= transition) return laminarFriction(reynolds);
  const share = transition / reynolds;
  const smooth = turbulentFriction(reynolds) -
    share * (turbulentFriction(transition) - laminarFriction(transition));
  if (lengthOverGrain === Infinity) return smooth;
  return smooth +
    (1 - share) * Math.max(0, roughFriction(lengthOverGrain) - turbulentFriction(reynolds));
}

/**
 * Form factor of a section with its largest thickness near 30 % of the chord: drag over the friction of both sides' flat area.
 *
 * Source: Hoerner, Fluid-Dynamic Drag (1965), section drag, `1 + 2 t/c + 60 (t/c)^4`.
 *
 * @param thicknessRatio thickness over chord, 0 to 0.3, 1
 * @returns 1
 * @throws RangeError outside 0 to 0.3
 *
 * @example
 * ```ts
 * import { formFactor } from "lakeproof/model/friction-line.ts";
 * if (Math.abs(formFactor(0.12) - 1.252442) > 5e-7) throw new Error("printed value");
 * ```
 */
export function formFactor(thicknessRatio: number): number {
  if (!(thicknessRatio >= 0 && thicknessRatio <= 0.3)) {
    throw new RangeError(
      `Cannot give a form factor as thickness over chord must be 0 to 0.3: ${thicknessRatio}`,
    );
  }
  return 1 + 2 * thicknessRatio + 60 * thicknessRatio ** 4;
}
