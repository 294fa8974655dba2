/**
 * How numbers are rounded for people: one rule for prose, tables, figures and the terminal.
 *
 * A value is given to the place of the second significant digit of its standard uncertainty; the ends of its interval
 * are given to the same place. Digits past that are noise, and a reader takes printed digits for knowledge. Files for
 * other programs carry the full numbers instead. The rival, one digit where the uncertainty begins with a large one, costs
 * up to a seventh of the uncertainty in rounding.
 *
 * Source: JCGM 100:2008 (GUM), 7.2.6 (at most two significant digits of the uncertainty, the value to the same place).
 *
 * @module
 */
import type { Quantity } from "./quantity.ts";

/** Stands between a number and its unit, so that they never part at a line's end. */
export const NO_BREAK_SPACE = "\u00a0";

/** A minus as wide as a plus; what people read. */
const MINUS = "\u2212";

/** Significant digits of a number whose uncertainty nobody has stated. */
const DIGITS_WITHOUT_UNCERTAINTY = 3;

/** Significant digits of an exact number (a setting, a count); trailing zeros are not shown. */
const DIGITS_WHEN_EXACT = 6;

/** Options of the functions that print a quantity. */
export interface RoundingOptions {
  /** Whether the unit follows the number; true unless said otherwise. */
  readonly unit?: boolean;
  /**
   * A value that an end of the interval must not seem to touch when it does not: with 1, an interval from 1.004 on is
   * printed as 1.004 and not as 1.00. More digits are taken, for value and ends alike.
   */
  readonly apartFrom?: number;
}

function demandFinite(value: number): void {
  if (!Number.isFinite(value)) {
    throw new RangeError(`Cannot print a number as only finite ones can be: ${value}`);
  }
}

/**
 * Decimals that an uncertainty leaves to its value: 3 for 0.069, 2 for 0.12, 0 for 42, -2 for 1234.
 *
 * @param uncertainty standard uncertainty, above 0, any unit
 * @returns decimals after the point; negative means whole tens, hundreds
 * @throws RangeError for a number that is not finite or not above 0
 * @example
 * ```ts
 * import { decimalsOfUncertainty } from "lakeproof/base/rounding.ts";
 * if (decimalsOfUncertainty(0.069) !== 3) throw new Error("two digits of 0.069");
 * if (decimalsOfUncertainty(42) !== 0) throw new Error("two digits of 42");
 * ```
 */
export function decimalsOfUncertainty(uncertainty: number): number {
  demandFinite(uncertainty);
  if (uncertainty <= 0) {
    throw new RangeError(`Cannot round by an uncertainty as it must be above 0: ${uncertainty}`);
  }
  const exponent = uncertainty.toExponential(1).split("e")[1];
  return 1 - Number(exponent);
}

function decimalsBySignificance(value: number, digits: number): number {
  if (value === 0) return 0;
  return digits - 1 - Number(value.toExponential(digits - 1).split("e")[1]);
}

/**
 * A number to a given count of decimals, as people read it: a true minus, no negative zero, powers of ten past seven
 * digits.
 *
 * @param value any finite number
 * @param decimals digits after the point; negative rounds to whole tens, hundreds
 * @returns the text, without unit
 * @throws RangeError for NaN and infinities: they never become a printed result
 */
export function formatNumber(value: number, decimals: number): string {
  demandFinite(value);
  const size = Math.abs(value);
  const step = 10 ** -decimals;
  const text = size >= 1e7 || (size > 0 && size < 1e-4 && decimals > 4)
    ? size.toExponential(Math.min(15, Math.max(0, powerOfTen(size) + decimals)))
    : decimals >= 0
    ? size.toFixed(Math.min(decimals, 15))
    : String(Math.round(size / step) * step);
  return (value < 0 && Number(text) !== 0 ? MINUS : "") + text.replace("e+", "e");
}

function powerOfTen(size: number): number {
  return Number(size.toExponential(15).split("e")[1]);
}

/**
 * Decimals to which a quantity is printed, value and interval ends alike.
 *
 * By its standard uncertainty; where there is none, by a quarter of its interval's width; where there is neither, three
 * significant digits. An uncertainty of 0 marks an exact number, which is printed as it is, to six digits at most.
 *
 * @param quantity any unit
 * @param options `apartFrom` asks for digits enough to tell the ends from a given value
 * @returns decimals after the point; negative means whole tens, hundreds
 */
export function decimalsOf(quantity: Quantity, options: RoundingOptions = {}): number {
  const { value, standardUncertainty: u, low, high } = quantity;
  const width = low !== null && high !== null ? (high - low) / 4 : 0;
  let decimals: number;
  if (u !== null && u > 0) decimals = decimalsOfUncertainty(u);
  else if (u === null && width > 0) decimals = decimalsOfUncertainty(width);
  else if (u === null) decimals = decimalsBySignificance(value, DIGITS_WITHOUT_UNCERTAINTY);
  else decimals = exactDecimals(value);
  const { apartFrom } = options;
  if (apartFrom === undefined) return decimals;
  const touches = (end: number | null, places: number) =>
    end !== null && end !== apartFrom &&
    formatNumber(end, places) === formatNumber(apartFrom, places);
  for (let more = 0; more < 6; more++) {
    if (!touches(low, decimals + more) && !touches(high, decimals + more)) return decimals + more;
  }
  return decimals;
}

function exactDecimals(value: number): number {
  const most = Math.max(0, decimalsBySignificance(value, DIGITS_WHEN_EXACT));
  for (let decimals = 0; decimals < most; decimals++) {
    if (Number(value.toFixed(decimals)) === Number(value.toFixed(most))) return decimals;
  }
  return most;
}

/**
 * A unit as people read it: nothing for a ratio, raised 2 and 3.
 *
 * @param unit as tables and answers name it
 * @returns "m/s²" for "m/s2"; empty for "1"
 */
export function unitText(unit: string): string {
  if (unit === "1") return "";
  return unit.replace(/2(?=$|\/)/g, "\u00b2").replace(/3(?=$|\/)/g, "\u00b3");
}

function withUnit(text: string, quantity: Quantity, options: RoundingOptions): string {
  const unit = unitText(quantity.unit);
  return options.unit === false || unit === "" ? text : `${text}${NO_BREAK_SPACE}${unit}`;
}

/**
 * The value of a quantity, rounded to what its uncertainty allows, with its unit.
 *
 * @param quantity any unit
 * @param options without unit; apart from a given value
 * @returns for instance "6.72 m", or "1.182" for a ratio
 * @throws RangeError when the value is not finite
 * @example
 * ```ts
 * import { formatQuantity } from "lakeproof/base/rounding.ts";
 * const ratio = {
 *   value: 1.1820182,
 *   standardUncertainty: 0.0694,
 *   degreesOfFreedom: 15.57,
 *   low: 1.0434176,
 *   high: 1.3390295,
 *   level: 0.95,
 *   kind: "interval",
 *   unit: "1",
 * } as const;
 * if (formatQuantity(ratio) !== "1.182") throw new Error(formatQuantity(ratio));
 * ```
 */
export function formatQuantity(quantity: Quantity, options: RoundingOptions = {}): string {
  return withUnit(formatNumber(quantity.value, decimalsOf(quantity, options)), quantity, options);
}

/**
 * The interval of a quantity: "1.043 to 1.339", "at least 1.043", "at most 1.339".
 *
 * @param quantity any unit
 * @param options without unit; apart from a given value
 * @returns the text, or "not known" where no interval is claimed
 */
export function formatInterval(quantity: Quantity, options: RoundingOptions = {}): string {
  const { low, high, kind } = quantity;
  const decimals = decimalsOf(quantity, options);
  if (kind === "interval" && low !== null && high !== null) {
    const ends = `${formatNumber(low, decimals)} to ${formatNumber(high, decimals)}`;
    return withUnit(ends, quantity, options);
  }
  if (kind === "atLeast" && low !== null) {
    return `at least ${withUnit(formatNumber(low, decimals), quantity, options)}`;
  }
  if (kind === "atMost" && high !== null) {
    return `at most ${withUnit(formatNumber(high, decimals), quantity, options)}`;
  }
  return "not known";
}

/**
 * Value and standard uncertainty: "1.182 ± 0.069".
 *
 * What stands after the sign is one standard uncertainty, not an interval; say so where it is printed.
 *
 * @param quantity any unit
 * @param options without unit
 * @returns the value alone where no uncertainty is known or it is 0
 */
export function formatPlusMinus(quantity: Quantity, options: RoundingOptions = {}): string {
  const { value, standardUncertainty: u } = quantity;
  if (u === null || u === 0) return formatQuantity(quantity, options);
  const decimals = decimalsOf(quantity, options);
  const space = NO_BREAK_SPACE;
  const text = `${formatNumber(value, decimals)}${space}±${space}${formatNumber(u, decimals)}`;
  return withUnit(text, quantity, options);
}

/**
 * A share in per cent: "40 %", "0.8 %".
 *
 * @param share 1 is the whole
 * @param decimals digits after the point; by default none from 1 % on, else one
 * @returns the text with its sign
 */
export function formatPercent(share: number, decimals?: number): string {
  const percent = share * 100;
  const places = decimals ?? (percent !== 0 && Math.abs(percent) < 0.95 ? 1 : 0);
  return `${formatNumber(percent, places)}${NO_BREAK_SPACE}%`;
}

/**
 * A probability in per cent that never reads as certainty: "80 %", "99.4 %", "more than 99.9 %", "less than 0.1 %".
 *
 * @param probability from 0 to 1
 * @returns the text
 * @throws RangeError outside
 */
export function formatProbability(probability: number): string {
  if (!(probability >= 0 && probability <= 1)) {
    throw new RangeError(
      `Cannot print a probability as it must lie between 0 and 1: ${probability}`,
    );
  }
  if (probability > 0.999) return `more than 99.9${NO_BREAK_SPACE}%`;
  if (probability < 0.001) return `less than 0.1${NO_BREAK_SPACE}%`;
  const near = Math.min(probability, 1 - probability) < 0.0149;
  return formatPercent(probability, near ? 1 : 0);
}
