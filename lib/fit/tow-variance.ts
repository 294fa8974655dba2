/**
 * From parts of variance to one variance with its degrees of freedom: one design, or the ratio of two.
 *
 * @module
 */
import type { KnownBy, TowEstimate } from "./tow-series.ts";

/** A logarithm with its variance and degrees of freedom; `null` stands for no limit. */
export interface LogVariance {
  readonly log: number;
  readonly variance: number;
  readonly degreesOfFreedom: number | null;
}

/** A variance that is itself known with so many degrees of freedom only. */
export interface FreedomPart {
  readonly variance: number;
  readonly degreesOfFreedom: number;
}

/**
 * Welch and Satterthwaite: degrees of freedom of a sum of variances of which some count as known.
 *
 * Source: JCGM 100:2008 (GUM), equation G.2b.
 *
 * @param variance the whole sum
 * @param parts those of its parts that are themselves uncertain
 * @returns degrees of freedom; `null` where there is no such part
 */
export function effectiveFreedom(
  variance: number,
  parts: readonly FreedomPart[],
): number | null {
  const fourth = parts.reduce(
    (sum, one) => one.variance === 0 ? sum : sum + one.variance ** 2 / one.degreesOfFreedom,
    0,
  );
  return fourth === 0 ? null : variance ** 2 / fourth;
}

/**
 * Variances of shared errors whose size is known by so many readings only.
 *
 * Errors of one origin (offset and slope of one calibration) come from one scatter, so that they make one part.
 *
 * @param changes by one standard uncertainty each
 * @returns parts for `effectiveFreedom`
 */
export function partsKnownBy(
  changes: readonly { readonly change: number; readonly knownBy?: KnownBy }[],
): FreedomPart[] {
  const origins = new Map<string, FreedomPart>();
  for (const { change, knownBy } of changes) {
    if (knownBy === undefined) continue;
    const { origin, degreesOfFreedom } = knownBy;
    const variance = (origins.get(origin)?.variance ?? 0) + change ** 2;
    origins.set(origin, { variance, degreesOfFreedom });
  }
  return [...origins.values()];
}

const partsOf = (one: TowEstimate, sweeps: boolean): FreedomPart[] => [
  { variance: one.dataVariance, degreesOfFreedom: one.dataDegreesOfFreedom },
  ...(sweeps ? [{ variance: one.sweepVariance, degreesOfFreedom: one.sweepDegreesOfFreedom }] : []),
];

/**
 * One design's quantity: scatter, planform, sweeps and shared errors together.
 *
 * Source: JCGM 100:2008 (GUM), equation G.2b.
 *
 * @param one its parts
 * @returns logarithm, variance, degrees of freedom
 */
export function singleVariance(one: TowEstimate): LogVariance {
  const variance = one.dataVariance + one.planformVariance + one.sweepVariance +
    one.shared.reduce((sum, { change }) => sum + change ** 2, 0);
  return {
    log: one.log,
    variance,
    degreesOfFreedom: effectiveFreedom(variance, [
      ...partsOf(one, true),
      ...partsKnownBy(one.shared),
    ]),
  };
}

/** What one shared error does to one design. */
export interface KeyedChange<T> extends SharedChange<T> {
  readonly key: string | null;
}

/** What one error does. */
export interface SharedChange<T> {
  readonly change: T;
  readonly knownBy?: KnownBy;
}

/**
 * Changes of a difference by each error: those with one key cancel with their signs, a design's own do not.
 *
 * @param baseline changes by one standard uncertainty each
 * @param candidate likewise
 * @param subtract one change from another
 * @param negate a change
 * @returns one entry an independent error
 */
export function sharedChanges<T>(
  baseline: readonly KeyedChange<T>[],
  candidate: readonly KeyedChange<T>[],
  { subtract, negate }: {
    readonly subtract: (one: T, other: T) => T;
    readonly negate: (one: T) => T;
  },
): SharedChange<T>[] {
  const twin = (key: string | null) =>
    key === null ? undefined : baseline.find((one) => one.key === key);
  const known = (knownBy: KnownBy | undefined) => knownBy === undefined ? {} : { knownBy };
  const joined = candidate.map(({ key, change, knownBy }) => {
    const other = twin(key);
    return {
      change: other === undefined ? change : subtract(change, other.change),
      ...known(knownBy),
    };
  });
  const alone = baseline.filter(({ key }) =>
    key === null || !candidate.some((one) => one.key === key)
  );
  return [
    ...joined,
    ...alone.map(({ change, knownBy }) => ({ change: negate(change), ...known(knownBy) })),
  ];
}

/**
 * Ratio of two designs.
 *
 * @param baseline its parts
 * @param candidate its parts
 * @param options `alternated`: both towed in the same sweeps, whose offsets then cancel; `dayVariance`: what a day may do
 *   to one design alone, on the logarithm
 * @returns logarithm of candidate over baseline, variance, degrees of freedom
 */
export function ratioVariance(
  baseline: TowEstimate,
  candidate: TowEstimate,
  options: { readonly alternated: boolean; readonly dayVariance: number },
): LogVariance {
  const { alternated, dayVariance } = options;
  const changes = sharedChanges(baseline.shared, candidate.shared, {
    subtract: (one, other) => one - other,
    negate: (one) => -one,
  });
  const own = [baseline, candidate].reduce(
    (sum, one) =>
      sum + one.dataVariance + one.planformVariance + (alternated ? 0 : one.sweepVariance),
    0,
  );
  const variance = own + dayVariance + changes.reduce((sum, { change }) => sum + change ** 2, 0);
  return {
    log: candidate.log - baseline.log,
    variance,
    degreesOfFreedom: effectiveFreedom(variance, [
      ...partsOf(baseline, !alternated),
      ...partsOf(candidate, !alternated),
      ...partsKnownBy(changes),
    ]),
  };
}
