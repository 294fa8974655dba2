/**
 * Runs one cell of the study on tows and counts what the answer got right.
 *
 * @module
 */
import type { Quantity } from "../../base/quantity.ts";
import type { TowLaw } from "../../base/tow-answer.ts";
import { compareTows } from "../../decide/compare-tows.ts";
import { comparePair, type TowPair } from "../../decide/tow-pairs.ts";
import type { TowedDesign } from "../../decide/design-tow.ts";
import type { TowEstimate, TowSeries } from "../../fit/tow-series.ts";
import { bestSpeedEstimate, dragEstimate } from "../../fit/tow-estimates.ts";
import { singleVariance } from "../../fit/tow-variance.ts";
import { studentTQuantile } from "../../numeric/distributions.ts";
import { seededRandom } from "../../numeric/random.ts";
import { drawTowSession, TOWED } from "./invented-tow-session.ts";
import { towCellName, type TowKind } from "./tow-kind.ts";
import { Counter, type Tally } from "./tow-tally.ts";
import { leastPowerSpeed, trueLaw } from "./towed-craft.ts";

/** What an interval is asked to hold. */
export const TOW_QUANTITIES = [
  "drag",
  "best lift-to-drag",
  "speed of best",
  "a of the law",
  "K of the law",
  "bound on best",
  "side of best speed",
  "side of least power",
  "ratio of one",
  "ratio of two",
] as const;

/** One of them. */
export type TowQuantityName = typeof TOW_QUANTITIES[number];

/** What the band over all speeds claims. */
export interface BandTally {
  readonly cases: number;
  /** Comparisons in which a difference is claimed at some speed. */
  readonly claims: number;
  /** Of these: wrong somewhere. */
  readonly wrongClaims: number;
}

/** Counts of one cell. */
export interface TowCellResult extends TowKind {
  readonly name: string;
  readonly sessions: number;
  /** Sessions without a law of the first craft. */
  readonly failures: number;
  readonly quantities: Readonly<Record<TowQuantityName, Tally>>;
  readonly bands: { readonly one: BandTally; readonly two: BandTally };
  /** Designs of which a word was said, by its code. */
  readonly words: ReadonlyMap<string, number>;
  /** Designs answered. */
  readonly designs: number;
}

/** m/s at which drag is asked for, or the nearest speed towed. */
const ASKED_SPEED = 4;

/**
 * Runs a cell.
 *
 * @param kind of sessions
 * @param sessions how many to draw
 * @returns counts of what the intervals held and what was claimed
 */
export function runTowCell(kind: TowKind, sessions: number): TowCellResult {
  const name = towCellName(kind);
  const random = seededRandom(`coverage of tows: ${name}`);
  const counters = Object.fromEntries(
    TOW_QUANTITIES.map((one) => [one, new Counter()]),
  ) as Record<TowQuantityName, Counter>;
  const bands = {
    one: { cases: 0, claims: 0, wrongClaims: 0 },
    two: { cases: 0, claims: 0, wrongClaims: 0 },
  };
  const words = new Map<string, number>();
  let failures = 0, designs = 0;
  for (let i = 0; i < sessions; i++) {
    const { session, craft, other, speeds } = drawTowSession(kind, random);
    const evidence = compareTows(session);
    for (const { findings } of evidence.designs) {
      designs++;
      for (const code of new Set(findings.map((one) => one.code))) {
        words.set(code, (words.get(code) ?? 0) + 1);
      }
    }
    const first = evidence.designs[0]!;
    const { series } = first;
    if (series === null) {
      failures++;
      continue;
    }
    const range = { from: speeds[0]!, to: speeds.at(-1)! };
    const asked = Math.min(Math.max(ASKED_SPEED, range.from), range.to);
    countEstimate(counters.drag, dragEstimate(series, asked), craft.drag(asked));
    countBest(counters, first, series, craft.best);
    countSide(
      counters["side of least power"],
      first.answer.leastPowerSpeed,
      () => leastPowerSpeed(craft),
    );
    const { a, K } = trueLaw(craft, range);
    const { law } = first.answer;
    countConstant(counters["a of the law"], lawInterval(series, law!, 0), a);
    if (law!.K !== null) {
      countConstant(counters["K of the law"], lawInterval(series, law!, 2), K * law!.e / law!.K);
    }
    // One comparison at a time: of two in one answer each is told with room for the other, and would claim half as often.
    const pair = (candidate: string) =>
      comparePair(
        first,
        evidence.designs.find((one) => one.answer.design === candidate)!,
        { apart: false, turns: true, count: 1 },
      );
    const [twin, apart] = [pair(TOWED.twin), pair(TOWED.other)];
    countRatio(counters["ratio of one"], twin.answer.bestLiftToDragRatio, 1);
    countRatio(
      counters["ratio of two"],
      apart.answer.bestLiftToDragRatio,
      other.best.liftToDrag / craft.best.liftToDrag,
    );
    countBand(bands.one, twin, () => 0);
    countBand(bands.two, apart, (v) => other.drag(v) - craft.drag(v));
  }
  const quantities = Object.fromEntries(
    TOW_QUANTITIES.map((one) => [one, counters[one].tally()]),
  ) as Record<TowQuantityName, Tally>;
  return { ...kind, name, sessions, failures, quantities, bands, words, designs };
}

/** Half width on the logarithm. */
function reachOf(estimate: TowEstimate): number {
  const { variance, degreesOfFreedom } = singleVariance(estimate);
  return studentTQuantile(0.975, degreesOfFreedom ?? Infinity) * Math.sqrt(variance);
}

function countEstimate(counter: Counter, estimate: TowEstimate | null, truth: number): void {
  if (estimate === null) return;
  const reach = reachOf(estimate);
  counter.count(estimate.log - reach, estimate.log + reach, Math.log(truth));
  const narrow = reachOf({ ...estimate, shared: [] });
  if (Math.abs(estimate.log - Math.log(truth)) <= narrow) counter.heldWithoutShared++;
}

/** Two-sided where the best speed was towed, a bound on the best where not. */
function countBest(
  counters: Record<TowQuantityName, Counter>,
  { best, answer }: TowedDesign,
  series: TowSeries,
  truth: { readonly speed: number; readonly liftToDrag: number },
): void {
  if (best === null) return;
  if (best.where === null) {
    countEstimate(counters["best lift-to-drag"], best.estimate, truth.liftToDrag);
    countEstimate(counters["speed of best"], bestSpeedEstimate(series), truth.speed);
    return;
  }
  countSide(counters["side of best speed"], answer.speedOfBestLiftToDrag, () => truth.speed);
  counters["bound on best"].count(
    Math.log(answer.bestLiftToDrag!.low!),
    Infinity,
    Math.log(truth.liftToDrag),
  );
}

/** A speed of which only the side is told. */
function countSide(counter: Counter, side: Quantity | null, truth: () => number): void {
  if (side === null || side.kind === "interval") return;
  counter.count(Math.log(side.low ?? 0), Math.log(side.high ?? Infinity), Math.log(truth()));
}

/** A constant of the law with its interval on the logarithm, `null` where it is not above zero. */
function lawInterval(
  { fit }: TowSeries,
  law: TowLaw,
  j: 0 | 2,
): { readonly log: number; readonly reach: number } | null {
  const value = j === 0 ? law.a : law.e;
  if (!(value > 0)) return null;
  const variance = law.covariance[j]![j]! / value ** 2;
  const own = fit.dataCovariance[j]![j]! / fit.parameters[j]! ** 2;
  const degreesOfFreedom = variance ** 2 / (own ** 2 / fit.degreesOfFreedom);
  return {
    log: Math.log(value),
    reach: studentTQuantile(0.975, degreesOfFreedom) * Math.sqrt(variance),
  };
}

function countConstant(
  counter: Counter,
  interval: { readonly log: number; readonly reach: number } | null,
  truth: number,
): void {
  if (interval === null) counter.cases++;
  else {
    counter.count(
      interval.log - interval.reach,
      interval.log + interval.reach,
      Math.log(truth),
    );
  }
}

function countRatio(counter: Counter, ratio: Quantity | null, truth: number): void {
  if (ratio !== null) {
    counter.count(Math.log(ratio.low!), Math.log(ratio.high!), Math.log(truth));
  }
}

function countBand(
  tally: { cases: number; claims: number; wrongClaims: number },
  { band }: TowPair,
  truth: (speed: number) => number,
): void {
  if (band === null) return;
  tally.cases++;
  const claimed = band.points.filter((one) => one.low > 0 || one.high < 0);
  if (claimed.length > 0) tally.claims++;
  const wrong = (one: typeof claimed[number]) =>
    one.low > 0 ? truth(one.speed) <= 0 : truth(one.speed) >= 0;
  if (claimed.some(wrong)) tally.wrongClaims++;
}
