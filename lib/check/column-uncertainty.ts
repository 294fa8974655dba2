/**
 * How well a column of readings is known: as the user stated it in instruments.csv, else a usual value by kind of
 * instrument.
 *
 * @module
 */
import type { Instrument } from "../base/session.ts";

/** An error that all readings of an instrument share, so that it stands in no scatter. */
export interface CommonError {
  readonly column: string;
  readonly instrument: string | null;
  /** Standard uncertainty, a share (1) when `relative`, else SI. */
  readonly uncertainty: number;
  readonly relative: boolean;
}

/** Standard uncertainty of a column's readings, SI. */
export interface ColumnUncertainty {
  readonly column: string;
  /** The same for every reading, SI. */
  readonly fixed: number;
  /** Share of the reading, 1. */
  readonly share: number;
  readonly common: readonly CommonError[];
  /** Where `fixed` and `share` come from. */
  readonly origin: "stated" | "usual";
  /** What it was measured with: the stated instrument, or the usual one. */
  readonly instrument: string;
}

/** A usual instrument for a column: standard uncertainties, SI. */
interface Usual {
  readonly fixed: number;
  readonly share: number;
  readonly instrument: string;
  /** True where the usual error is one for all readings: a stated common row then takes its place. */
  readonly shared?: true;
}

const DEGREE = Math.PI / 180;

/**
 * Usual standard uncertainties by column. Common practice, no source: two marks and a camera at 30 frames a second, a
 * tape along the jetty, a stick against the waterline, a watch, a spring balance.
 */
const USUAL: Readonly<Record<string, Usual>> = {
  launch_speed: { fixed: 0.08, share: 0, instrument: "video at 30 frames a second" },
  end_speed: { fixed: 0.08, share: 0, instrument: "video at 30 frames a second" },
  drop: { fixed: 0.02, share: 0, instrument: "video against a marked pole" },
  distance: { fixed: 0.15, share: 0.012, instrument: "tape" },
  duration: { fixed: 0.1, share: 0, instrument: "watch" },
  carried_mass: { fixed: 0.5, share: 0, instrument: "spring balance", shared: true },
  depth: { fixed: 0.05, share: 0, instrument: "marks on the strut" },
  speed: { fixed: 0, share: 0.01, instrument: "speed sensor" },
  line_tension: { fixed: 0.8, share: 0.015, instrument: "load cell" },
  line_angle: { fixed: 0.5 * DEGREE, share: 0, instrument: "protractor" },
  pitch: { fixed: 0.5 * DEGREE, share: 0, instrument: "protractor" },
};

/**
 * Stated or usual uncertainty of one column.
 *
 * Several independent rows add in quadrature, parts and shares apart. Rows marked `common` are listed one by one: they
 * shift all readings together, which scatter never shows. A usual value stands in where no independent row is given; a
 * column without a usual value and without a row counts as exact.
 *
 * Source: JCGM 100:2008 clause 5.1.2 for the sum; the usual values are common practice, no source.
 *
 * @param instruments rows of instruments.csv
 * @param column name of a column of glides.csv or tow.csv
 * @returns standard uncertainty in the column's SI unit, and where it comes from
 *
 * @example
 * ```ts
 * import { columnUncertainty, standardUncertaintyOf } from "lakeproof/check/column-uncertainty.ts";
 *
 * const tape = columnUncertainty([], "distance");
 * const u = standardUncertaintyOf(tape, 10, null);
 * if (Math.abs(u - Math.hypot(0.15, 0.12)) > 1e-12) throw new Error("usual tape");
 * ```
 */
export function columnUncertainty(
  instruments: readonly Instrument[],
  column: string,
): ColumnUncertainty {
  const rows = instruments.filter((one) => one.quantity === column);
  const independent = rows.filter((one) => one.kind === "independent");
  const common = rows.filter((one) => one.kind === "common").map((one) => ({
    column,
    instrument: one.instrument,
    uncertainty: one.uncertainty,
    relative: one.relative,
  }));
  const usual: Usual = USUAL[column] ?? { fixed: 0, share: 0, instrument: "not stated" };
  if (independent.length === 0 && !(usual.shared && common.length > 0)) {
    const { fixed, share, instrument } = usual;
    return { column, fixed, share, common, origin: "usual", instrument };
  }
  const quadrature = (relative: boolean) =>
    Math.hypot(
      ...independent.filter((one) => one.relative === relative).map((one) => one.uncertainty),
    );
  const named = independent.length > 0 ? independent : rows;
  const names = named.flatMap((one) => one.instrument === null ? [] : [one.instrument]);
  return {
    column,
    fixed: quadrature(false),
    share: quadrature(true),
    common,
    origin: "stated",
    instrument: [...new Set(names)].sort().join(" and ") || "instrument not named",
  };
}

/**
 * Standard uncertainty of one reading.
 *
 * @param uncertainty of its column
 * @param value the reading, SI
 * @param own the row's own standard uncertainty where it has one, SI; it replaces the column's
 * @returns SI
 */
export function standardUncertaintyOf(
  uncertainty: ColumnUncertainty,
  value: number,
  own: number | null,
): number {
  return own ?? Math.hypot(uncertainty.fixed, uncertainty.share * value);
}

/**
 * Fixed part and share of a column's stated shared errors, the usual ones where a kind is not stated.
 *
 * @param column with what is stated for it
 * @param usual fixed part in SI, and share
 * @returns standard uncertainties, each kind in quadrature
 */
export function sharedParts(
  column: ColumnUncertainty,
  usual: { readonly fixed: number; readonly share: number },
): { readonly fixed: number; readonly share: number } {
  const of = (relative: boolean) => column.common.filter((one) => one.relative === relative);
  const sum = (relative: boolean) => Math.hypot(...of(relative).map((one) => one.uncertainty));
  return {
    fixed: of(false).length > 0 ? sum(false) : usual.fixed,
    share: of(true).length > 0 ? sum(true) : usual.share,
  };
}
