/**
 * When drag and lift do not fit the wing at all: the unit that would explain it.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import type { PlanformPrior } from "../fit/planform-prior.ts";
import { type TowData, towedDrag, towedLift } from "../fit/tow-data.ts";
import { linearLeastSquares } from "../numeric/linear-least-squares.ts";

/** Both terms of a law without a constant over what the planform lets expect. */
export interface TermRatios {
  /** Of `a`, 1. */
  readonly friction: number;
  /** Of `e`, 1. */
  readonly liftTerm: number;
}

/** Where the lift term of right readings lies. Simulated: outside in less than 3 of 10,000 tows. */
const USUAL = { low: 0.4, high: 1.8 } as const;

/** Readings taken as one unit though they are in another; `factor` is what the numbers are too large by. */
interface Slip {
  readonly column: "line_tension" | "speed" | "carried_mass";
  readonly factor: number;
  /** Unit of the numbers, and unit that they were taken in. */
  readonly is: string;
  readonly taken: string;
}

const both = (column: Slip["column"], unit: string, si: string, factor: number): Slip[] => [
  // In `unit`, taken as SI; and in SI under a header that says `unit`.
  { column, factor: 1 / factor, is: unit, taken: si },
  { column, factor, is: si, taken: unit },
];

const SLIPS: readonly Slip[] = [
  ...both("line_tension", "kgf", "N", 9.80665),
  ...both("line_tension", "lbf", "N", 4.4482),
  ...both("speed", "kn", "m/s", 0.51444),
  ...both("speed", "km/h", "m/s", 1 / 3.6),
  ...both("speed", "mph", "m/s", 0.44704),
  ...both("carried_mass", "lb", "kg", 0.45359),
];

/** How far ln of both terms may be from a slip's own and still be put down to it. */
const NEAR = { friction: 0.55, liftTerm: 0.45 } as const;

/**
 * Both terms of the law that fits best without a constant, over the planform's.
 *
 * This fit has one use: with two terms a wrong unit can't hide in the third.
 *
 * @param data readings and craft
 * @param prior what the planform lets expect
 * @returns ratios, or `null` where two terms can't be told apart or one comes out below zero
 */
export function termRatios(data: TowData, prior: PlanformPrior): TermRatios | null {
  const { readings, craft } = data;
  const drag = readings.map(towedDrag);
  if (!drag.every((one) => one > 0)) return null;
  const fit = linearLeastSquares({
    columns: [
      readings.map((one) => one.speed ** 2),
      readings.map((one) => craft.phi(one.speed) * (towedLift(one) / craft.lift / one.speed) ** 2),
    ],
    observed: drag,
    uncertainties: drag.map((one) => 0.02 * one),
  });
  if (!fit.ok) return null;
  const [a, e] = fit.parameters;
  return { friction: a! / prior.law.a, liftTerm: e! / prior.law.e };
}

/**
 * The finding that a unit has slipped, if one has.
 *
 * @param design its name
 * @param ratios of both terms
 * @returns an error that names the likeliest unit where one fits, or `null` where drag and lift fit the wing
 */
export function unitSlip(design: string, ratios: TermRatios): Finding | null {
  const { friction, liftTerm } = ratios;
  if (liftTerm >= USUAL.low && liftTerm <= USUAL.high) return null;
  const far = (slip: Slip): number => {
    if (!(friction > 0 && liftTerm > 0)) return Infinity;
    const f = Math.log(slip.factor);
    const expected = slip.column === "line_tension"
      ? { friction: f, liftTerm: f }
      : slip.column === "speed"
      ? { friction: -2 * f, liftTerm: 2 * f }
      : { friction: 0, liftTerm: -2 * f };
    return Math.hypot(
      (Math.log(friction) - expected.friction) / NEAR.friction,
      (Math.log(liftTerm) - expected.liftTerm) / NEAR.liftTerm,
    );
  };
  const [nearest] = [...SLIPS].sort((one, other) => far(one) - far(other));
  const likely = nearest !== undefined && far(nearest) < 1.5 ? nearest : null;
  return finding({
    severity: "error",
    code: "unit-slip",
    file: "tow.csv",
    column: likely?.column ?? null,
    what: `Drag and lift of ${design} do not fit this wing: its drag due to lift is ${
      Number(liftTerm.toPrecision(2))
    } times what its planform gives. Are tension, speed and mass in N, m/s and kg?`,
    wanted: likely === null
      ? "Look at the units of tow.csv, and at span and area in designs.csv."
      : `Are the numbers of ${likely.column} in ${likely.is}, not in ${likely.taken}? Then write ` +
        `${likely.column} [${likely.is}] at the head of the column.`,
  });
}
