import { describe, expect, it } from "vitest";
import { minimumBetween } from "lakeproof/numeric/minimum.ts";

describe("the minimum between two points", () => {
  it("is found for a parabola in a few evaluations", () => {
    let calls = 0;
    const { at, value, atEnd } = minimumBetween((x) => (calls++, (x - 0.3) ** 2 + 2), {
      low: -4,
      high: 10,
    });
    expect(at).toBeCloseTo(0.3, 7);
    expect(value).toBeCloseTo(2, 14);
    expect(atEnd).toBe(false);
    expect(calls).toBeLessThan(40);
  });

  it("is where the gamma function's is: 1.4616321449683623 (Abramowitz and Stegun 6.1)", () => {
    // ln gamma by Stirling's series after shifting by 10, good to 1e-13.
    const logGamma = (x: number) => {
      let shift = 0;
      let z = x;
      while (z < 11) shift += Math.log(z++);
      return (z - 0.5) * Math.log(z) - z + 0.5 * Math.log(2 * Math.PI) + 1 / (12 * z) -
        1 / (360 * z ** 3) + 1 / (1260 * z ** 5) - shift;
    };
    const { at } = minimumBetween(logGamma, { low: 0.5, high: 4 });
    // A minimum's place is known to the root of the rounding of its value.
    expect(at).toBeCloseTo(1.4616321449683623, 6);
  });

  it("is an end, and says so, where the function only falls", () => {
    expect(minimumBetween((x) => -x, { low: 0, high: 3 })).toEqual({
      at: 3,
      value: -3,
      atEnd: true,
    });
  });

  it("keeps to steps, kinks and flats", () => {
    expect(minimumBetween((x) => Math.abs(x - 1 / 3), { low: 0, high: 1 }).at).toBeCloseTo(
      1 / 3,
      7,
    );
    expect(minimumBetween(() => 5, { low: 0, high: 1 }).value).toBe(5);
    expect(() => minimumBetween(Math.sqrt, { low: -2, high: 1 })).toThrow(/no value/);
    expect(() => minimumBetween((x) => x, { low: 1, high: 1 })).toThrow(RangeError);
  });
});
