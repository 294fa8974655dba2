/**
 * What a planform lets expect of a drag law, as if it had been observed.
 *
 * @module
 */
import { mapThree, type SymmetricThree, type Three } from "./symmetric-three.ts";
import type { TowedCraft } from "./tow-data.ts";

/**
 * The planform's two pseudo-observations, in newtons at v0.
 *
 * @param craft with or without an expectation
 * @param v0 m/s
 * @returns their precision in 1/N2, and precision times mean
 */
export function expectedTerms(
  { expected }: TowedCraft,
  v0: number,
): { readonly precision: SymmetricThree; readonly pull: Three } {
  if (expected === null) return { precision: mapThree(() => 0), pull: [0, 0, 0] };
  const constant = expected.constant.standardUncertainty ** -2;
  const liftTerm = (expected.liftTerm.standardUncertainty / v0 ** 2) ** -2;
  return {
    precision: [[0, 0, 0], [0, constant, 0], [0, 0, liftTerm]],
    pull: [0, constant * expected.constant.mean, liftTerm * expected.liftTerm.mean / v0 ** 2],
  };
}
