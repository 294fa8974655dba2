/**
 * What towed designs showed, in sentences that the terminal and the page share.
 *
 * There is no sentence for "no difference": readings can fail to show one, they can't show that there is none.
 *
 * @module
 */
import { atSentenceStart } from "../base/sentence-words.ts";
import { printable } from "../base/printable.ts";
import type { Quantity } from "../base/quantity.ts";
import {
  formatInterval,
  formatNumber,
  formatPercent,
  formatProbability,
  formatQuantity,
  NO_BREAK_SPACE,
} from "../base/rounding.ts";
import type { DesignTow, TowComparison } from "../base/tow-answer.ts";
import type { TowLiftCurve } from "../base/tow-views.ts";

/** What the numbers in brackets are, and whose drag it is. */
export const TOW_INTERVAL =
  "In brackets stands the 95 % interval: in about 95 of 100 sessions like this one it holds the true value. Drag and " +
  "lift-to-drag are those of the whole craft: wing, struts, spray and the rider in the air.";

/** What can hurt, and what a good tow does not show. */
export const TOW_CAUTION =
  "Towing can hurt: a line under load whips back, and a foil cuts. Keep a quick release and a lookout, and follow local " +
  "rules and what licensed boat handlers say. A wing that tows well has not been shown to hold.";

type Stretches = TowComparison["candidateLessDrag"];

const stretches = (ranges: Stretches) =>
  ranges.map(([from, to]) => {
    const [low, high] = [from.toFixed(2), to.toFixed(2)];
    return low === high ? `at ${low}` : `from ${low} to ${high}`;
  }).join(" and ") + `${NO_BREAK_SPACE}m/s`;

/**
 * The bottom line of one comparison: where the candidate drags less or more.
 *
 * @param one as decided
 * @returns one sentence; "cannot tell yet" where no stretch of speeds is a claim
 */
export function towHeadline(one: TowComparison): string {
  const [candidate, baseline] = [printable(one.candidate), printable(one.baseline)];
  const { candidateLessDrag: less, candidateMoreDrag: more, jointTest } = one;
  if (jointTest === null) return `${atSentenceStart(candidate)} and ${baseline} can't be compared.`;
  if (less.length + more.length === 0) {
    return `Cannot tell yet which of ${candidate} and ${baseline} drags less, at any speed towed.`;
  }
  const parts = [
    ...(less.length > 0 ? [`drags less than ${baseline} ${stretches(less)}`] : []),
    ...(more.length > 0
      ? [`${less.length > 0 ? "more" : `drags more than ${baseline}`} ${stretches(more)}`]
      : []),
  ];
  return `${atSentenceStart(candidate)} ${parts.join(", ")}; elsewhere these readings cannot tell.`;
}

/**
 * How often chance alone would part two designs so far.
 *
 * @param one as decided
 * @returns one sentence; empty where nothing was tested
 */
export function towChanceSentence({ jointTest }: TowComparison): string {
  return jointTest === null
    ? ""
    : `If both were alike, chance would part them this far in ${
      formatProbability(jointTest.pValue)
    } of such sessions.`;
}

/**
 * Ratio of the best lift-to-drag, or why there is none.
 *
 * @param one as decided
 * @returns one sentence; empty where the designs can't be compared at all
 */
export function towRatioSentence(one: TowComparison): string {
  const { bestLiftToDragRatio: ratio, jointTest } = one;
  if (jointTest === null) return "";
  if (ratio === null) {
    return "Their best lift-to-drag is not compared: one of the two best speeds was not towed.";
  }
  return `Best lift-to-drag of ${printable(one.candidate)} over that of ${
    printable(one.baseline)
  }: ${formatQuantity(ratio, { apartFrom: 1 })} (${formatInterval(ratio, { apartFrom: 1 })}).`;
}

/**
 * One comparison in words: where the candidate drags less or more, and the ratio of the best.
 *
 * @param one as decided
 * @returns one to three sentences
 */
export function towComparisonSentence(one: TowComparison): string {
  return [towHeadline(one), towChanceSentence(one), towRatioSentence(one)]
    .filter((sentence) => sentence !== "").join(" ");
}

/**
 * A quantity with its interval, or the one end that is known.
 *
 * @param q any unit
 * @returns for instance "14.2 (13.5 to 14.9)", or "at least 13.5"
 */
export function valueWithInterval(q: Quantity): string {
  return q.kind === "interval" && q.low !== null && q.high !== null
    ? `${formatQuantity(q)} (${formatInterval(q, { unit: false })})`
    : formatInterval(q);
}

/**
 * What one design can do: its best lift-to-drag and where, as far as the speeds towed tell.
 *
 * @param one a design's answer
 * @returns one or two sentences
 */
export function bestSentence(one: DesignTow): string {
  const { bestLiftToDrag: best, speedOfBestLiftToDrag: speed } = one;
  const design = printable(one.design);
  if (one.law === null && one.points.length === 0) return `${design}: not towed.`;
  if (one.law === null) return `${design}: these readings carry no drag law.`;
  if (best === null || speed === null) {
    return `${design}: its drag shows no best speed between half the slowest and twice the fastest speed towed.`;
  }
  if (best.kind === "interval") {
    return `${design}: best lift-to-drag ${valueWithInterval(best)}, at ${
      valueWithInterval(speed)
    }${beyondWords(speed.value, one.law)}.`;
  }
  const where = speed.kind === "atMost" ? "slower" : "faster";
  return `${design}: best lift-to-drag ${
    formatInterval(best)
  }; its best speed was not towed, it is ${where} (${formatInterval(speed)}).`;
}

/** What to add where the best speed itself was not towed, though its interval reaches into what was. */
function beyondWords(speed: number, { from, to }: { readonly from: number; readonly to: number }) {
  return speed >= from && speed <= to
    ? ""
    : `; that is ${speed < from ? "slower" : "faster"} than was towed, so it leans on the planform`;
}

/**
 * The largest parts of a design's doubt.
 *
 * @param one a design's answer
 * @returns one sentence; empty where there are none
 */
export function doubtSentence(one: DesignTow): string {
  const largest = [...one.uncertaintyShares].sort((a, b) => b.share - a.share)
    .slice(0, 3).filter(({ share }) => share > 0.05);
  if (largest.length === 0) return "";
  return `Where the doubt about ${printable(one.design)} comes from: ${
    largest.map(({ source, share }) => `${source} ${formatPercent(share)}`).join(", ")
  }.`;
}

/**
 * The law in numbers, with the lift it holds at.
 *
 * @param one a design's answer
 * @returns two sentences; empty where there is no law
 */
export function lawSentence({ design, law }: DesignTow): string {
  if (law === null) return "";
  const u = [0, 1, 2].map((i) => Math.sqrt(law.covariance[i]![i]!));
  const shown = (value: number, i: number) =>
    formatQuantity({
      value,
      standardUncertainty: u[i]!,
      degreesOfFreedom: null,
      low: null,
      high: null,
      level: 0.95,
      kind: "interval",
      unit: "1",
    });
  return `Law of ${printable(design)} from ${law.from.toFixed(2)} to ${
    law.to.toFixed(2)
  } m/s at a lift of ${formatNumber(law.lift, 0)} N: drag = a v² + d + e φ/v² with a = ${
    shown(law.a, 0)
  }, d = ${shown(law.d, 1)}, e = ${
    shown(law.e, 2)
  } in N, m and s (φ: water surface). Constants of this law over these speeds, not physics.`;
}

const DEGREE = Math.PI / 180;

/**
 * One design's lift curve in a sentence.
 *
 * @param design its name
 * @param curve its lift curve
 * @returns slope a degree with its interval, what is expected from the planform, and the pitch of no lift
 */
export function liftCurveSentence(design: string, curve: TowLiftCurve): string {
  const degrees = {
    ...curve.zeroLiftPitch,
    value: curve.zeroLiftPitch.value / DEGREE,
    standardUncertainty: curve.zeroLiftPitch.standardUncertainty! / DEGREE,
    low: curve.zeroLiftPitch.low! / DEGREE,
    high: curve.zeroLiftPitch.high! / DEGREE,
    unit: "degrees",
  };
  return `${atSentenceStart(printable(design))} gains ${
    valueWithInterval({ ...curve.slopePerDegree, unit: "1" })
  } of lift coefficient a degree, against ${
    formatNumber(curve.expectedSlope.value * DEGREE, 3)
  } expected from its planform; it lifts nothing at ${valueWithInterval(degrees)}.`;
}
