import { describe, expect, it } from "vitest";
import { integrate } from "lakeproof/numeric/quadrature.ts";

/** The integral, or the test fails with the reason. */
function must(result: ReturnType<typeof integrate>) {
  if (!result.ok) throw new Error(result.reason);
  return result;
}

describe("adaptive quadrature", () => {
  it("is exact for polynomials up to degree 22, in one piece", () => {
    // The 15-point Kronrod rule has degree 3 * 7 + 1 = 22.
    for (const degree of [0, 1, 7, 13, 22]) {
      const { value, evaluations } = must(
        integrate((x) => x ** degree, { low: 0, high: 1 }, { relativeTolerance: 1e-2 }),
      );
      expect(value * (degree + 1)).toBeCloseTo(1, 14);
      expect(evaluations).toBe(15);
    }
  });

  it.each([
    ["ln x over (0, 1)", Math.log, 0, 1, -1],
    ["1/sqrt x over (0, 1)", (x: number) => 1 / Math.sqrt(x), 0, 1, 2],
    ["a needle, 1/(1e-4 + x^2)", (x: number) => 1 / (1e-4 + x * x), -1, 1, 200 * Math.atan(100)],
    ["exp(-x) to infinity", (x: number) => Math.exp(-x), 0, Infinity, 1],
    ["1/(1 + x^2) over all", (x: number) => 1 / (1 + x * x), -Infinity, Infinity, Math.PI],
    ["exp(x) from minus infinity", Math.exp, -Infinity, 0, 1],
    // Planck's integral, pi^4/15.
    ["x^3/(e^x - 1)", (x: number) => x ** 3 / Math.expm1(x), 0, Infinity, Math.PI ** 4 / 15],
    ["|x - 0.3|", (x: number) => Math.abs(x - 0.3), 0, 1, 0.29],
    ["sin over full turns", Math.sin, 0, 20 * Math.PI, 0],
  ])("gets %s, and the true error is within the estimate", (_name, f, low, high, exact) => {
    const result = must(integrate(f, { low, high }, { absoluteTolerance: 1e-12 }));
    expect(Math.abs(result.value - exact)).toBeLessThanOrEqual(
      Math.max(result.error, 1e-13 * Math.abs(exact), 1e-13),
    );
  });

  it("says that it did not converge instead of giving a number", () => {
    const wild = integrate((x) => Math.sin(1 / x) / x, { low: 0, high: 1 }, { mostPieces: 20 });
    expect(wild).toMatchObject({ ok: false });
    expect(integrate((x) => 1 / x, { low: 0, high: 1 })).toMatchObject({ ok: false });
  });

  it("refuses a function without values, and limits out of order", () => {
    expect(() => integrate(Math.sqrt, { low: -1, high: 1 })).toThrow(/gives NaN/);
    expect(() => integrate(Math.sqrt, { low: 1, high: 0 })).toThrow(RangeError);
    expect(integrate(Math.sqrt, { low: 2, high: 2 })).toMatchObject({ ok: true, value: 0 });
  });
});
