import { describe, expect, it } from "vitest";
import fc from "fast-check";
import type { Quantity } from "lakeproof/base/quantity.ts";
import {
  decimalsOfUncertainty,
  formatInterval,
  formatNumber,
  formatPercent,
  formatPlusMinus,
  formatProbability,
  formatQuantity,
  unitText,
} from "lakeproof/base/rounding.ts";

const quantity = (parts: Partial<Quantity>): Quantity => ({
  value: 1,
  standardUncertainty: null,
  degreesOfFreedom: null,
  low: null,
  high: null,
  level: 0.95,
  kind: "interval",
  unit: "1",
  ...parts,
});

describe("rounding for people", () => {
  it("keeps two digits of the uncertainty", () => {
    // The first stands so in Particle Data Group, Review of Particle Physics, introduction, "Rounding" (from memory),
    // which gives a single digit to the second: a rule of its own that is not ours.
    expect(formatPlusMinus(quantity({ value: 0.827, standardUncertainty: 0.119 })))
      .toBe("0.83\u00a0±\u00a00.12");
    expect(formatPlusMinus(quantity({ value: 0.827, standardUncertainty: 0.367 })))
      .toBe("0.83\u00a0±\u00a00.37");
  });

  it("rounds the example of the GUM as the GUM does", () => {
    // Source: JCGM 100:2008, 7.2.6: a value 10.057 62 ohm with u = 27 mohm is rounded to
    // 10.058 ohm (from memory).
    expect(formatQuantity(quantity({ value: 10.05762, standardUncertainty: 0.027, unit: "ohm" })))
      .toBe("10.058\u00a0ohm");
    expect([0.1, 0.354, 0.355, 0.949, 0.95, 0.999, 42, 1234].map(decimalsOfUncertainty))
      .toEqual([2, 2, 2, 2, 2, 1, 0, -2]);
  });

  it("gives the ends of an interval to the place of the value", () => {
    const ratio = quantity({
      value: 1.1820182,
      standardUncertainty: 0.0694,
      low: 1.0434176,
      high: 1.3390295,
    });
    expect(formatQuantity(ratio)).toBe("1.182");
    expect(formatInterval(ratio)).toBe("1.043 to 1.339");
    expect(formatInterval(quantity({ value: 40, low: 35.2, high: 61.7, unit: "m" })))
      .toBe("35.2 to 61.7\u00a0m");
    expect(formatInterval({ ...ratio, kind: "atLeast", high: null })).toBe("at least 1.043");
    expect(formatInterval({ ...ratio, kind: "atMost", low: null })).toBe("at most 1.339");
    expect(formatInterval(quantity({}))).toBe("not known");
  });

  it("never lets an end seem to touch 1 when it does not", () => {
    const near = quantity({ value: 1.15, standardUncertainty: 0.07, low: 1.00034, high: 1.3 });
    expect(formatInterval(near)).toBe("1.000 to 1.300");
    expect(formatInterval(near, { apartFrom: 1 })).toBe("1.0003 to 1.3000");
    expect(formatQuantity(near, { apartFrom: 1 })).toBe("1.1500");
    expect(formatInterval({ ...near, low: 1 }, { apartFrom: 1 })).toBe("1.000 to 1.300");
  });

  it("prints exact numbers as they are and unstated ones to three digits", () => {
    const exact = (value: number) =>
      formatQuantity(quantity({ value, standardUncertainty: 0, unit: "m/s" }));
    expect([4.1, 4, 0.18, 85.25, 100].map(exact))
      .toEqual(["4.1", "4", "0.18", "85.25", "100"].map((text) => `${text}\u00a0m/s`));
    expect(formatQuantity(quantity({ value: 12.3456 }))).toBe("12.3");
    expect(formatQuantity(quantity({ value: 0 }))).toBe("0");
  });

  it("knows no negative zero, a true minus, and powers of ten for huge and small numbers", () => {
    expect(formatNumber(-0.001, 2)).toBe("0.00");
    expect(formatNumber(-0, 0)).toBe("0");
    expect(formatNumber(-1.25, 1)).toBe("\u22121.3");
    expect(formatNumber(1.234e9, -7)).toBe("1.23e9");
    expect(formatNumber(1.234e-9, 11)).toBe("1.23e-9");
    expect(formatNumber(1234, -2)).toBe("1200");
    expect(formatNumber(3, -2)).toBe("0");
    expect(() => formatNumber(NaN, 2)).toThrow(RangeError);
    expect(() => formatNumber(Infinity, 2)).toThrow(RangeError);
    expect(() => decimalsOfUncertainty(0)).toThrow(RangeError);
  });

  it("never reads as certainty when it prints a probability", () => {
    const shown = [0.5, 0.9940733, 0.9718568, 0.9986, 0.9991, 1, 0.0014, 0.0009, 0, 0.012]
      .map(formatProbability);
    const space = "\u00a0%";
    expect(shown).toEqual([
      `50${space}`,
      `99.4${space}`,
      `97${space}`,
      `99.9${space}`,
      `more than 99.9${space}`,
      `more than 99.9${space}`,
      `0.1${space}`,
      `less than 0.1${space}`,
      `less than 0.1${space}`,
      `1.2${space}`,
    ]);
    fc.assert(fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (probability) => {
      expect(formatProbability(probability)).not.toMatch(/^100|^0\u00a0/);
    }));
    expect(() => formatProbability(1.1)).toThrow(RangeError);
    expect(formatPercent(0.4)).toBe(`40${space}`);
    expect(formatPercent(0.004)).toBe(`0.4${space}`);
    expect(formatPercent(-0.29)).toBe(`\u221229${space}`);
  });

  it("writes units as people read them", () => {
    expect(["1", "m/s", "m2", "m3", "N/m2", "kg/m3", "N s2/m2"].map(unitText))
      .toEqual(["", "m/s", "m²", "m³", "N/m²", "kg/m³", "N s²/m²"]);
  });

  it("stays within half a place of the number whatever it is", () => {
    const sizes = fc.double({ min: 1e-3, max: 1e6, noNaN: true });
    fc.assert(fc.property(sizes, sizes, fc.boolean(), (size, u, negative) => {
      const value = negative ? -size : size;
      const shown = Number(
        formatQuantity(quantity({ value, standardUncertainty: u })).replace("\u2212", "-"),
      );
      // Half a place, and the rounding error of a double beside it.
      const half = 0.5 * 10 ** -decimalsOfUncertainty(u);
      expect(Math.abs(shown - value)).toBeLessThanOrEqual(half * (1 + 1e-9) + size * 1e-12);
    }));
  });
});
