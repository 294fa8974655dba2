/**
 * How much single towed readings rule a law, and how far they stand off it.
 *
 * @module
 */
import { fisherFUpperTail, studentTUpperTail } from "../numeric/distributions.ts";
import { dot, quadraticForm, type Three } from "./symmetric-three.ts";
import { type TowData, towedDrag, towedLift } from "./tow-data.ts";
import { fitTow, type TowFit } from "./tow-fit.ts";

/** One reading's hold on the law. */
export interface TowInfluence {
  /** Share of the law's value at this reading that the reading itself decides, 0 to 1. */
  readonly leverage: number;
  /** Cook's distance: how far the law moves without it, in its own uncertainty. */
  readonly cook: number;
  /** Two-sided: how often a reading would stand off this far by chance, were it the only one looked at. */
  readonly pValue: number;
}

/** The law's terms for one reading, at its own lift. */
function termsOf(
  { data: { craft, readings }, referenceSpeed: v0 }: TowFit,
  i: number,
  speed: number,
): Three {
  const lift = towedLift(readings[i]!) / craft.lift;
  return [(speed / v0) ** 2, lift, craft.phi(speed) * (lift * v0 / speed) ** 2];
}

/**
 * Leverage, Cook's distance and deleted residual of each reading.
 *
 * The residual of a reading that rules the law is small, however wrong the reading; so it is judged against the law and the
 * scatter without it. Taken one at a time: who looks at all of them multiplies the p-value by their number.
 *
 * Source: Cook, Technometrics 19 (1977) 15; deleted studentised residuals: Cook and Weisberg 1982; both from memory.
 *
 * @param fit a fitted tow
 * @returns one entry a reading, in their order
 */
export function towInfluence(fit: TowFit): TowInfluence[] {
  const { scaledResiduals: z, weights, scatterScale: k, effectiveParameters: p } = fit;
  const free = z.length - p;
  const squares = z.reduce((sum, one) => sum + one * one, 0);
  return z.map((one, i) => {
    const x = termsOf(fit, i, fit.adjustedSpeeds[i]!);
    const leverage = Math.min(0.999, weights[i]! * quadraticForm(fit.covariance, x) / k);
    const alone = one * one / (1 - leverage);
    const rest = (squares - alone) / (free - 1);
    return {
      leverage,
      cook: squares === 0 ? 0 : alone * leverage / (1 - leverage) / (p * squares / free),
      pValue: alone === 0 || !(free > 1)
        ? 1
        : rest > 0
        ? 2 * studentTUpperTail(Math.sqrt(alone / rest), free - 1)
        : 0,
    };
  });
}

/**
 * Whether repeats agree better among themselves than the law agrees with them.
 *
 * @param fit a fitted tow
 * @returns p-value of the F test of misfit against pure error, or `null` where too few speeds were repeated
 */
export function towMisfit(
  { data, scaledResiduals: z, effectiveParameters: p }: TowFit,
): number | null {
  const groups = new Map<string, number[]>();
  data.readings.forEach(({ group }, i) => groups.set(group, [...(groups.get(group) ?? []), z[i]!]));
  const pure = z.length - groups.size;
  const free = groups.size - p;
  if (pure < 1 || free < 1) return null;
  let within = 0, between = 0;
  for (const group of groups.values()) {
    const mean = group.reduce((sum, one) => sum + one, 0) / group.length;
    between += group.length * mean * mean;
    within += group.reduce((sum, one) => sum + (one - mean) ** 2, 0);
  }
  if (!(within > 0)) return null;
  return fisherFUpperTail(between / free / (within / pure), { numerator: free, denominator: pure });
}

/** The readings of the slowest speed against the law of the others. */
export interface SlowestSpeed {
  /** N, mean drag of the slowest readings above the law of the others. */
  readonly excess: number;
  /** One-sided: how often they would drag so much more by chance. */
  readonly pValue: number;
  /** The law of the others. */
  readonly without: TowFit;
  /** Places of the slowest readings. */
  readonly places: readonly number[];
}

/**
 * Whether the slowest readings drag more than the law of the others allows, as a stalling wing or a touching board would.
 *
 * @param fit a fitted tow
 * @returns excess and p-value, or `null` where too few speeds are left without them
 */
export function slowestSpeed(fit: TowFit): SlowestSpeed | null {
  const { readings, craft } = fit.data;
  const names = [...new Set(readings.map((one) => one.group))];
  const meanSpeed = (name: string) => {
    const speeds = readings.filter((one) => one.group === name).map((one) => one.speed);
    return speeds.reduce((sum, one) => sum + one, 0) / speeds.length;
  };
  const slowest = [...names].sort((one, other) => meanSpeed(one) - meanSpeed(other))[0]!;
  const others = readings.filter((one) => one.group !== slowest);
  if (names.length < 4 || others.length < 5) return null;
  const rest: TowData = { readings: others, craft };
  const without = fitTow(rest);
  if (!without.ok) return null;
  const places = readings.flatMap((one, i) => one.group === slowest ? [i] : []);
  const whole: TowFit = { ...without, data: fit.data };
  const x = places.map((i) => termsOf(whole, i, readings[i]!.speed));
  const gaps = places.map((i, n) => towedDrag(readings[i]!) - dot(x[n]!, without.parameters));
  const count = places.length;
  const excess = gaps.reduce((sum, one) => sum + one, 0) / count;
  const mean = [0, 1, 2].map((j) =>
    x.reduce((sum, one) => sum + one[j]!, 0) / count
  ) as unknown as Three;
  const variance = quadraticForm(without.covariance, mean) +
    places.reduce((sum, i) => sum + without.scatterScale / fit.weights[i]!, 0) / count ** 2;
  return {
    excess,
    pValue: studentTUpperTail(excess / Math.sqrt(variance), without.degreesOfFreedom),
    without,
    places,
  };
}
