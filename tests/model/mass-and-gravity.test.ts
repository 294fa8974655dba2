import { describe, expect, it } from "vitest";
import { weightInWater } from "lakeproof/model/buoyancy.ts";
import { effectiveMass } from "lakeproof/model/effective-mass.ts";
import { gravity, STANDARD_GRAVITY } from "lakeproof/model/gravity.ts";
import { strutVolume } from "lakeproof/model/strut-drag.ts";

describe("gravity", () => {
  it("is the same north and south, and falls by 3.086e-6 m/s2 a metre of height", () => {
    expect(gravity(-0.8)).toBe(gravity(0.8));
    // Free-air gradient, 0.3086 mGal/m (Torge, Geodesy).
    expect((gravity(0.8) - gravity(0.8, 1000)) / 1000).toBeCloseTo(3.086e-6, 8);
  });
  it("is standard gravity near 45.5 degrees at the sea", () => {
    expect(gravity(45.497 * Math.PI / 180)).toBeCloseTo(STANDARD_GRAVITY, 5);
  });
  it("refuses degrees taken for radians, the sky, NaN", () => {
    expect(() => gravity(50)).toThrow(RangeError);
    expect(() => gravity(0.8, 20_000)).toThrow(RangeError);
    expect(() => gravity(NaN)).toThrow(RangeError);
  });
});

describe("weight in water", () => {
  it("is weight less the weight of the water pushed aside, negative for what floats", () => {
    const body = { mass: 10, wetVolume: 0.01, density: 1000, gravity: 9.8 };
    expect(weightInWater(body)).toBe(0);
    expect(weightInWater({ ...body, wetVolume: 0.02 })).toBeCloseTo(-98, 10);
    expect(() => weightInWater({ ...body, mass: NaN })).toThrow(RangeError);
  });
  it("has struts of 0.685 chord times thickness times depth", () => {
    // Four-digit thickness form (Abbott and von Doenhoff 1959), integrated here by the midpoint rule.
    const n = 200_000;
    let area = 0;
    for (let i = 0; i < n; i++) {
      const x = (i + 0.5) / n;
      area += 10 *
        (0.2969 * Math.sqrt(x) - 0.126 * x - 0.3516 * x ** 2 + 0.2843 * x ** 3 - 0.1015 * x ** 4);
    }
    expect(strutVolume({ count: 1, chord: 1, thickness: 1 }, 1)).toBeCloseTo(area / n, 3);
  });
});

describe("effective mass", () => {
  const wing = { mass: 88, density: 999.1, span: 0.9, area: 0.15, thicknessRatio: 0.12 };
  it("adds about one per cent for a small wing, two to three for a very wide one", () => {
    const wide = { ...wing, mass: 92, span: 3.8, area: 0.55 };
    expect(effectiveMass(wing) / 88).toBeGreaterThan(1.005);
    expect(effectiveMass(wing) / 88).toBeLessThan(1.015);
    expect(effectiveMass(wide) / 92).toBeGreaterThan(1.02);
    expect(effectiveMass(wide) / 92).toBeLessThan(1.03);
  });
  it("is that of a flat plate broadside, and of nothing edge on without thickness", () => {
    // Added mass of a flat strip moved broadside: pi rho c^2/4 a metre (Lamb, article 71).
    const strip = Math.PI / 4 * 999.1 * (0.15 / 0.9) ** 2 * 0.9;
    const plate = { ...wing, thicknessRatio: 0 };
    expect(effectiveMass({ ...plate, incidence: Math.PI / 2 }) - 88).toBeCloseTo(strip, 10);
    expect(effectiveMass({ ...plate, incidence: 0 })).toBe(88);
  });
  it("refuses no mass, no span, NaN", () => {
    for (const part of [{ mass: 0 }, { span: -1 }, { area: NaN }]) {
      expect(() => effectiveMass({ ...wing, ...part })).toThrow(RangeError);
    }
  });
});
