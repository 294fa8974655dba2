/**
 * All towed points of one design, with what scatters and what they share.
 *
 * @module
 */
import type { Result } from "../base/quantity.ts";
import { towDrag } from "./tow-curve.ts";
import type { TowData } from "./tow-data.ts";
import { fitTow, type TowFit } from "./tow-fit.ts";

/** How well the size of an error is itself known, where only so many readings told it. */
export interface KnownBy {
  /** Errors of one origin were told by the same readings, so that they are too small or too large together. */
  readonly origin: string;
  readonly degreesOfFreedom: number;
}

/** An error that all points share, so that it stands in no scatter. */
export interface SharedError {
  readonly name: string;
  /** Errors of two designs with the same key are one error and cancel in a comparison; `null` is the design's own. */
  readonly key: string | null;
  /** The same points with the error taken off at plus and at minus one standard uncertainty. */
  readonly shifted: readonly [TowData, TowData];
  /** Nothing where the size of the error counts as known. */
  readonly knownBy?: KnownBy;
}

/** What one shared error does. */
export interface ShiftedFit {
  readonly name: string;
  readonly key: string | null;
  readonly fits: readonly [TowFit, TowFit];
  readonly knownBy?: KnownBy;
}

/** A design's fit with its shared errors. */
export interface TowSeries {
  readonly fit: TowFit;
  readonly shifts: readonly ShiftedFit[];
  /** Variance of the relative drag from sweep to sweep that the points' own scatter does not explain, over the sweeps. */
  readonly sweepVariance: number;
  /** Of that variance; 0 with a single sweep, whose own offset nobody can see. */
  readonly sweepDegreesOfFreedom: number;
}

/** A quantity on the logarithm, its variance apart by origin. */
export interface TowEstimate {
  readonly log: number;
  /** From the scatter of the points. */
  readonly dataVariance: number;
  readonly dataDegreesOfFreedom: number;
  /** From the doubt about the planform. */
  readonly planformVariance: number;
  readonly sweepVariance: number;
  readonly sweepDegreesOfFreedom: number;
  /** Change by one standard uncertainty of each shared error, with its sign. */
  readonly shared: readonly {
    readonly name: string;
    readonly key: string | null;
    readonly change: number;
    readonly knownBy?: KnownBy;
  }[];
}

/**
 * Fits a design and what each shared error does to it.
 *
 * @param data readings and craft
 * @param errors shared by all readings
 * @param options `robust`: readings far off the law count for little
 * @returns the series, or why there is none
 * @throws RangeError from `fitTow`
 */
export function fitTowSeries(
  data: TowData,
  errors: readonly SharedError[],
  options: { readonly robust?: boolean } = {},
): Result<TowSeries> {
  const fit = fitTow(data, options);
  if (!fit.ok) return fit;
  const shifts: ShiftedFit[] = [];
  for (const { name, key, shifted, knownBy } of errors) {
    const scale = {
      ...options,
      scatterScale: fit.scatterScale,
      ...(fit.robustScale === null ? {} : { robustScale: fit.robustScale }),
    };
    const plus = fitTow(shifted[0], scale);
    if (!plus.ok) return { ok: false, reason: `with the error of ${name}: ${plus.reason}` };
    const minus = fitTow(shifted[1], scale);
    if (!minus.ok) return { ok: false, reason: `with the error of ${name}: ${minus.reason}` };
    shifts.push({ name, key, fits: [plus, minus], ...(knownBy === undefined ? {} : { knownBy }) });
  }
  return { ok: true, fit, shifts, ...sweepScatter(fit) };
}

/** What differs from sweep to sweep beyond the scatter inside them. */
function sweepScatter(fit: TowFit) {
  const relative = fit.residuals.map((one, i) => one / towDrag(fit, fit.adjustedSpeeds[i]!));
  const sweeps = new Map<string, number[]>();
  fit.data.readings.forEach(({ block }, i) =>
    sweeps.set(block, [...(sweeps.get(block) ?? []), relative[i]!])
  );
  const groups = [...sweeps.values()];
  const count = groups.length;
  const inside = relative.length - count;
  if (count < 2 || inside < 1) return { sweepVariance: 0, sweepDegreesOfFreedom: 0 };
  const means = groups.map((one) => one.reduce((sum, r) => sum + r, 0) / one.length);
  const mean = means.reduce((sum, one) => sum + one, 0) / count;
  const among = means.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (count - 1);
  const within = groups.reduce(
    (sum, one, g) => sum + one.reduce((total, r) => total + (r - means[g]!) ** 2, 0),
    0,
  ) / inside;
  return {
    sweepVariance: Math.max(0, among - within * count / relative.length) / count,
    sweepDegreesOfFreedom: count - 1,
  };
}
