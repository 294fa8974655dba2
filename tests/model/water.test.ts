import { describe, expect, it } from "vitest";
import {
  practicalSalinity,
  pureWaterViscosity,
  vapourPressure,
  water,
  waterDensity,
} from "lakeproof/model/water.ts";

const at = (celsius: number, salinity = 0) => ({ temperature: 273.15 + celsius, salinity });

describe("water", () => {
  it("meets two worked states to their last digit", () => {
    // Parent: the same formulas in Python; fresh 15 degC, and practical salinity 35 at 20 degC.
    const fresh = water(at(15));
    expect(fresh.density).toBeCloseTo(999.1010317, 6);
    expect(fresh.kinematicViscosity * 1e6).toBeCloseTo(1.13857136, 7);
    const sea = water(at(20, 0.03516504));
    expect(sea.density).toBeCloseTo(1024.76174, 5);
    expect(sea.kinematicViscosity * 1e6).toBeCloseTo(1.050791959, 8);
  });
  it("is densest near 4 degC when fresh and grows denser with salt", () => {
    for (const celsius of [0, 2, 6, 10, 25, 40]) {
      expect(waterDensity(at(4))).toBeGreaterThan(waterDensity(at(celsius)));
      expect(waterDensity(at(celsius, 0.02))).toBeGreaterThan(waterDensity(at(celsius, 0.01)));
    }
  });
  it("grows thinner when warmer and thicker with salt", () => {
    for (let celsius = 0; celsius < 40; celsius += 5) {
      expect(water(at(celsius + 5)).viscosity).toBeLessThan(water(at(celsius)).viscosity);
      expect(water(at(celsius, 0.035)).viscosity).toBeGreaterThan(water(at(celsius)).viscosity);
    }
  });
  it("boils less easily with salt", () => {
    expect(vapourPressure(at(20, 0.035))).toBeLessThan(vapourPressure(at(20)));
  });
  it("takes 35.16504 g/kg for practical salinity 35", () => {
    expect(practicalSalinity(0.03516504)).toBeCloseTo(35, 12);
  });
  it("accepts the ends of its range and refuses what lies outside", () => {
    expect(() => water(at(0))).not.toThrow();
    expect(() => water(at(40, 42 / 35 * 0.03516504))).not.toThrow();
    for (const state of [at(-0.1), at(40.1), at(15, -0.001), at(15, 0.043), at(NaN), at(15, NaN)]) {
      expect(() => water(state)).toThrow(RangeError);
    }
    // Celsius handed in as kelvin, grams as a fraction.
    expect(() => water({ temperature: 15, salinity: 0 })).toThrow(/273.15 to 313.15 K/);
    expect(() => water({ temperature: 288.15, salinity: 35 })).toThrow(RangeError);
    expect(() => pureWaterViscosity(200)).toThrow(RangeError);
  });
});
