import { describe, expect, it } from "vitest";
import {
  formFactor,
  laminarFriction,
  plateFriction,
  turbulentFriction,
} from "lakeproof/model/friction-line.ts";
import { strutDrag } from "lakeproof/model/strut-drag.ts";

describe("plate friction", () => {
  it("is continuous at transition, laminar below, near the turbulent line far above", () => {
    for (const transition of [2e5, 5e5]) {
      const gap = plateFriction(transition * (1 + 1e-12), transition) -
        plateFriction(transition, transition);
      expect(Math.abs(gap)).toBeLessThan(1e-12);
      expect(plateFriction(transition / 2, transition)).toBe(laminarFriction(transition / 2));
      expect(plateFriction(1e8, transition) / turbulentFriction(1e8)).toBeCloseTo(1, 1);
    }
  });
  it("takes off 1614/Re for a transition at 5e5, not the often printed 1700/Re", () => {
    const taken = (turbulentFriction(1e6) - plateFriction(1e6, 5e5)) * 1e6;
    expect(taken).toBeCloseTo(1613.7, 1);
  });
  it("is below the ship correlation line, by 16 % at 1e5 and 5 % at 1e6", () => {
    // ITTC 1957: 0.075/(log10 Re - 2)^2; printed 8.3333e-3 at 1e5, 4.6875e-3 at 1e6.
    const ship = (re: number) => 0.075 / (Math.log10(re) - 2) ** 2;
    expect(ship(1e5)).toBeCloseTo(8.3333e-3, 7);
    expect(ship(1e5) / turbulentFriction(1e5)).toBeCloseTo(1.1645, 3);
    expect(ship(1e6) / turbulentFriction(1e6)).toBeCloseTo(1.0485, 3);
  });
  it("lies between laminar and turbulent", () => {
    for (const re of [1e5, 3e5, 5e5, 1e6, 1e7]) {
      expect(plateFriction(re)).toBeGreaterThanOrEqual(laminarFriction(re));
      expect(plateFriction(re)).toBeLessThan(turbulentFriction(re));
    }
  });
  it("refuses what is outside the lines", () => {
    expect(() => plateFriction(0)).toThrow(RangeError);
    expect(() => plateFriction(NaN)).toThrow(RangeError);
    expect(() => plateFriction(1e6, 0)).toThrow(RangeError);
    expect(() => plateFriction(1e10)).toThrow(RangeError);
    expect(() => formFactor(0.5)).toThrow(RangeError);
    expect(() => formFactor(NaN)).toThrow(RangeError);
  });
});

describe("strut drag", () => {
  const mast = { count: 1, chord: 0.12, thickness: 0.0144 };
  const flow = { speed: 4, depth: 0.4, density: 999.1, kinematicViscosity: 1.14e-6 };
  it("doubles with two struts, and is nothing without any", () => {
    const one = strutDrag(mast, flow), two = strutDrag({ ...mast, count: 2 }, flow);
    expect(two.friction).toBeCloseTo(2 * one.friction, 12);
    expect(two.spray).toBeCloseTo(2 * one.spray, 12);
    expect(strutDrag({ count: 0, chord: 0, thickness: 0 }, flow)).toEqual({
      friction: 0,
      spray: 0,
      junction: 0,
    });
  });
  it("never has a negative junction", () => {
    expect(strutDrag({ ...mast, thickness: 0.005 }, flow).junction).toBe(0);
  });
  it("refuses endless struts and no chord", () => {
    expect(() => strutDrag(mast, { ...flow, depth: Infinity })).toThrow(RangeError);
    expect(() => strutDrag({ ...mast, chord: 0 }, flow)).toThrow(RangeError);
  });
});
