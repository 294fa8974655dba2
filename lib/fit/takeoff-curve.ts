/**
 * Speeds, tow force and power of a craft with first-order intervals: quick enough to follow a hand that moves a control.
 *
 * @module
 */
import { type Dip, dips, type Least, scanSpeeds } from "../model/steady-dips.ts";
import { flightInWater, type SteadyCraft, type SteadyFlight } from "../model/steady-craft.ts";
import { slowestSpeed } from "../model/steady-speeds.ts";
import { type PhiOf, sharedPhi } from "./shared-phi.ts";
import { NORMAL_95, takeoffBand } from "./takeoff-band.ts";
import { type Doubt, movedCraft } from "./takeoff-doubts.ts";

/** A value with the ends of its first-order 95 % interval. */
export interface FirstOrderValue {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** One speed of a curve. */
export interface TakeoffCurvePoint {
  /** m/s */
  readonly speed: number;
  /** N along the line. */
  readonly force: FirstOrderValue;
  /** W */
  readonly power: FirstOrderValue;
}

/** The least of drag or power over speed. */
export interface TakeoffLeast {
  /** m/s */
  readonly speed: FirstOrderValue;
  /** N or W */
  readonly value: FirstOrderValue;
  /** True where slower would need still less, and does not fly. */
  readonly atStall: boolean;
}

/** A craft that flies, or why it does not. */
export type TakeoffCurve =
  | {
    readonly ok: true;
    /** m/s at running depth. */
    readonly stallSpeed: FirstOrderValue;
    /** m/s with the board just clear. */
    readonly takeoffSpeed: FirstOrderValue;
    /** N */
    readonly towForceAtTakeoff: FirstOrderValue;
    readonly leastDrag: TakeoffLeast;
    readonly leastPower: TakeoffLeast;
    /** At running depth, from the stall speed up. */
    readonly curve: readonly TakeoffCurvePoint[];
  }
  | {
    readonly ok: false;
    /** `edge`: it flies, but a fiftieth of one input's doubt is enough that it would not. */
    readonly reason: "floats" | "no-speed" | "hangs" | "edge";
  };

/** Step of the central difference, in standard uncertainties. */
const STEP = 0.02;

/** Speeds of a curve, and how far it goes, in stall speeds. */
const POINTS = 61, REACH = 2.2;

/** Points of the scan for the least; the dips of foils are broad. */
const SCAN = 60;

/** Share of the speed between the three points that place a moved least. */
const SPREAD = 0.01;

/** What is computed for a craft and for each of its moved twins, in one order; all above zero. */
interface Numbers {
  readonly stall: number;
  readonly takeoff: number;
  readonly tension: number;
  /** Speed and value. */
  readonly drag: readonly [number, number];
  readonly power: readonly [number, number];
}

/** What is told the least of. */
type Told = Exclude<Least, "wingDragOverLift">;

interface Slow {
  readonly running: SteadyFlight;
  readonly stall: number;
  readonly takeoff: number;
  readonly tension: number;
}

function slowOf(craft: SteadyCraft, phiOf: PhiOf): Slow | "floats" | "none" | "hangs" {
  const flight = (depth: number) => flightInWater(craft, depth, phiOf(craft, depth));
  const running = flight(craft.runningDepth);
  const rising = flight(craft.takeoffDepth);
  const slow = slowestSpeed(running);
  if (slow.kind !== "speed") return slow.kind;
  const off = slowestSpeed(rising, craft.usableShare);
  if (off.kind !== "speed") return off.kind;
  const { tension } = rising.at(off.speed)!;
  return { running, stall: slow.speed, takeoff: off.speed, tension };
}

/** Where the least lies for a moved craft: through three points about the place for the unmoved one. */
function movedLeast({ running, stall }: Slow, of: Told, dip: Dip): readonly [number, number] {
  const value = (speed: number) => running.at(speed)?.[of] ?? NaN;
  if (dip.atStall) return [stall, value(stall)];
  const [slower, here, faster] = [1 - SPREAD, 1, 1 + SPREAD].map((one) => value(one * dip.speed));
  const bend = slower! - 2 * here! + faster!;
  const shift = (slower! - faster!) / (2 * bend);
  return [dip.speed * (1 + SPREAD * shift), here! - bend * shift * shift / 2];
}

const numbersOf = (slow: Slow, drag: Dip, power: Dip): Numbers => ({
  stall: slow.stall,
  takeoff: slow.takeoff,
  tension: slow.tension,
  drag: movedLeast(slow, "total", drag),
  power: movedLeast(slow, "power", power),
});

const flat = ({ stall, takeoff, tension, drag, power }: Numbers) =>
  [stall, takeoff, tension, ...drag, ...power] as const;

/** Adds the squares of a doubt's relative changes. */
function addSquares(sums: Float64Array, up: ArrayLike<number>, down: ArrayLike<number>): void {
  for (let i = 0; i < sums.length; i++) {
    sums[i]! += (Math.log(up[i]! / down[i]!) / (2 * STEP)) ** 2;
  }
}

function withEnds(value: number, variance: number): FirstOrderValue {
  const factor = Math.exp(NORMAL_95 * Math.sqrt(variance));
  return { value, low: value / factor, high: value * factor };
}

/**
 * Speeds, tow force and power of a craft in water, each with its first-order 95 % interval.
 *
 * Intervals are symmetric in the logarithm. First order is good for the stall and takeoff speeds and for forces; the speeds of least drag
 * and power belong to flat minima, where drawing all inputs (`drawTakeoffs`) gives wider and lopsided intervals. The band of the curve
 * holds at fixed speeds.
 *
 * Source: JCGM 100:2008 (GUM), equation 10, in logarithms of the results; central differences.
 *
 * @param craft at best knowledge
 * @param doubts the inputs that are not known well
 * @returns numbers and curve in SI, or why no speed carries it
 * @throws RangeError where a number is outside what its formula knows
 *
 * @example
 * ```ts
 * import { takeoffCurve } from "lakeproof/fit/takeoff-curve.ts";
 * import { USUAL_DOUBTS } from "lakeproof/fit/takeoff-doubts.ts";
 * import { USUAL_CRAFT } from "lakeproof/model/usual-craft.ts";
 * const found = takeoffCurve(USUAL_CRAFT, USUAL_DOUBTS);
 * if (!found.ok || !(found.takeoffSpeed.low < 3.5 && found.takeoffSpeed.high > 3.5)) throw new Error("3.5 m/s");
 * ```
 */
export function takeoffCurve(craft: SteadyCraft, doubts: readonly Doubt[]): TakeoffCurve {
  const phiOf = sharedPhi();
  const slow = slowOf(craft, phiOf);
  if (typeof slow === "string") {
    return { ok: false, reason: slow === "none" ? "no-speed" : slow };
  }
  const { running, stall } = slow;
  const scan = scanSpeeds(running, stall, SCAN);
  const [drag] = dips(scan, "total");
  const [power] = dips(scan, "power");

  const numbers = flat({
    ...numbersOf(slow, drag!, power!),
    drag: [drag!.speed, drag!.value],
    power: [power!.speed, power!.value],
  });
  const variances = new Float64Array(numbers.length);
  const moves = new Float64Array(doubts.length);
  for (const [i, { key, kind, standardUncertainty }] of doubts.entries()) {
    if (standardUncertainty === 0 || kind === "share" && craft[key] === 0) continue;
    const twin = (step: number) => {
      moves[i] = step;
      return slowOf(movedCraft(craft, doubts, moves), phiOf);
    };
    const [up, down] = [twin(STEP), twin(-STEP)];
    moves[i] = 0;
    if (typeof up === "string" || typeof down === "string") return { ok: false, reason: "edge" };
    addSquares(
      variances,
      flat(numbersOf(up, drag!, power!)),
      flat(numbersOf(down, drag!, power!)),
    );
  }
  if (!variances.every(Number.isFinite)) return { ok: false, reason: "edge" };
  const [stallSpeed, takeoffSpeed, towForceAtTakeoff, ...least] = numbers.map((value, i) =>
    withEnds(value, variances[i]!)
  );
  const speeds = Float64Array.from(
    { length: POINTS },
    (_, i) => stall * REACH ** (i / (POINTS - 1)),
  );
  const { curve, logUncertainty } = takeoffBand(craft, doubts, speeds, phiOf);
  return {
    ok: true,
    stallSpeed: stallSpeed!,
    takeoffSpeed: takeoffSpeed!,
    towForceAtTakeoff: towForceAtTakeoff!,
    leastDrag: { speed: least[0]!, value: least[1]!, atStall: drag!.atStall },
    leastPower: { speed: least[2]!, value: least[3]!, atStall: power!.atStall },
    curve: Array.from(curve.speed, (speed, i) => ({
      speed,
      force: withEnds(curve.tension[i]!, logUncertainty[i]! ** 2),
      power: withEnds(curve.power[i]!, logUncertainty[i]! ** 2),
    })),
  };
}
