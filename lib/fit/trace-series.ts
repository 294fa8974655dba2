/**
 * All traces of one design, with what scatters and what they share; its quantities have the parts that a tow's have.
 *
 * @module
 */
import type { Result } from "../base/quantity.ts";
import { quadraticForm } from "./symmetric-three.ts";
import { fitTraces, type TraceData, type TraceFit } from "./trace-fit.ts";
import type { TowEstimate } from "./tow-series.ts";
import type { LogValue } from "./tow-estimates.ts";

/** Name of the doubt about where in a run its height was lost. */
export const HEIGHT_SPENT = "how the height was spent";

/** An error that all traces share. */
export interface SharedTraceError {
  readonly name: string;
  /** Errors with the same key are one error, also in a tow; `null` is the design's own. */
  readonly key: string | null;
  /** The same traces with the error taken off at plus and at minus one standard uncertainty. */
  readonly shifted: readonly [TraceData, TraceData];
}

/** A design's fit with its shared errors. */
export interface TraceSeries {
  readonly fit: TraceFit;
  readonly shifts: readonly {
    readonly name: string;
    readonly key: string | null;
    readonly fits: readonly [TraceFit, TraceFit];
  }[];
}

/**
 * Fits a design's traces and what each shared error does to them.
 *
 * @param data traces and craft
 * @param errors shared by all traces
 * @returns the series, or why there is none
 */
export function fitTraceSeries(
  data: TraceData,
  errors: readonly SharedTraceError[],
): Result<TraceSeries> {
  const fit = fitTraces(data);
  if (!fit.ok) return fit;
  const options = { known: { noise: fit.noise, runScale: fit.runScale }, start: fit };
  const shifts = [];
  for (const { name, key, shifted } of errors) {
    const [plus, minus] = [fitTraces(shifted[0], options), fitTraces(shifted[1], options)];
    for (const one of [plus, minus]) {
      if (!one.ok) return { ok: false, reason: `with the error of ${name}: ${one.reason}` };
    }
    shifts.push({ name, key, fits: [plus as TraceFit, minus as TraceFit] as const });
  }
  return { ok: true, fit, shifts };
}

/**
 * A quantity of the law with its variance apart by origin: noise of the samples, runs, planform, shared errors.
 *
 * @param series a design's fit
 * @param value logarithm and gradient of the quantity, or `null` where the law gives none
 * @returns parts as a tow has them, with the runs in the place of the sweeps; or `null`
 */
export function traceEstimate(
  { fit, shifts }: TraceSeries,
  value: (fit: TraceFit) => LogValue | null,
): TowEstimate | null {
  const here = value(fit);
  if (here === null || !Number.isFinite(here.log)) return null;
  const noise = Math.max(0, quadraticForm(fit.noiseCovariance, here.gradient));
  const runs = Math.max(0, quadraticForm(fit.runCovariance, here.gradient));
  const growth = Math.max(0, quadraticForm(fit.steepeningCovariance, here.gradient));
  const shared: TowEstimate["shared"][number][] = growth > 0
    ? [{ name: HEIGHT_SPENT, key: null, change: Math.sqrt(growth) }]
    : [];
  for (const { name, key, fits } of shifts) {
    const [plus, minus] = fits.map(value);
    if (plus == null || minus == null) return null;
    shared.push({ name, key, change: (plus.log - minus.log) / 2 });
  }
  return {
    log: here.log,
    dataVariance: noise,
    dataDegreesOfFreedom: fit.noiseDegreesOfFreedom,
    planformVariance: Math.max(
      0,
      quadraticForm(fit.covariance, here.gradient) - noise - runs - growth,
    ),
    sweepVariance: runs,
    sweepDegreesOfFreedom: fit.runDegreesOfFreedom,
    shared,
  };
}
