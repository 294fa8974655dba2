import { describe, expect, it } from "vitest";
import { movedCraft, USUAL_DOUBTS } from "lakeproof/fit/takeoff-doubts.ts";
import { MEDIUM_RESULTS, waterNumbers } from "lakeproof/fit/takeoff-numbers.ts";
import { drawTakeoffs, firstOrder, inWater, spreadOf } from "lakeproof/fit/takeoff-uncertainty.ts";
import { takeoffBand } from "lakeproof/fit/takeoff-band.ts";
import { SMALL, WIDE } from "../support/steady-examples.ts";

const LEVEL = { ...WIDE, lineAngle: 0 };

/** Elasticities printed by another hand for the two craft on level lines: takeoff speed, its tow force, least drag; A | B. */
const PRINTED = {
  largestLiftCoefficient: [[-0.476, 0.51, 0], [-0.476, -0.17, 0]],
  mass: [[0.489, 1.07, 1.01], [0.521, 1.67, 1.09]],
  area: [[-0.524, 0.59, 0.23], [-0.524, -0.02, 0.43]],
  span: [[0.048, -1.34, -0.8], [0.048, -0.76, -0.55]],
  wingVolume: [[-0.009, -0.02, -0.02], [-0.041, -0.13, -0.08]],
  takeoffDepth: [[-0.01, -0.1, 0], [-0.01, -1.84, 0]],
  runningDepth: [[0, 0, -0.01], [0, 0, -1.13]],
  transitionReynolds: [[0, -0.07, -0.1], [0, -0.21, -0.25]],
  viscousLiftFactor: [[0, 0.06, 0.02], [0, 0.12, 0.03]],
  liftCoefficientOfLeastDrag: [[0, -0.18, -0.15], [0, -0.4, -0.22]],
  spanEfficiency: [[0, -0.7, -0.46], [0, -0.52, -0.45]],
  surface: [[0, 0.06, 0.07], [0, 0.24, 0.34]],
  airDragArea: [[0, 0.06, 0.13], [0, 0.04, 0.05]],
  wingForm: [[0, 0.02, 0.06], [0, 0.06, 0.08]],
} as const;

describe("first order", () => {
  it("equals the printed elasticities of both craft", () => {
    [SMALL, LEVEL].forEach((craft, at) => {
      const changes = firstOrder(craft, USUAL_DOUBTS, inWater)!;
      for (const [key, printed] of Object.entries(PRINTED)) {
        const i = USUAL_DOUBTS.findIndex((one) => one.key === key);
        const u = USUAL_DOUBTS[i]!.standardUncertainty;
        const [speed, force, drag] = printed[at]!;
        // 0.006: half the last printed digit of 0.01, and a little for ties.
        expect(Math.abs(changes.takeoffSpeed[i]! / u - speed), key).toBeLessThan(0.006);
        expect(Math.abs(changes.towForceAtTakeoff[i]! / u - force), key).toBeLessThan(0.006);
        expect(Math.abs(changes.leastDrag[i]! / u - drag), key).toBeLessThan(0.006);
      }
    });
  });
  it("adds up to the printed spreads", () => {
    // ln-sd of stall, takeoff, tow force, least drag, least power; three printed digits.
    const rows = [
      [SMALL, [0.068, 0.074, 0.1, 0.077, 0.064]],
      [LEVEL, [0.069, 0.075, 0.165, 0.157, 0.229]],
    ] as const;
    for (const [craft, printed] of rows) {
      const changes = firstOrder(craft, USUAL_DOUBTS, inWater)!;
      const results = [
        "stallSpeed",
        "takeoffSpeed",
        "towForceAtTakeoff",
        "leastDrag",
        "leastPower",
      ] as const;
      const own = results.map((one) => Math.hypot(...changes[one]));
      own.forEach((one, i) => expect(Math.abs(one - printed[i]!)).toBeLessThan(0.0011));
    }
  });
  it("gives the printed interval of the small craft's takeoff", () => {
    const changes = firstOrder(SMALL, USUAL_DOUBTS, inWater)!;
    const numbers = waterNumbers(SMALL);
    const u = Math.hypot(...changes.takeoffSpeed);
    if (!numbers.ok) throw new Error(numbers.reason);
    // 3.50 m/s, 3.02 to 4.06, at two standard uncertainties.
    expect(numbers.takeoffSpeed * Math.exp(-2 * u)).toBeCloseTo(3.02, 2);
    expect(numbers.takeoffSpeed * Math.exp(2 * u)).toBeCloseTo(4.06, 2);
  });
});

describe("drawing", () => {
  const draws = drawTakeoffs(SMALL, USUAL_DOUBTS, inWater, { name: "small", draws: 1000 });

  it("spreads as the printed 4,000 draws did", () => {
    const numbers = waterNumbers(SMALL);
    if (!numbers.ok) throw new Error(numbers.reason);
    const printed = {
      stallSpeed: 0.067,
      takeoffSpeed: 0.072,
      towForceAtTakeoff: 0.1,
      leastDragSpeed: 0.036,
      leastDrag: 0.087,
      leastPowerSpeed: 0.045,
      leastPower: 0.07,
    } as const;
    for (const [result, value] of Object.entries(printed)) {
      const key = result as keyof typeof printed;
      const { low, high } = spreadOf(draws, key);
      // 1000 draws know a spread to 2.2 %, its 95 % ends to about 5 %; three times that, and the printed digit.
      const own = Math.log(high! / low!) / (2 * 1.96);
      expect(Math.abs(own / value - 1), result).toBeLessThan(0.16);
    }
    // Tow force 74.5 N: 63 to 93.
    const { low, high } = spreadOf(draws, "towForceAtTakeoff");
    expect(low!).toBeGreaterThan(61);
    expect(low!).toBeLessThan(65);
    expect(high!).toBeGreaterThan(89);
    expect(high!).toBeLessThan(97);
  });
  it("gives the same digits again, and fails where nothing flies", () => {
    const again = drawTakeoffs(SMALL, USUAL_DOUBTS, inWater, { name: "small", draws: 100 });
    const twice = drawTakeoffs(SMALL, USUAL_DOUBTS, inWater, { name: "small", draws: 100 });
    expect(twice).toEqual(again);
    const floats = { ...SMALL, wingVolume: 0.2 };
    const none = drawTakeoffs(floats, USUAL_DOUBTS, inWater, { name: "floats", draws: 100 });
    expect(none.failed).toBe(100);
    for (const result of MEDIUM_RESULTS) {
      expect(spreadOf(none, result)).toEqual({ standardUncertainty: null, low: null, high: null });
    }
  });
  it("never leaves what the formulas know", () => {
    const moves = new Float64Array(USUAL_DOUBTS.length).fill(30);
    for (const side of [1, -1]) {
      const moved = movedCraft(LEVEL, USUAL_DOUBTS, moves.map((one) => one * side));
      expect(moved.usableShare).toBeLessThanOrEqual(1);
      expect(moved.temperature).toBeGreaterThanOrEqual(273.15);
      expect(moved.temperature).toBeLessThanOrEqual(313.15);
      expect(moved.runningDepth).toBeGreaterThan(0.01 * moved.span * 0.9);
    }
  });
});

describe("band over speed", () => {
  it("equals first order of the force at each speed, drawn input by input", () => {
    const speeds = [3.6, 5, 7];
    const { curve, logUncertainty } = takeoffBand(SMALL, USUAL_DOUBTS, speeds);
    expect([...curve.speed]).toEqual(speeds);
    // Rising with speed: what turbulence and the rider cost grows.
    expect(logUncertainty[2]!).toBeGreaterThan(logUncertainty[1]!);
    const only = USUAL_DOUBTS.filter((one) => one.key === "airDragArea");
    const { logUncertainty: air } = takeoffBand(SMALL, only, speeds);
    // One input alone: share of the rider's drag times its own uncertainty.
    speeds.forEach((_, i) => {
      expect(air[i]!).toBeCloseTo(0.3 * curve.air[i]! / curve.total[i]!, 4);
    });
  });
});
