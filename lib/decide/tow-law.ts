/**
 * The contract's law of a fitted tow, and where its uncertainty comes from.
 *
 * @module
 */
import type { Design } from "../base/session.ts";
import type { TowLaw, UncertaintyShare } from "../base/tow-answer.ts";
import { mapThree } from "../fit/symmetric-three.ts";
import type { SpeedRange } from "../fit/tow-curve.ts";
import type { TowEstimate, TowSeries } from "../fit/tow-series.ts";
import { singleVariance } from "../fit/tow-variance.ts";
import type { PreparedDesignTow } from "./tow-errors.ts";
import type { PreparedTow } from "./tow-readings.ts";

/** Sources that are a design's own, not shared by its readings. */
export const OWN_SOURCES: readonly string[] = ["scatter of the readings", "planform", "sweeps"];

/**
 * The law in SI constants with the covariance of all its errors.
 *
 * @param prepared the session, for the density
 * @param spec the design, for the area
 * @param fitted its fit
 * @returns the law
 */
export function lawOf(
  { medium }: PreparedTow,
  spec: Design,
  { ready, series, range }: {
    readonly ready: PreparedDesignTow;
    readonly series: TowSeries;
    readonly range: SpeedRange;
  },
): TowLaw {
  const { fit, shifts } = series;
  const { lift } = fit.data.craft;
  const factors = (v0: number) => [v0 ** -2, 1, v0 ** 2] as const;
  const here = factors(fit.referenceSpeed);
  const changes = shifts.map(({ fits: [plus, minus] }) => {
    const [up, down] = [factors(plus.referenceSpeed), factors(minus.referenceSpeed)];
    return [0, 1, 2].map((j) =>
      (plus.parameters[j]! * up[j]! - minus.parameters[j]! * down[j]!) / 2
    );
  });
  const e = fit.parameters[2] * here[2];
  return {
    a: fit.parameters[0] * here[0],
    d: fit.parameters[1],
    e,
    K: ready.depthKnown ? e * medium.density * spec.area / (2 * lift ** 2) : null,
    covariance: mapThree((i, j) =>
      fit.covariance[i]![j]! * here[i]! * here[j]! +
      changes.reduce((sum, change) => sum + change[i]! * change[j]!, 0)
    ),
    from: range.from,
    to: range.to,
    lift,
  };
}

/**
 * Shares of a variance by source.
 *
 * @param estimate a quantity on the logarithm, or `null`
 * @returns shares that add to 1; none for `null`
 */
export function sharesOf(estimate: TowEstimate | null): UncertaintyShare[] {
  if (estimate === null) return [];
  const { variance } = singleVariance(estimate);
  const share = (source: string, part: number) => ({ source, share: part / variance });
  return [
    share(OWN_SOURCES[0]!, estimate.dataVariance),
    share(OWN_SOURCES[1]!, estimate.planformVariance),
    share(OWN_SOURCES[2]!, estimate.sweepVariance),
    ...estimate.shared.map(({ name, change }) => share(name, change ** 2)),
  ];
}
