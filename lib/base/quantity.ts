/**
 * A number with its uncertainty and unit: the form in which every result leaves the library.
 *
 * @module
 */

/** How the interval of a quantity is meant: both ends known, or only one of them. */
export type IntervalKind = "interval" | "atLeast" | "atMost";

/**
 * A value with its standard uncertainty, interval and SI unit.
 *
 * The interval is the one that the recipe behind the value claims to cover with probability `level`; it need not be
 * symmetric (a ratio's is not). With `kind` `atLeast` only `low` is claimed, with `atMost` only `high`; the other end is
 * then `null`. `degreesOfFreedom` is `null` where the uncertainty counts as known without limit, since JSON has no
 * infinity.
 *
 * Source: JCGM 100:2008 (GUM), clauses 2.3.1 and 6.2.
 */
export interface Quantity {
  readonly value: number;
  readonly standardUncertainty: number | null;
  readonly degreesOfFreedom: number | null;
  readonly low: number | null;
  readonly high: number | null;
  readonly level: number;
  readonly kind: IntervalKind;
  /** SI unit, `1` for a ratio. */
  readonly unit: string;
}

/** Why something could not be computed: never a NaN. */
export interface Failure {
  readonly ok: false;
  readonly reason: string;
}

/** A result that may fail in a way the caller must look at. */
export type Result<T> = ({ readonly ok: true } & T) | Failure;
