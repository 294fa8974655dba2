import { describe, expect, it } from "vitest";
import { gaussLegendre } from "lakeproof/numeric/gauss-legendre.ts";

describe("Gauss-Legendre rule on (0, 1)", () => {
  it("equals Abramowitz and Stegun, table 25.4, n = 5 and 10", () => {
    // Fifteen printed digits on (-1, 1).
    const five = gaussLegendre(5);
    expect(2 * five.nodes[4]! - 1).toBeCloseTo(0.906179845938664, 14);
    expect(2 * five.weights[4]!).toBeCloseTo(0.236926885056189, 14);
    expect(2 * five.weights[2]!).toBeCloseTo(0.568888888888889, 14);
    const ten = gaussLegendre(10);
    expect(2 * ten.nodes[9]! - 1).toBeCloseTo(0.973906528517172, 14);
    expect(2 * ten.weights[9]!).toBeCloseTo(0.066671344308688, 14);
  });
  it("integrates polynomials up to degree 2 n - 1", () => {
    for (const n of [1, 2, 3, 7, 24, 64, 136]) {
      const { nodes, weights } = gaussLegendre(n);
      for (const degree of [0, 1, n, 2 * n - 1]) {
        const sum = nodes.reduce((s, x, i) => s + weights[i]! * x ** degree, 0);
        // Rounding of n terms.
        expect(Math.abs(sum * (degree + 1) - 1)).toBeLessThan(2e-13);
      }
    }
  });
  it("has rising nodes inside the interval and positive weights", () => {
    const { nodes, weights } = gaussLegendre(64);
    nodes.forEach((x, i) => {
      expect(x).toBeGreaterThan(i === 0 ? 0 : nodes[i - 1]!);
      expect(x).toBeLessThan(1);
      expect(weights[i]).toBeGreaterThan(0);
    });
  });
  it("refuses what is not a number of points", () => {
    for (const n of [0, -1, 2.5, NaN, Infinity]) expect(() => gaussLegendre(n)).toThrow(RangeError);
  });
});
