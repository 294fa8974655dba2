/**
 * Tows written down in a wrong unit: how often the answer says so, and names the unit.
 *
 * @module
 */
import type { TowPoint } from "../../base/session.ts";
import { compareTows } from "../../decide/compare-tows.ts";
import { seededRandom } from "../../numeric/random.ts";
import { drawTowSession } from "./invented-tow-session.ts";
import { towCellName, type TowKind } from "./tow-kind.ts";

/** A slip of the pen. */
export interface UnitSlip {
  readonly words: string;
  /** The unit that the answer should name. */
  readonly unit: string;
  readonly column: string;
  readonly slipped: (point: TowPoint) => TowPoint;
}

const tension = (words: string, unit: string, newtons: number): UnitSlip => ({
  words,
  unit,
  column: "line_tension",
  slipped: (one) => ({ ...one, lineTension: one.lineTension! / newtons }),
});

const speed = (words: string, unit: string, metresASecond: number): UnitSlip => ({
  words,
  unit,
  column: "speed",
  slipped: (one) => ({
    ...one,
    speed: one.speed! / metresASecond,
    setSpeed: one.setSpeed! / metresASecond,
  }),
});

/** Slips that people make. */
export const UNIT_SLIPS: readonly UnitSlip[] = [
  tension("pull in kilograms-force read as newtons", "kgf", 9.80665),
  tension("pull in pounds-force read as newtons", "lbf", 4.4482216),
  speed("speed in knots read as m/s", "kn", 1852 / 3600),
  speed("speed in km/h read as m/s", "km/h", 1 / 3.6),
  speed("speed in miles an hour read as m/s", "mph", 0.44704),
  {
    words: "mass in pounds read as kilograms",
    unit: "lb",
    column: "carried_mass",
    slipped: (one) => ({ ...one, carriedMass: one.carriedMass! / 0.45359237 }),
  },
];

/** Counts of one slip in one cell, in designs. */
export interface SlipResult extends TowKind {
  readonly slip: UnitSlip;
  readonly designs: number;
  /** No law, and an error that says why. */
  readonly refused: number;
  /** Of these: the right column and unit named. */
  readonly named: number;
}

/**
 * Runs one slip over invented sessions.
 *
 * @param kind of session
 * @param slip in every reading
 * @param sessions how many
 * @returns counts
 */
export function runSlip(kind: TowKind, slip: UnitSlip, sessions: number): SlipResult {
  const random = seededRandom(`slips of tows: ${towCellName(kind)}`);
  let designs = 0, refused = 0, named = 0;
  for (let i = 0; i < sessions; i++) {
    const { session } = drawTowSession(kind, random);
    const slipped = { ...session, tow: session.tow.map(slip.slipped) };
    const evidence = compareTows(slipped);
    for (const { answer, findings } of evidence.designs) {
      designs++;
      // An error about all tables stands with the answer, one about a design with the design.
      const errors = [...findings, ...evidence.answer.findings].filter((one) =>
        one.severity === "error"
      );
      if (answer.law !== null || errors.length === 0) continue;
      refused++;
      const right = errors.some((one) =>
        one.code === "unit-slip" && one.column === slip.column &&
        one.wanted?.includes(` ${slip.unit},`)
      );
      if (right) named++;
    }
  }
  return { ...kind, slip, designs, refused, named };
}
