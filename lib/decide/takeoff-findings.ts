/**
 * What is worth knowing about a design's takeoff: loads that nothing lifts, and where the model stops.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import { printable } from "../base/printable.ts";
import { atSentenceStart } from "../base/sentence-words.ts";
import type { DesignTakeoff, TakeoffOutcome } from "../base/takeoff-answer.ts";
import type { MediumNumbers, TakeoffNumbers } from "../fit/takeoff-numbers.ts";
import { flightInWater, type SteadyCraft } from "../model/steady-craft.ts";
import type { PreparedTakeoff } from "./takeoff-craft.ts";
import type { TakeoffOptions } from "./takeoff-setting.ts";

const FILE = "designs.csv";

/** m/s: faster, no tow of this kind goes. */
export const FASTEST = 9;

/** Below this Reynolds number bubbles of laminar flow cost what no smooth friction line knows. */
const LEAST_REYNOLDS = 2e5;

/** Depth over chord under which lift is lost to the surface, and under which the flow may leave the upper side. */
const SHALLOW = 2, DRAWN = 1;

/** Steepness of the wing's own waves above which they are no longer small; they break near 0.14 (from memory). */
const STEEP = 0.08;

/** Cavitation number below which boiling is worth a thought. */
const BOILING = 2;

/**
 * Why a design does not take off, or only beyond what is asked of it.
 *
 * @param prepared the design
 * @param outcome in a word
 * @param numbers of it
 * @param options N that the tow can pull, or W that it can give
 * @returns findings
 */
export function outcomeFindings(
  { craft, spec }: PreparedTakeoff,
  outcome: TakeoffOutcome,
  numbers: TakeoffNumbers,
  { pull, power }: Pick<TakeoffOptions, "pull" | "power">,
): Finding[] {
  const name = printable(spec.design);
  const mass = `${craft.mass.toFixed(0)} kg`;
  const common = { file: FILE, row: spec.row } as const;
  if (outcome === "floats") {
    return [finding({
      ...common,
      severity: "error",
      code: "floats",
      column: "wet_volume",
      what: `${
        atSentenceStart(name)
      } floats under ${mass}: the water that it pushes aside weighs more than the load.`,
      wanted: "The volume under water in litres, and the mass of all that flies.",
    })];
  }
  if (!numbers.ok) {
    return [finding({
      ...common,
      severity: "error",
      code: "no-speed-lifts",
      what: numbers.reason === "hangs"
        ? `The line carries ${name} at any speed: it hangs, it does not fly.`
        : `No speed lifts ${mass} on ${name}: the line pulls down more than the wing lifts.`,
      wanted: "A line that runs nearer to level.",
    })];
  }
  if (outcome === "beyond-range") {
    return [finding({
      ...common,
      severity: "error",
      code: "load-too-large",
      column: "area",
      what: `${atSentenceStart(name)} would lift ${mass} only at ${
        numbers.takeoffSpeed.toFixed(1)
      } m/s: nothing tows that fast, so nothing lifts this load on this area.`,
      wanted: "The area in m2 and the mass in kg.",
    })];
  }
  if (outcome === "beyond-tow") {
    return [finding({
      ...common,
      severity: "warning",
      code: "beyond-tow",
      what: `${atSentenceStart(name)} needs ${
        pull !== undefined
          ? `${numbers.towForceAtTakeoff.toFixed(0)} N to take off; the tow gives ${
            pull.toFixed(0)
          } N`
          : `${takeoffPower(numbers, craft).toFixed(0)} W to take off; the tow gives ${
            power!.toFixed(0)
          } W`
      }.`,
    })];
  }
  return [];
}

/**
 * Power of the pull right at takeoff.
 *
 * @param numbers of a design that takes off
 * @param craft whose line
 * @returns W
 */
export function takeoffPower(
  { towForceAtTakeoff, takeoffSpeed }: {
    readonly towForceAtTakeoff: number;
    readonly takeoffSpeed: number;
  },
  { lineAngle }: Pick<SteadyCraft, "lineAngle">,
): number {
  return towForceAtTakeoff * Math.cos(lineAngle) * takeoffSpeed;
}

/**
 * Where the model stops for this design.
 *
 * @param prepared the design
 * @param numbers of it
 * @param answer of it
 * @returns findings
 */
export function flightFindings(
  { craft, spec }: {
    readonly craft: SteadyCraft;
    readonly spec: { readonly design: string; readonly row: number };
  },
  numbers: Pick<MediumNumbers, "reynoldsNumber" | "stallSpeed">,
  answer: Pick<DesignTakeoff, "cavitationNumber">,
): Finding[] {
  const name = printable(spec.design);
  const chord = craft.area / craft.span;
  const found: Finding[] = [];
  const warn = (code: string, what: string, wanted?: string) =>
    found.push(finding({
      severity: "warning",
      code,
      file: FILE,
      row: spec.row,
      what,
      ...(wanted === undefined ? {} : { wanted }),
    }));
  if (numbers.reynoldsNumber < LEAST_REYNOLDS) {
    warn(
      "low-reynolds",
      `${atSentenceStart(name)} takes off at a Reynolds number of ${
        (numbers.reynoldsNumber / 1e5).toFixed(1)
      }e5: below 2e5 the flow may part and close again, which costs drag that is not in these numbers.`,
    );
  }
  const shallow = craft.runningDepth / chord;
  if (shallow < SHALLOW) {
    warn(
      "near-the-surface",
      `${atSentenceStart(name)} runs ${
        shallow.toFixed(1)
      } chords below the surface: nearer than two chords lift is lost, ` +
        `and its speeds here are too low${
          shallow < DRAWN ? "; and they hold only if it does not draw air" : ""
        }.`,
      "A greater running depth.",
    );
  }
  const state = flightInWater(craft).at(numbers.stallSpeed);
  const squared = numbers.stallSpeed ** 2;
  const steepness = state === null ? 0 : state.liftCoefficient * chord * craft.gravity *
    Math.exp(-craft.gravity * craft.runningDepth / squared) / (Math.PI * squared);
  if (steepness > STEEP) {
    warn(
      "steep-waves",
      `${atSentenceStart(name)} makes waves of steepness ${
        steepness.toFixed(2)
      } at its stall speed: the waves of the model are ` +
        "small ones, and its drag there is a rough guess.",
    );
  }
  if (answer.cavitationNumber !== null && answer.cavitationNumber < BOILING) {
    warn(
      "cavitation",
      `At its least-drag speed the cavitation number of ${name} is ${
        answer.cavitationNumber.toFixed(1)
      }: water may boil off the wing.`,
    );
  }
  return found;
}
