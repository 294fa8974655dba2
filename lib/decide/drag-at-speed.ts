/**
 * Drag of a fitted tow by its parts at one speed, with how well each is known.
 *
 * @module
 */
import { tareLogVariance } from "../fit/tare-fit.ts";
import { towDrag } from "../fit/tow-curve.ts";
import { dragEstimate } from "../fit/tow-estimates.ts";
import { effectiveFreedom, type FreedomPart, partsKnownBy } from "../fit/tow-variance.ts";
import {
  type DragSplit,
  type PartOrigin,
  type Taken,
  type TakenName,
  takenParts,
} from "./drag-split.ts";

/** A part that is taken off, N. */
export interface TakenPart {
  readonly part: TakenName;
  readonly how: PartOrigin;
  readonly value: number;
  /** N2. */
  readonly variance: number;
  readonly degreesOfFreedom: number | null;
}

/** The parts at one speed. */
export interface DragAtSpeed {
  readonly speed: number;
  /** N of the whole craft. */
  readonly total: number;
  readonly taken: readonly TakenPart[];
  /** N: the total less what is taken. */
  readonly rest: number;
  /** N2 */
  readonly restVariance: number;
  readonly degreesOfFreedom: number | null;
  /** Drag of the rest over the full lift, the upside-down lift-to-drag, whose errors are those of a drag. */
  readonly dragToLift: {
    readonly value: number;
    readonly variance: number;
    readonly degreesOfFreedom: number | null;
  };
}

/**
 * Standard uncertainties of the parts as shares of them. Strut friction: transition alone is worth a third at these
 * Reynolds numbers. Spray: its constant is from memory, a factor of two between texts. Junction: two formulas in use differ by
 * 2.8. The rider's stands in the split. Common practice, no source.
 */
const PART_DOUBT = {
  struts: 0.4,
  spray: 0.5,
  junction: 0.6,
  other: 0.3,
} as const;

const sum = (values: readonly number[]) => values.reduce((total, one) => total + one, 0);

/**
 * The parts at one speed and the full lift.
 *
 * The wing is what remains, so that the parts add up to the whole, and every doubt about a part is a doubt about the wing.
 * Errors that a tare and the whole craft share (load cell, speed, depth) are taken off both with their signs, and mostly
 * cancel. Doubts about formulas are common to all speeds, and to designs on the same struts: between two designs they cancel,
 * so that a comparison needs no parts at all.
 *
 * @param split of a design
 * @param speed m/s
 * @returns parts with variances, or `null` where the law gives no drag there
 */
export function dragAt(split: DragSplit, speed: number): DragAtSpeed | null {
  const { series, tare, depth, depthOff, depthUncertainty } = split;
  const estimate = dragEstimate(series, speed);
  if (estimate === null) return null;
  const total = Math.exp(estimate.log);
  const here = { depth, tared: tare?.fit ?? null };
  const values = takenParts(split, speed, here);
  const deeper = takenParts(split, speed, { ...here, depth: depth + depthUncertainty });
  const valueOf = (parts: readonly Taken[], part: TakenName) =>
    parts.find((one) => one.part === part)?.value ?? 0;
  const tareVariance = tare === null ? null : tareLogVariance(tare.fit, speed);
  const ownVariances = values.map(({ part, value }) => {
    const share = part === "struts and spray"
      ? tareVariance!.data + tareVariance!.exponent
      : (part === "rider in the air" ? split.rider.doubt : PART_DOUBT[part]) ** 2;
    return share * value ** 2 + (valueOf(deeper, part) - value) ** 2;
  });
  const tareFreedom = ({ part, value }: Taken): FreedomPart[] => {
    const degreesOfFreedom = tare?.fit.degreesOfFreedom ?? null;
    return part !== "struts and spray" || degreesOfFreedom === null
      ? []
      : [{ variance: tareVariance!.data * value ** 2, degreesOfFreedom }];
  };
  const rest = total - sum(values.map((one) => one.value));
  // Shared errors, each with its sign, on the whole and on the tare. The depth of the struts is another reading when they
  // run alone, and its error an error of its own.
  const changes = series.shifts.flatMap(({ name, fits: [plus, minus], knownBy }) => {
    const off = depthOff.get(name) ?? 0;
    const [tarePlus, tareMinus] = tare?.shifts.get(name) ?? [here.tared, here.tared];
    const partsBy = (up: Partial<typeof here>, down: Partial<typeof here>) => {
      const [more, less] = [up, down].map((one) => takenParts(split, speed, { ...here, ...one }));
      return values.map(({ part }) => (valueOf(more!, part) - valueOf(less!, part)) / 2);
    };
    const whole = (towDrag(plus, speed) - towDrag(minus, speed)) / 2;
    const lift = Math.log(plus.data.craft.lift / minus.data.craft.lift) / 2;
    const change = (parts: readonly number[], total: number, lift: number) => ({
      parts,
      drag: total - sum(parts),
      lift,
      ...(knownBy === undefined ? {} : { knownBy }),
    });
    const byTare = partsBy({ tared: tarePlus }, { tared: tareMinus });
    if (off === 0) return [change(byTare, whole, lift)];
    const shallower = { depth: Math.max(0.02, depth - off) }, deeper = { depth: depth + off };
    return [change(partsBy(shallower, deeper), whole, lift), change(byTare, 0, 0)];
  });
  const taken = values.map((one, i): TakenPart => {
    const variance = ownVariances[i]! + sum(changes.map(({ parts }) => parts[i]! ** 2));
    return {
      ...one,
      variance,
      degreesOfFreedom: effectiveFreedom(variance, [
        ...tareFreedom(one),
        ...partsKnownBy(changes.map((each) => ({ ...each, change: each.parts[i]! }))),
      ]),
    };
  });
  const ownTotal = (estimate.dataVariance + estimate.planformVariance + estimate.sweepVariance) *
    total ** 2;
  const own = ownTotal + sum(ownVariances);
  const restVariance = own + sum(changes.map((one) => one.drag ** 2));
  const freedom: FreedomPart[] = [
    {
      variance: estimate.dataVariance * total ** 2,
      degreesOfFreedom: estimate.dataDegreesOfFreedom,
    },
    {
      variance: estimate.sweepVariance * total ** 2,
      degreesOfFreedom: estimate.sweepDegreesOfFreedom,
    },
    ...values.flatMap(tareFreedom),
  ];
  const { lift } = series.fit.data.craft;
  const ofRatio = changes.map((one) => ({ ...one, change: one.drag - rest * one.lift }));
  const ratioVariance = (own +
    sum(ofRatio.map(({ change }) => change ** 2))) / lift ** 2;
  return {
    speed,
    total,
    taken,
    rest,
    restVariance,
    degreesOfFreedom: effectiveFreedom(restVariance, [
      ...freedom,
      ...partsKnownBy(changes.map((one) => ({ ...one, change: one.drag }))),
    ]),
    dragToLift: {
      value: rest / lift,
      variance: ratioVariance,
      degreesOfFreedom: effectiveFreedom(
        ratioVariance,
        [...freedom, ...partsKnownBy(ofRatio)]
          .map((one) => ({ ...one, variance: one.variance / lift ** 2 })),
      ),
    },
  };
}
