/**
 * A quantity of which only the value is known.
 *
 * @module
 */
import type { Quantity } from "./quantity.ts";

/**
 * A value without uncertainty, where there are too few runs to tell one.
 *
 * @param value in `unit`
 * @param unit SI, `1` for a ratio
 * @returns the quantity; uncertainty and interval are `null`, which is not to say that they are small
 */
export function quantityWithoutInterval(value: number, unit: string): Quantity {
  return {
    value,
    standardUncertainty: null,
    degreesOfFreedom: null,
    low: null,
    high: null,
    level: 0.95,
    kind: "interval",
    unit,
  };
}
