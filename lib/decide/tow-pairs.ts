/**
 * Towed designs against their baseline: ratio of the best, band of the drag, and what the day may have done.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import type { TowComparison } from "../base/tow-answer.ts";
import { compareDrag, type DragComparison } from "../fit/tow-band.ts";
import { ratioVariance } from "../fit/tow-variance.ts";
import type { TowedDesign } from "./design-tow.ts";
import { towQuantity } from "./tow-quantity.ts";
import { alternated, type PreparedTow } from "./tow-readings.ts";
import { seenFromElsewhere, sharedBetween } from "./tow-sessions.ts";

/** Two designs compared, with the band behind the answer. */
export interface TowPair {
  readonly answer: TowComparison;
  /** `null` where a law is missing, or no speed is common to both. */
  readonly band: DragComparison | null;
  /** True where both took turns behind the boat. */
  readonly alternated: boolean;
  /** True where each was towed in a session of its own. */
  readonly apart: boolean;
}

/**
 * Standard uncertainty, as a share of the drag, of what a day does to one design alone (wake, chop, trim) where designs did
 * not take turns. Assumed, not measured.
 */
const DAY = 0.02;
/** A design in its session. */
export interface TowedEntry {
  readonly towed: TowedDesign;
  readonly prepared: PreparedTow;
}

/**
 * Every candidate against the baseline of its own session, or else the first one.
 *
 * @param entries designs in their sessions
 * @param baseline name of the baseline
 * @returns one pair a candidate that was towed; none where the baseline was not
 */
export function comparePairs(
  entries: readonly TowedEntry[],
  baseline: string | undefined,
): TowPair[] {
  const readings = entries.filter((one) => one.towed.answer.points.length > 0);
  const base = readings.filter((one) => one.towed.answer.design === baseline);
  if (base.length === 0) return [];
  const candidates = readings.filter((one) => !base.includes(one));
  return candidates.map((other) => {
    const { session } = other.prepared;
    const against = base.find((one) => one.prepared.session === session) ?? base[0]!;
    const apart = against.prepared.session !== session;
    const seen = apart
      ? seenFromElsewhere(other.towed, sharedBetween(against.prepared.session, session))
      : other.towed;
    return comparePair(against.towed, seen, {
      apart,
      turns: !apart &&
        alternated(other.prepared, [against.towed.answer.design, other.towed.answer.design]),
      count: candidates.length,
    });
  });
}

/**
 * One candidate against the baseline.
 *
 * @param baseline a design
 * @param candidate another
 * @param options `apart`: towed in different sessions; `turns`: sweep by sweep in turn; `count`: comparisons that shall all
 *   hold at once
 * @returns the pair
 */
export function comparePair(
  baseline: TowedDesign,
  candidate: TowedDesign,
  { apart, turns, count }: {
    readonly apart: boolean;
    readonly turns: boolean;
    readonly count: number;
  },
): TowPair {
  const names = {
    baseline: baseline.answer.design,
    candidate: candidate.answer.design,
    baselineSession: baseline.answer.session,
    candidateSession: candidate.answer.session,
  };
  const dayShare = turns ? 0 : DAY;
  const [one, two] = [baseline.best, candidate.best];
  const inside = one !== null && two !== null && one.where === null && two.where === null;
  const bestLiftToDragRatio = !inside ? null : towQuantity(
    ratioVariance(one.estimate, two.estimate, {
      alternated: turns,
      dayVariance: 2 * dayShare ** 2,
    }),
    "1",
    count,
  );
  const band = bandOf(baseline, candidate, { dayShare, comparisons: count });
  return {
    answer: {
      ...names,
      bestLiftToDragRatio,
      candidateLessDrag: band?.candidateLess ?? [],
      candidateMoreDrag: band?.candidateMore ?? [],
      jointTest: band === null ? null : { ...band.jointTest, numerator: 3 },
      family: count > 1 ? "joint" : "pointwise",
    },
    band,
    alternated: turns,
    apart,
  };
}

function bandOf(
  baseline: TowedDesign,
  candidate: TowedDesign,
  options: { readonly dayShare: number; readonly comparisons: number },
): DragComparison | null {
  if (baseline.series === null || candidate.series === null) return null;
  const range = {
    from: Math.max(baseline.range!.from, candidate.range!.from),
    to: Math.min(baseline.range!.to, candidate.range!.to),
  };
  if (!(range.to > range.from)) return null;
  const band = compareDrag(baseline.series, candidate.series, { range, ...options });
  return band.ok ? band : null;
}

/**
 * What is worth knowing about a pair.
 *
 * @param pair compared
 * @returns findings
 */
export function pairFindings({ answer, band, alternated, apart }: TowPair): Finding[] {
  const { baseline, candidate } = answer;
  const found: Finding[] = [];
  if (band === null) {
    found.push(finding({
      severity: "warning",
      code: "no-comparison",
      file: "tow.csv",
      what: `${baseline} and ${candidate} are not compared: both need a law, and speeds in common.`,
    }));
  } else if (!alternated) {
    found.push(finding({
      severity: "warning",
      code: "not-alternated",
      file: "tow.csv",
      what: `${baseline} and ${candidate} ${
        apart ? "were towed in different sessions" : "did not take turns behind the boat"
      }, so the day may be the difference: ${
        DAY * 100
      } % of each drag is allowed for that, and a claim under 6 % is out of reach.`,
      wanted: "Designs in turn, sweep by sweep.",
    }));
  }
  return found;
}
