/**
 * Decimal text turned into SI without a digit lost.
 *
 * A number that arrives as text is converted exactly and rounded once, so that `12.3` under `[cm]` and `0.123` under `[m]`
 * give the same bits.
 *
 * @module
 */
import { spreadToSi, toSi, type Unit } from "./units.ts";

const DECIMAL = /^([+-]?)(\d*)(?:\.(\d*))?(?:[eE]([+-]?\d+))?$/;

/** Whole number and power of ten of a decimal text; `null` when it is none or out of all measure. */
function parts(text: string): { readonly whole: bigint; readonly power: number } | null {
  const match = DECIMAL.exec(text);
  if (match === null) return null;
  const [, sign = "", before = "", after = "", exponent = "0"] = match;
  if (before + after === "") return null;
  const power = Number(exponent) - after.length;
  if (Math.abs(power) > 400) return null;
  const whole = BigInt(before + after);
  return { whole: sign === "-" ? -whole : whole, power };
}

/** The double nearest to a fraction: forty digits by long division, then the engine's own correctly rounded reading. */
function nearest(numerator: bigint, denominator: bigint): number {
  const negative = numerator < 0n;
  const top = negative ? -numerator : numerator;
  if (top === 0n) return 0;
  const shift = Math.max(0, 40 + denominator.toString().length - top.toString().length);
  const scaled = top * 10n ** BigInt(shift);
  const digits = (scaled / denominator).toString() + (scaled % denominator === 0n ? "" : "1");
  const places = shift + (scaled % denominator === 0n ? 0 : 1);
  return Number(`${negative ? "-" : ""}${digits}e-${places}`);
}

/**
 * A decimal text in SI, rounded once: no digit is lost between the page and the first formula.
 *
 * @param decimal digits with an optional sign, decimal point and exponent, as `12.3` or `-1.5e-3`
 * @param from the unit it stands in
 * @param spread true for an uncertainty or difference, whose zero is not shifted
 * @returns SI; may be infinite for a text beyond all measure, which the caller refuses
 * @example
 * ```ts
 * import { decimalToSi } from "lakeproof/base/decimal-to-si.ts";
 * import { unitNamed } from "lakeproof/base/units.ts";
 * import { equal } from "node:assert/strict";
 * equal(decimalToSi("18", unitNamed("km/h", "speed")), 5);
 * equal(decimalToSi("12.3", unitNamed("cm", "length")), 0.123);
 * ```
 */
export function decimalToSi(decimal: string, from: Unit, spread = false): number {
  const read = parts(decimal);
  if (read === null || from.name === "deg") {
    return spread ? spreadToSi(Number(decimal), from) : toSi(Number(decimal), from);
  }
  let { whole, power } = read;
  const shift = spread ? null : parts(from.shift);
  if (shift !== null && shift.whole !== 0n) {
    const common = Math.min(power, shift.power);
    whole = whole * 10n ** BigInt(power - common) +
      shift.whole * 10n ** BigInt(shift.power - common);
    power = common;
  }
  const up = power > 0 ? 10n ** BigInt(power) : 1n;
  const down = power < 0 ? 10n ** BigInt(-power) : 1n;
  return nearest(whole * up * from.numerator, down * from.denominator);
}
