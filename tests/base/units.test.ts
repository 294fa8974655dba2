import { describe, expect, it } from "vitest";
import { decimalToSi } from "lakeproof/base/decimal-to-si.ts";
import { findUnit, fromSi, spreadToSi, toSi, unitNamed, UNITS } from "lakeproof/base/units.ts";
import fc from "fast-check";

describe("units", () => {
  // NIST SP 811 (2008), appendix B.8: factors printed in bold there are exact (numbers from memory).
  it.each(
    [
      ["speed", "kn", 1852 / 3600],
      ["speed", "km/h", 1000 / 3600],
      ["speed", "mph", 0.44704],
      ["speed", "ft/s", 0.3048],
      ["length", "in", 0.0254],
      ["length", "ft", 0.3048],
      ["area", "ft2", 0.09290304],
      ["area", "in2", 6.4516e-4],
      ["volume", "in3", 1.6387064e-5],
      ["volume", "ft3", 2.831685e-2],
      ["mass", "lb", 0.45359237],
      ["force", "kgf", 9.80665],
      ["force", "lbf", 4.4482216152605],
    ] as const,
  )("one of %s in %s is as NIST SP 811 prints it", (dimension, name, factor) => {
    // 5e-7: the cubic foot is printed there to seven figures.
    expect(toSi(1, unitNamed(name, dimension)) / factor).toBeCloseTo(1, 6);
    expect(decimalToSi("1", unitNamed(name, dimension))).toBe(toSi(1, unitNamed(name, dimension)));
  });

  // SI Brochure 9 (2019), 2.3.1: 0 degC is 273.15 K; NIST SP 811 B.8: T/K = (t/degF + 459.67)/1.8.
  it("temperatures have their own zero, spreads of temperature have none", () => {
    expect(decimalToSi("0", unitNamed("degC", "temperature"))).toBe(273.15);
    expect(decimalToSi("32", unitNamed("degF", "temperature"))).toBe(273.15);
    expect(decimalToSi("212", unitNamed("degF", "temperature"))).toBe(373.15);
    expect(decimalToSi("0.5", unitNamed("degC", "temperature"), true)).toBe(0.5);
    expect(spreadToSi(1.8, unitNamed("degF", "temperature"))).toBeCloseTo(1, 15);
  });

  it("a right angle is 90 degrees", () => {
    expect(decimalToSi("90", unitNamed("deg", "angle"))).toBe(Math.PI / 2);
  });

  it.each(
    [
      ["km/h", "speed", "km/h"],
      ["KM / H", "speed", "km/h"],
      ["kmh", "speed", "km/h"],
      ["kph", "speed", "km/h"],
      ["kt", "speed", "kn"],
      ["m²", "area", "m2"],
      ["m^2", "area", "m2"],
      ["°", "angle", "deg"],
      ["º", "angle", "deg"],
      ["°C", "temperature", "degC"],
      ["℃", "temperature", "degC"],
      ["L", "volume", "l"],
      ["lbs", "mass", "lb"],
      ["m/s²", "acceleration", "m/s2"],
      ["%", "ratio", "%"],
    ] as const,
  )("%s is understood as a %s in %s", (text, dimension, name) => {
    expect(findUnit(text, dimension)?.name).toBe(name);
  });

  it("a unit of another dimension or none is not taken", () => {
    expect(findUnit("kg", "speed")).toBeNull();
    expect(findUnit("furlong")).toBeNull();
    expect(findUnit("")).toBeNull();
    expect(() => unitNamed("furlong", "length")).toThrow(RangeError);
  });

  it("no spelling means two units of one dimension", () => {
    for (const unit of UNITS) {
      for (const spelling of [unit.name, ...unit.spellings]) {
        expect(findUnit(spelling, unit.dimension)?.name, spelling).toBe(unit.name);
      }
    }
  });

  it("a decimal text moves its point without losing a digit", () => {
    fc.assert(
      fc.property(fc.integer({ min: -999_999, max: 999_999 }), (n) => {
        const cm = decimalToSi(`${n / 10}`, unitNamed("cm", "length"));
        expect(cm).toBe(Number(`${n}e-3`) + 0);
      }),
      { seed: 1, numRuns: 500 },
    );
  });

  it("there and back is the same to the last digits", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...UNITS),
        fc.double({ min: -500, max: 500, noNaN: true }),
        (unit, value) => {
          // 1e-9: a degree Fahrenheit near 0 loses the digits that 459.67 takes.
          expect(fromSi(toSi(value, unit), unit)).toBeCloseTo(value, 9);
        },
      ),
      { seed: 2, numRuns: 500 },
    );
  });

  it("a text beyond all measure is infinite, not a wrong number", () => {
    expect(decimalToSi("1e999", unitNamed("km/h", "speed"))).toBe(Infinity);
    expect(decimalToSi("1e-999", unitNamed("km/h", "speed"))).toBe(0);
  });
});
