import { describe, expect, it } from "vitest";
import { fitReport, formatFitReport } from "lakeproof/infer/fit-report.ts";
import { linearLeastSquares } from "lakeproof/numeric/linear-least-squares.ts";
import { nonlinearLeastSquares } from "lakeproof/numeric/nonlinear-least-squares.ts";

const x = [0, 1, 2, 3, 4];
const observed = [0.1, 1.2, 1.9, 3.2, 3.9];
const names = [{ name: "offset", unit: "N" }, { name: "slope", unit: "N/m" }];
const line = ([a, b]: readonly number[]) => x.map((value) => a! + b! * value);

describe("a fit report", () => {
  it("says what was used and left out, and how large the scatter is", () => {
    const uncertainties = x.map(() => 0.1);
    const fit = linearLeastSquares({ columns: [x.map(() => 1), x], observed, uncertainties }, {
      covariance: "stated",
    });
    if (!fit.ok) throw new Error(fit.reason);
    const report = fitReport(fit, {
      method: "weighted linear least squares",
      parameters: names,
      leftOut: [{ point: "6", reason: "line slipped" }],
      weighted: true,
    });
    expect(report).toMatchObject({ pointsUsed: 5, degreesOfFreedom: 3 });
    expect(report.reducedChiSquare).toBeCloseTo(fit.chiSquare / 3, 12);
    expect(report.chanceOfLarger).toBeGreaterThan(0.05);
    // Stated errors count as known: a normal interval, 1.96 standard errors either way.
    const slope = report.parameters[1]!.quantity;
    expect((slope.high! - slope.value) / slope.standardUncertainty!).toBeCloseTo(1.959964, 6);
    // The covariance of a line's offset and slope is -mean(x)/Sxx: correlation -sqrt(6)/3 here.
    expect(report.correlations[0]!.coefficient).toBeCloseTo(-Math.sqrt(6) / 3, 10);
    const text = formatFitReport(report);
    expect(text).toContain("5 points used, 1 left out, 3 degrees of freedom");
    expect(text).toContain("6 (line slipped)");
    expect(text).toMatch(/correlation of offset and slope: .0\.82/);
    expect(text).not.toMatch(/NaN|undefined|null/);
  });

  it("says plainly: at a bound, did not move, no uncertainty", () => {
    const bounded = nonlinearLeastSquares({
      model: line,
      observed,
      start: [0.5, 0.5],
      bounds: [{ low: 0.3 }, {}],
    });
    if (!bounded.ok) throw new Error(bounded.reason);
    const atBound = fitReport(bounded, { method: "search", parameters: names });
    expect(atBound.parameters[0]!.remarks).toEqual(["at bound", "no uncertainty could be had"]);
    expect(atBound.parameters[0]!.quantity).toMatchObject({ value: 0.3, low: null });
    expect(atBound.parameters[1]!.remarks).toEqual([]);
    expect(formatFitReport(atBound)).toContain("[at bound]");

    const idle = nonlinearLeastSquares({
      model: ([a]) => x.map((value) => a! + value),
      observed,
      start: [0, 7],
      derivatives: () => [x.map(() => 1), x.map(() => 0)],
    });
    if (!idle.ok) throw new Error(idle.reason);
    const report = fitReport(idle, { method: "search", parameters: names });
    expect(report.parameters[1]!.remarks).toEqual(["did not move", "no uncertainty could be had"]);
    expect(formatFitReport(report)).not.toMatch(/NaN|undefined|null/);
  });

  it("refuses a name too few", () => {
    const fit = linearLeastSquares({ columns: [x.map(() => 1), x], observed });
    if (!fit.ok) throw new Error(fit.reason);
    expect(() => fitReport(fit, { method: "line", parameters: names.slice(1) })).toThrow(/2 param/);
  });
});
