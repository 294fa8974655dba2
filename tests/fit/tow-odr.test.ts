import { describe, expect, it } from "vitest";
import type { TowData } from "lakeproof/fit/tow-data.ts";
import { fitTow } from "lakeproof/fit/tow-fit.ts";
import { lineWithErrors } from "lakeproof/infer/line-with-errors.ts";
import golden from "../golden/tow-odr.json" with { type: "json" };

// Parent: tests/golden/tow-odr.py (scipy.odr and scipy.optimize.curve_fit; versions in the JSON).

function data(exactSpeeds: boolean): TowData {
  return {
    readings: golden.points.map(({ speed, pull, uSpeed, uPull }, i) => ({
      speed,
      tension: pull,
      angle: 0,
      weight: 800,
      inertia: 0,
      group: String(i),
      block: "all",
      uncertainty: {
        speed: { fixed: exactSpeeds ? 0 : uSpeed, share: 0 },
        tension: { fixed: uPull, share: 0 },
        angle: 0,
      },
    })),
    craft: { lift: 800, phi: () => 1, expected: null },
  };
}

function close(actual: number, expected: number, digits: number): void {
  expect(Math.abs(actual / expected - 1), `${actual} for ${expected}`).toBeLessThan(10 ** -digits);
}

describe("the law without its planform", () => {
  // Adjusted points and orthogonal distance regression have the same stationary point, exactly.
  it("is scipy's orthogonal distance regression where speeds have errors", () => {
    const fit = fitTow(data(false), { scatterScale: 1 });
    if (!fit.ok) throw new Error(fit.reason);
    fit.parameters.forEach((p, j) => close(p, golden.law.parameters[j]!, 6));
    // ODRPACK differentiates at the adjusted points too, by differences for some terms: three digits.
    fit.covariance.forEach((row, i) =>
      row.forEach((value, j) => close(value, golden.law.covariance[i]![j]!, 3))
    );
    const squares = fit.scaledResiduals.reduce((sum, z) => sum + z * z, 0);
    close(squares, golden.law.squares, 6);
  });

  it("is scipy's curve fit where speeds are exact", () => {
    const fit = fitTow(data(true), { scatterScale: 1 });
    if (!fit.ok) throw new Error(fit.reason);
    const { parameters, covariance } = golden.lawWithExactSpeeds;
    fit.parameters.forEach((p, j) => close(p, parameters[j]!, 6));
    fit.covariance.forEach((row, i) =>
      row.forEach((value, j) => close(value, covariance[i]![j]!, 6))
    );
  });
});

describe("a line with errors in both coordinates", () => {
  it("is scipy's orthogonal distance regression", () => {
    const { x, y, ux, uy, parameters, covariance, squares } = golden.line;
    const line = lineWithErrors(
      x.map((one, i) => ({ x: one, y: y[i]!, xUncertainty: ux[i]!, yUncertainty: uy[i]! })),
    );
    if (!line.ok) throw new Error(line.reason);
    close(line.intercept, parameters[0]!, 6);
    close(line.slope, parameters[1]!, 6);
    close(line.interceptUncertainty, Math.sqrt(covariance[0]![0]!), 6);
    close(line.slopeUncertainty, Math.sqrt(covariance[1]![1]!), 6);
    close(line.covariance, covariance[0]![1]!, 6);
    close(line.weightedSquares, squares, 6);
  });
});
