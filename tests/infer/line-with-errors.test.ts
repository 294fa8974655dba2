import { describe, expect, it } from "vitest";
import { lineWithErrors, type UncertainPoint } from "lakeproof/infer/line-with-errors.ts";

// The published example itself stands in shared/published-values.csv; here is what must hold for any points.

const POINTS: readonly UncertainPoint[] = [
  [0, 1.1, 0.1, 0.2],
  [1.2, 2.6, 0.2, 0.1],
  [1.9, 5.2, 0.3, 0.3],
  [3.1, 6.6, 0.1, 0.2],
  [4.2, 9.3, 0.2, 0.4],
].map(([x, y, xUncertainty, yUncertainty]) =>
  ({ x, y, xUncertainty, yUncertainty, correlation: 0.3 }) as UncertainPoint
);

function fitted(points: readonly UncertainPoint[]) {
  const line = lineWithErrors(points);
  if (!line.ok) throw new Error(line.reason);
  return line;
}

/** Sum of squares that the line makes least, with its intercept at the best for that slope. */
function squares(slope: number): number {
  const variance = (one: UncertainPoint) =>
    one.yUncertainty ** 2 + (slope * one.xUncertainty) ** 2 -
    2 * slope * 0.3 * one.xUncertainty * one.yUncertainty;
  let weights = 0, offset = 0;
  for (const one of POINTS) {
    weights += 1 / variance(one);
    offset += (one.y - slope * one.x) / variance(one);
  }
  const intercept = offset / weights;
  return POINTS.reduce(
    (sum, one) => sum + (one.y - intercept - slope * one.x) ** 2 / variance(one),
    0,
  );
}

describe("a line through points uncertain in both coordinates", () => {
  it("leaves the least sum of squares across the line, correlated errors included", () => {
    const { slope, weightedSquares } = fitted(POINTS);
    expect(weightedSquares).toBeCloseTo(squares(slope), 10);
    // A thousandth of the slope to either side costs about 1e-4 of the sum, far above rounding.
    expect(squares(slope * 1.001)).toBeGreaterThan(weightedSquares);
    expect(squares(slope * 0.999)).toBeGreaterThan(weightedSquares);
  });

  it("turns over when the coordinates change places", () => {
    const line = fitted(POINTS);
    const turned = fitted(POINTS.map((one) => ({
      x: one.y,
      y: one.x,
      xUncertainty: one.yUncertainty,
      yUncertainty: one.xUncertainty,
      correlation: 0.3,
    })));
    expect(turned.slope * line.slope).toBeCloseTo(1, 11);
    expect(turned.intercept).toBeCloseTo(-line.intercept / line.slope, 11);
    expect(turned.weightedSquares).toBeCloseTo(line.weightedSquares, 10);
  });

  it("keeps its slope and its errors when all points move far away", () => {
    const line = fitted(POINTS);
    const far = fitted(POINTS.map((one) => ({ ...one, x: one.x + 1e6, y: one.y - 1e6 })));
    // Coordinates of 1e6 hold 1e-10.
    expect(far.slope).toBeCloseTo(line.slope, 8);
    expect(far.slopeUncertainty).toBeCloseTo(line.slopeUncertainty, 8);
  });

  it("puts the adjusted points on the line", () => {
    const { slope, intercept, adjusted } = fitted(POINTS);
    for (const { x, y } of adjusted) expect(y).toBeCloseTo(intercept + slope * x, 11);
  });

  it("finds a level line, whose slope is nothing to settle on", () => {
    const level = fitted(
      [0, 1, 2, 3].map((x) => ({ x, y: x % 2, xUncertainty: 0.1, yUncertainty: 0.1 })),
    );
    expect(Math.abs(level.slope)).toBeLessThan(0.3);
    const flat = fitted([0, 1, 2].map((x) => ({ x, y: 2, xUncertainty: 0.1, yUncertainty: 0.1 })));
    expect(flat.slope).toBe(0);
  });

  it("says why where there is no line, and refuses points without uncertainty", () => {
    const u = { xUncertainty: 0.1, yUncertainty: 0.1 };
    expect(lineWithErrors([{ x: 1, y: 1, ...u }])).toMatchObject({ ok: false });
    expect(lineWithErrors([1, 2, 3].map((y) => ({ x: 1, y, ...u })))).toMatchObject({
      ok: false,
      reason: expect.stringMatching(/same x/),
    });
    expect(() => lineWithErrors([{ x: 1, y: 1, ...u }, { x: NaN, y: 1, ...u }])).toThrow(/point 2/);
    expect(() =>
      lineWithErrors([{ x: 1, y: 1, xUncertainty: 0, yUncertainty: 0 }, { x: 2, y: 1, ...u }])
    ).toThrow(/point 1/);
  });
});
