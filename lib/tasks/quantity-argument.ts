/**
 * Numbers on the command line: SI unless a unit is attached, as in `14km/h`.
 *
 * @module
 */
import { decimalToSi } from "../base/decimal-to-si.ts";
import { UsageError } from "../base/errors.ts";
import { excerpt } from "../base/printable.ts";
import type { Dimension } from "../base/tables.ts";
import { findUnit, SI_UNITS, unitNamed, UNITS } from "../base/units.ts";

const NUMBER = /^([+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:e[+-]?\d+)?)\s*(.*)$/i;

/**
 * A number with an optional unit, in SI.
 *
 * @param text as typed; a decimal comma is read as a point
 * @param dimension what it measures
 * @param option the option's name, for the message
 * @returns the value in SI
 * @throws UsageError for what is no number, or a unit that does not fit
 * @example
 * ```ts
 * import { quantityArgument } from "lakeproof/tasks/quantity-argument.ts";
 * if (quantityArgument("18km/h", "speed", "--launch-speed") !== 5) throw new Error("18 km/h");
 * ```
 */
export function quantityArgument(text: string, dimension: Dimension, option: string): number {
  const match = NUMBER.exec(text.trim());
  const si = SI_UNITS[dimension];
  const units = UNITS.filter((one) => one.dimension === dimension).map((one) => one.name);
  const wanted = `a number of ${si}, or one with a unit (${units.join(", ")})`;
  if (match === null) {
    throw new UsageError(
      `Cannot read ${option} as ${wanted}: "${excerpt(text)}" was found.`,
    );
  }
  const unit = match[2] === "" ? unitNamed(si, dimension) : findUnit(match[2]!, dimension);
  const value = unit === null ? NaN : decimalToSi(match[1]!.replace(",", "."), unit);
  if (!Number.isFinite(value)) {
    throw new UsageError(
      `Cannot read ${option} as ${wanted}: "${excerpt(text)}" was found.`,
    );
  }
  return value;
}
