/**
 * What is worth knowing about one design's drag law beside its numbers.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import { listInWords } from "../base/sentence-words.ts";
import type { DesignTow } from "../base/tow-answer.ts";
import type { SpeedRange } from "../fit/tow-curve.ts";
import type { TowSeries } from "../fit/tow-series.ts";
import type { TowedBest } from "./design-tow.ts";
import type { PreparedDesignTow } from "./tow-errors.ts";
import { sharedByAll, whatHelps } from "./tow-advice.ts";

const FILE = "tow.csv";

/** A design's fit with what it was made of. */
export interface LawFacts {
  readonly answer: DesignTow;
  readonly ready: PreparedDesignTow;
  readonly series: TowSeries;
  readonly range: SpeedRange;
  /** `null` where the law has none. */
  readonly best: TowedBest | null;
}

/** k beyond which the readings scatter more than twice what was stated. */
const WILD = 4;

/** Scatter under which readings agree suspiciously well, and from how many on that means something. */
const TAME = { within: 0.3, readings: 15 } as const;

/** Share of the variance that more readings would not touch. */
const SHARED_SHARE = 0.6;

/** Off the planform's expectation by one and a half of its doubts: share of the lift term; constant over the lift. */
const PULLED = { liftTerm: 0.3, constant: 0.018 } as const;

/**
 * Findings about one design's law.
 *
 * @param facts fit and answer
 * @returns findings
 */
export function lawFindings(facts: LawFacts): Finding[] {
  const {
    answer: { design, speedOfBestLiftToDrag: best, uncertaintyShares },
    ready,
    series,
    range,
  } = facts;
  const { fit } = series;
  const found: Finding[] = [];
  const say = (severity: "warning" | "note", code: string, what: string, wanted: string) =>
    found.push(finding({ severity, code, file: FILE, what, wanted }));
  const speeds = `${range.from.toFixed(2)} to ${range.to.toFixed(2)} m/s`;
  if (facts.best === null) {
    say(
      "warning",
      "no-best-speed",
      `The law of ${design} has no speed of least drag anywhere near ${speeds}.`,
      "Readings over a wider range of speeds.",
    );
  } else if (facts.best.where !== null) {
    say(
      "warning",
      "best-outside",
      `The best lift-to-drag of ${design} lies ${facts.best.where} the speeds towed (${speeds}): only a lower bound is told.`,
      `Tow ${facts.best.where === "below" ? "slower" : "faster"} to see the best point.`,
    );
  } else if (
    best?.low != null && best.high != null && (best.low < range.from || best.high > range.to)
  ) {
    say(
      facts.best.towed ? "note" : "warning",
      "best-near-edge",
      `The best lift-to-drag of ${design} lies near the edge of what was towed (${speeds})${
        facts.best.towed ? "" : ", maybe beyond it: its value leans on the planform"
      }.`,
      `Tow ${best.low < range.from ? "slower" : "faster"} to see the best point from both sides.`,
    );
  }
  const alone = fit.withoutPlanform;
  if (alone === null || !(alone[0] > 0 && alone[2] > 0)) {
    say(
      "warning",
      "leans-on-planform",
      `The readings of ${design} show no least drag by themselves: the curve leans on the planform alone.`,
      "Readings over a wider range of speeds.",
    );
  }
  if (fit.scatterScale > WILD) {
    say(
      "warning",
      "wild-scatter",
      `Readings of ${design} scatter ${
        Math.sqrt(fit.scatterScale).toFixed(1)
      } times as much as stated; the intervals are widened by it.`,
      "Look for waves, wake or gusts; state the uncertainty of single readings in instruments.csv.",
    );
  }
  if (fit.within < TAME.within && fit.data.readings.length >= TAME.readings) {
    say(
      "note",
      "tame-scatter",
      `Readings of ${design} agree better than stated: rounded, copied, or stated too wide?`,
      "The uncertainty of single readings in instruments.csv.",
    );
  }
  const { readings } = fit.data;
  if (new Set(readings.map((one) => one.block)).size === 1) {
    say(
      "note",
      "single-sweep",
      `${design} was towed in one sweep: what that one had of its own (wake, chop, trim) is not in the interval.`,
      "Two sweeps or more, named in the column sweep.",
    );
  }
  if (new Set(readings.map((one) => one.group)).size === readings.length) {
    say(
      "note",
      "no-repeats",
      `No speed of ${design} was repeated: scatter and a curve of the wrong shape can't be told apart.`,
      "Each speed twice.",
    );
  }
  const { constant, liftTerm } = ready.prior.towed;
  const pulledLift = Math.abs(
    fit.parameters[2] * fit.referenceSpeed ** 2 / liftTerm.mean - 1,
  );
  const pulledConstant = Math.abs(fit.parameters[1] - constant.mean) / fit.data.craft.lift;
  if (ready.depthKnown && (pulledLift > PULLED.liftTerm || pulledConstant > PULLED.constant)) {
    say(
      "warning",
      "pulls-from-planform",
      `The readings of ${design} pull the law away from its planform.`,
      "Look at span, area, depth and mass.",
    );
  }
  if (!ready.depthKnown) {
    say(
      "warning",
      "depth-unknown",
      `No depth is given for ${design}: 0.4 m stands in, and no lift drag factor K is told.`,
      "Depth of the wing in tow.csv, or running_depth in conditions.csv.",
    );
  }
  const shared = sharedByAll(uncertaintyShares);
  const sum = shared.reduce((total, one) => total + one.share, 0);
  if (sum > SHARED_SHARE) {
    const largest = [...shared].sort((one, other) => other.share - one.share)[0]!;
    const helps = listInWords(whatHelps(shared));
    say(
      "note",
      "more-points-no-help",
      `More readings of ${design} will not help: ${
        (sum * 100).toFixed(0)
      } % of the variance is shared by all of them, most of it from ${largest.source}.`,
      `${helps.charAt(0).toUpperCase()}${helps.slice(1)}.`,
    );
  }
  return found;
}
