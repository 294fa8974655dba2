/**
 * Two designs' takeoffs against each other: what they share cancels.
 *
 * @module
 */
import type { Quantity } from "../base/quantity.ts";
import type { TakeoffComparison } from "../base/takeoff-answer.ts";
import type { MediumResult } from "../fit/takeoff-numbers.ts";
import type { SteadyCraft } from "../model/steady-craft.ts";
import type { TakeoffDesign } from "./design-takeoff.ts";
import { quantityFromLog } from "./log-quantity.ts";

/** Inputs that are each design's own: an error in one tells nothing of the other. */
const OWN: readonly (keyof SteadyCraft)[] = ["area", "span", "wingVolume", "extraDragArea"];

/**
 * How much of the doubt about the largest lift coefficient two wings of one builder share: judgement. The same hands, the same kind of
 * section and the same finish make it alike; bumps and tips do not.
 */
const LIFT_SHARED = 0.5;

function sharedPart(key: keyof SteadyCraft): number {
  return OWN.includes(key) ? 0 : key === "largestLiftCoefficient" ? LIFT_SHARED : 1;
}

/** Candidate over baseline; `null` where one has no first order. */
function ratioOf(
  baseline: TakeoffDesign,
  candidate: TakeoffDesign,
  result: MediumResult,
  value: (one: TakeoffDesign) => Quantity | null,
): Quantity | null {
  const [from, to] = [value(baseline), value(candidate)];
  if (baseline.changes === null || candidate.changes === null || from === null || to === null) {
    return null;
  }
  const changesOf = ({ prepared, changes }: TakeoffDesign) =>
    new Map(prepared.doubts.map(({ key }, i) => [key, changes![result][i]!]));
  const [one, other] = [changesOf(baseline), changesOf(candidate)];
  let variance = 0;
  for (const key of new Set([...one.keys(), ...other.keys()])) {
    const [a, b] = [one.get(key) ?? 0, other.get(key) ?? 0];
    variance += a * a + b * b - 2 * sharedPart(key) * a * b;
  }
  return quantityFromLog({
    log: Math.log(to.value / from.value),
    variance: Math.max(0, variance),
    degreesOfFreedom: null,
    unit: "1",
  });
}

/**
 * Each design against the first: ratios of takeoff speed, tow force there, least drag and least power.
 *
 * The intervals of two designs overlap widely, since most of their doubt is shared: load, water, rider, the formulas themselves. In a
 * ratio that part cancels. Shared: everything but area, span, wet volume and extra drag area; of the largest lift coefficient half.
 *
 * Source: JCGM 102:2011, clause 6.2, in logarithms.
 *
 * @param designs that fly or not, in order; the first that flies is the baseline
 * @returns one comparison for each other design that flies
 */
export function compareTakeoffs(designs: readonly TakeoffDesign[]): TakeoffComparison[] {
  const [baseline, ...others] = designs.filter((one) => one.answer.takeoffSpeed !== null);
  if (baseline === undefined) return [];
  return others.map((candidate) => {
    const ratio = (result: MediumResult, value: (one: TakeoffDesign) => Quantity | null) =>
      ratioOf(baseline, candidate, result, value);
    return {
      baseline: baseline.answer.design,
      candidate: candidate.answer.design,
      takeoffSpeedRatio: ratio("takeoffSpeed", (one) => one.answer.takeoffSpeed),
      towForceRatio: ratio("towForceAtTakeoff", (one) => one.answer.towForceAtTakeoff),
      leastDragRatio: ratio("leastDrag", (one) => one.answer.leastDrag),
      leastPowerRatio: ratio("leastPower", (one) => one.answer.leastPower),
    };
  });
}
