import { describe, expect, it } from "vitest";
import { allRoots, bracketedRoot } from "lakeproof/numeric/roots.ts";

describe("bracketed roots", () => {
  it("find the root of cos x = x that tables print", () => {
    // 0.739085133215160641655..., the Dottie number.
    expect(bracketedRoot((x) => Math.cos(x) - x, { low: 0, high: 1 })).toBeCloseTo(
      0.7390851332151607,
      15,
    );
  });

  it("keep to the bracket with steep, flat and one-sided functions", () => {
    let calls = 0;
    const flat = bracketedRoot((x) => (calls++, (x - 0.3) ** 9), { low: -1, high: 4 });
    // (x - 0.3)^9 underflows to nothing near 0.3, so that closeness is limited by doubles.
    expect(flat).toBeCloseTo(0.3, 6);
    expect(calls).toBeLessThan(250);
    expect(bracketedRoot((x) => Math.exp(x) - 1e-200, { low: -1000, high: 10 })).toBeCloseTo(
      Math.log(1e-200),
      10,
    );
    expect(bracketedRoot((x) => (x < 1e-9 ? -1 : 1), { low: 0, high: 1 })).toBeCloseTo(1e-9, 15);
  });

  it("take an end that is the root, and say so when nothing is bracketed", () => {
    expect(bracketedRoot((x) => x, { low: 0, high: 1 })).toBe(0);
    expect(() => bracketedRoot((x) => x * x + 1, { low: -1, high: 1 })).toThrow(/one sign/);
    expect(() => bracketedRoot((x) => Math.sqrt(x), { low: -1, high: 1 })).toThrow(RangeError);
  });

  it("list all crossings of a sine in order", () => {
    const roots = allRoots(Math.sin, { low: 1, high: 20 });
    expect(roots).toHaveLength(6);
    roots.forEach((root, i) => expect(root).toBeCloseTo((i + 1) * Math.PI, 12));
  });
});
