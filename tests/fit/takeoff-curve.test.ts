import { describe, expect, it } from "vitest";
import { takeoffCurve } from "lakeproof/fit/takeoff-curve.ts";
import { movedCraft, USUAL_DOUBTS } from "lakeproof/fit/takeoff-doubts.ts";
import { flightInWater, type SteadyCraft } from "lakeproof/model/steady-craft.ts";
import { LIGHT, SMALL, WIDE } from "../support/steady-examples.ts";

function flown(craft: SteadyCraft) {
  const found = takeoffCurve(craft, USUAL_DOUBTS);
  if (!found.ok) throw new Error(found.reason);
  return found;
}

/** Standard uncertainty of the logarithm behind a 95 % interval. */
const spread = ({ low, high }: { readonly low: number; readonly high: number }) =>
  Math.log(high / low) / 2 / 1.959963984540054;

describe("first-order intervals of a takeoff", () => {
  it.each([
    ["a small wing in a lake", SMALL, [0.068, 0.074, 0.100, 0.033, 0.077, 0.041, 0.064]],
    ["a wide wing in the sea", { ...WIDE, lineAngle: 0 }, [
      0.069,
      0.075,
      0.165,
      0.092,
      0.157,
      0.069,
      0.229,
    ]],
  ])("of %s are those worked out for it", (_, craft, wanted) => {
    // Worked by central differences over whole solutions, in a script of another hand; three decimals are printed.
    const { stallSpeed, takeoffSpeed, towForceAtTakeoff, leastDrag, leastPower } = flown(craft);
    const own = [stallSpeed, takeoffSpeed, towForceAtTakeoff, leastDrag.speed, leastDrag.value]
      .concat(leastPower.speed, leastPower.value).map(spread);
    // Half of the last printed digit, and as much again: the script's doubts left out the growth of lift with Reynolds number.
    own.forEach((value, i) => expect(Math.abs(value - wanted[i]!), `${i}`).toBeLessThan(0.001));
  });

  it("of the curve are those of whole flights with each input moved", () => {
    const { curve } = flown(SMALL);
    for (const at of [0, 20, 60]) {
      const { speed, force, power } = curve[at]!;
      const squares = USUAL_DOUBTS.map((_, i) => {
        const moves = (step: number) => USUAL_DOUBTS.map((_one, j) => (i === j ? step : 0));
        const twin = (step: number) =>
          flightInWater(movedCraft(SMALL, USUAL_DOUBTS, moves(step))).at(speed)!.tension;
        return (Math.log(twin(0.01) / twin(-0.01)) / 0.02) ** 2;
      });
      const own = Math.sqrt(squares.reduce((sum, one) => sum + one, 0));
      // 1e-3: both are central differences, of half the step here.
      expect(Math.abs(spread(force) / own - 1)).toBeLessThan(1e-3);
      expect(force.value).toBe(flightInWater(SMALL).at(speed)!.tension);
      expect(power.value / speed / force.value).toBeCloseTo(1, 12);
    }
  });

  it("are none where nothing is in doubt", () => {
    const found = takeoffCurve(SMALL, []);
    expect(found).toMatchObject({ ok: true });
    if (!found.ok) return;
    for (const { force } of found.curve) {
      expect([force.low, force.high]).toEqual([force.value, force.value]);
    }
  });
});

describe("a curve", () => {
  it("starts at the stall speed, holds the least, and has no hole", () => {
    for (const craft of [SMALL, WIDE, LIGHT]) {
      const { curve, stallSpeed, leastDrag } = flown(craft);
      expect(curve).toHaveLength(61);
      expect(curve[0]!.speed).toBe(stallSpeed.value);
      const level = Math.cos(craft.lineAngle);
      for (const { force } of curve) {
        // 1e-9: the least was solved to that.
        expect(force.value * level).toBeGreaterThan(leastDrag.value.value * (1 - 1e-9));
      }
    }
  });

  it("is refused in words for a craft that floats or that its line pulls under", () => {
    expect(takeoffCurve({ ...SMALL, mass: 1 }, USUAL_DOUBTS)).toEqual({
      ok: false,
      reason: "floats",
    });
    // Straight down: the line takes more than any speed lifts.
    expect(takeoffCurve({ ...SMALL, lineAngle: -89 * Math.PI / 180 }, USUAL_DOUBTS)).toEqual({
      ok: false,
      reason: "no-speed",
    });
  });
});
