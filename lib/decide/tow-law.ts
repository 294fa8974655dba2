/**
 * The contract's law of a fitted tow, and where its uncertainty comes from.
 *
 * @module
 */
import type { Design } from "../base/session.ts";
import type { TowLaw, UncertaintyShare } from "../base/tow-answer.ts";
import { mapThree, type SymmetricThree } from "../fit/symmetric-three.ts";
import type { FittedLaw, SpeedRange } from "../fit/tow-curve.ts";
import type { TowEstimate } from "../fit/tow-series.ts";
import { singleVariance } from "../fit/tow-variance.ts";

/** Sources that are a design's own, not shared by its readings. */
export const OWN_SOURCES: readonly string[] = ["scatter of the readings", "planform", "sweeps"];

/** A fitted law with its covariance, and what each shared error makes of it. */
interface LawWithShifts {
  readonly fit: FittedLaw & { readonly covariance: SymmetricThree };
  readonly shifts: readonly { readonly fits: readonly [FittedLaw, FittedLaw] }[];
}

/**
 * The law in SI constants with the covariance of all its errors.
 *
 * @param prepared the session, for the density
 * @param spec the design, for the area
 * @param fitted its fit
 * @returns the law
 */
export function lawOf(
  { medium }: { readonly medium: { readonly density: number } },
  spec: Design,
  { ready, series, range }: {
    readonly ready: { readonly depthKnown: boolean };
    readonly series: LawWithShifts;
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
 * @param own names of the parts that are the design's own: scatter, planform, sweeps
 * @returns shares that add to 1; none for `null`
 */
export function sharesOf(
  estimate: TowEstimate | null,
  own: readonly string[] = OWN_SOURCES,
): UncertaintyShare[] {
  if (estimate === null) return [];
  const { variance } = singleVariance(estimate);
  const share = (source: string, part: number) => ({ source, share: part / variance });
  return [
    share(own[0]!, estimate.dataVariance),
    share(own[1]!, estimate.planformVariance),
    share(own[2]!, estimate.sweepVariance),
    ...estimate.shared.map(({ name, change }) => share(name, change ** 2)),
  ];
}
