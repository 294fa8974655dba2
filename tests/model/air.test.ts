import { describe, expect, it } from "vitest";
import { air, airViscosity, geopotentialHeight } from "lakeproof/model/air.ts";

/* ISO 2533:1975 and US Standard Atmosphere 1976 (the same below 32 km), by geometric height: T, p, rho, mu, nu. */
const ROWS = [
  [0, 288.15, 101325, 1.225, 1.7894e-5, 1.4607e-5],
  [500, 284.9, 95461.3, 1.16727, 1.7737e-5, 1.5195e-5],
  [1000, 281.651, 89876.3, 1.11166, 1.7579e-5, 1.5813e-5],
  [2000, 275.154, 79501.4, 1.00655, 1.726e-5, 1.7147e-5],
  [3000, 268.659, 70121.2, 0.90925, 1.6938e-5, 1.8628e-5],
  [5000, 255.676, 54048.3, 0.73643, 1.6282e-5, 2.211e-5],
] as const;

describe("standard air", () => {
  it("equals the printed table from the sea to five kilometres, to its last digit", () => {
    for (const [height, temperature, pressure, density, viscosity, kinematic] of ROWS) {
      const own = air(height);
      expect(Math.abs(own.temperature - temperature)).toBeLessThan(5.1e-4);
      // One in the last printed digit: the table was rounded at different steps.
      expect(Math.abs(own.pressure - pressure)).toBeLessThan(0.11);
      expect(Math.abs(own.density - density)).toBeLessThan(1e-5);
      expect(Math.abs(own.viscosity - viscosity)).toBeLessThan(1e-9);
      expect(Math.abs(own.kinematicViscosity - kinematic)).toBeLessThan(1e-9);
    }
  });
  it("has Sutherland's viscosity", () => {
    // Celsius; computed from the formula with the constants of the 1976 standard.
    const rows = [[0, 1.71608], [15, 1.78938], [20, 1.81341], [25, 1.83723], [
      40,
      1.90757,
    ]] as const;
    for (const [celsius, value] of rows) {
      expect(Math.abs(airViscosity(celsius + 273.15) * 1e5 - value)).toBeLessThan(6e-6);
    }
  });
  it("obeys the gas law and gets thinner all the way up", () => {
    let before = Infinity;
    for (let height = -1900; height <= 10_900; height += 500) {
      const { density, pressure, temperature } = air(height);
      expect(pressure / (density * temperature)).toBeCloseTo(287.05287, 9);
      expect(density).toBeLessThan(before);
      before = density;
    }
  });
  it("refuses heights that its rule does not know, and no number at all", () => {
    expect(() => air(11_100)).toThrow(RangeError);
    expect(() => air(-2100)).toThrow(RangeError);
    expect(() => air(NaN)).toThrow(RangeError);
    expect(() => airViscosity(20)).toThrow("100 to 1900 K");
    expect(geopotentialHeight(0)).toBe(0);
  });
});
