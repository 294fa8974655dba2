import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  chiSquareLowerTail,
  chiSquareQuantile,
  chiSquareUpperTail,
  fisherFLowerTail,
  fisherFQuantile,
  noncentralTLowerTail,
  noncentralTUpperTail,
  normalLowerTail,
  normalQuantile,
  studentTLowerTail,
  studentTQuantile,
  studentTUpperTail,
} from "lakeproof/numeric/distributions.ts";

const probability = fc.double({ min: 1e-12, max: 0.999999, noNaN: true });
const degrees = fc.double({ min: 1, max: 5000, noNaN: true });
const fixed = { seed: 20311, numRuns: 60 };

describe("distributions", () => {
  it("give back the probability that a quantile was asked for", () => {
    fc.assert(
      fc.property(probability, degrees, degrees, (p, a, b) => {
        const close = (back: number) => expect(Math.abs(back / p - 1)).toBeLessThan(1e-9);
        close(studentTLowerTail(studentTQuantile(p, a), a));
        close(chiSquareLowerTail(chiSquareQuantile(p, a), a));
        const both = { numerator: a, denominator: b };
        close(fisherFLowerTail(fisherFQuantile(p, both), both));
        close(normalLowerTail(normalQuantile(p)));
      }),
      fixed,
    );
  });

  it("have tails that add to one", () => {
    fc.assert(
      fc.property(fc.double({ min: -30, max: 30, noNaN: true }), degrees, (x, n) => {
        expect(studentTLowerTail(x, n) + studentTUpperTail(x, n)).toBeCloseTo(1, 13);
        expect(chiSquareLowerTail(x * x, n) + chiSquareUpperTail(x * x, n)).toBeCloseTo(1, 13);
        const parameters = { degreesOfFreedom: n, noncentrality: 2 };
        const sum = noncentralTLowerTail(x, parameters) + noncentralTUpperTail(x, parameters);
        expect(sum).toBeCloseTo(1, 11);
      }),
      fixed,
    );
  });

  it("keep the tails of noncentral t adding to one at its cliffs: few degrees of freedom, large difference", () => {
    for (const n of [1, 1.3, 2, 6, 40]) {
      for (const noncentrality of [-6, 2, 12, 50]) {
        for (const t of [-8, 0.2, 6, 14, 60]) {
          const parameters = { degreesOfFreedom: n, noncentrality };
          const sum = noncentralTLowerTail(t, parameters) + noncentralTUpperTail(t, parameters);
          // Two independent quadratures, each good to about 1e-13.
          expect(Math.abs(sum - 1), `${n} ${noncentrality} ${t}`).toBeLessThan(2e-12);
        }
      }
    }
  });

  it("know that t squared is F, and t without limit is normal", () => {
    expect(studentTQuantile(0.975, 7) ** 2)
      .toBeCloseTo(fisherFQuantile(0.95, { numerator: 1, denominator: 7 }), 11);
    expect(studentTQuantile(0.975, Infinity)).toBe(normalQuantile(0.975));
    expect(noncentralTLowerTail(1.3, { degreesOfFreedom: 6, noncentrality: 0 }))
      .toBeCloseTo(studentTLowerTail(1.3, 6), 13);
  });

  it("keep their digits past a thousand degrees of freedom, where stdlib's gamma function loses them", () => {
    // Mean of chi-square is its degrees of freedom; median k (1 - 2/(9k))^3 to O(1/k^3), Wilson and Hilferty 1931.
    const k = 20_000;
    expect(chiSquareQuantile(0.5, k)).toBeCloseTo(k * (1 - 2 / (9 * k)) ** 3, 4);
  });

  it("never answer with NaN", () => {
    for (const bad of [NaN, -1, 0]) {
      expect(() => studentTLowerTail(1, bad)).toThrow(RangeError);
      expect(() => chiSquareLowerTail(1, bad)).toThrow(RangeError);
      expect(() => studentTQuantile(bad, 3)).toThrow(RangeError);
    }
    expect(() => studentTLowerTail(NaN, 3)).toThrow(RangeError);
    expect(() => normalQuantile(1)).toThrow(RangeError);
    expect(() => fisherFLowerTail(1, { numerator: 0, denominator: 2 })).toThrow(RangeError);
    expect(() => noncentralTLowerTail(1, { degreesOfFreedom: 0.5, noncentrality: 0 })).toThrow();
    expect(studentTUpperTail(Infinity, 3)).toBe(0);
    expect(chiSquareUpperTail(-2, 3)).toBe(1);
  });
});
