import fc from "fast-check";
import { Matrix, QrDecomposition } from "ml-matrix";
import { describe, expect, it } from "vitest";
import { factorise } from "lakeproof/numeric/householder.ts";
import { linearLeastSquares } from "lakeproof/numeric/linear-least-squares.ts";
import { nonlinearLeastSquares } from "lakeproof/numeric/nonlinear-least-squares.ts";
import { seededRandom } from "lakeproof/numeric/random.ts";

/** The fit, or the test fails with the reason. */
function must<T extends { readonly ok: boolean }>(result: T): Extract<T, { readonly ok: true }> {
  if (!result.ok) throw new Error(JSON.stringify(result));
  return result as Extract<T, { readonly ok: true }>;
}

const x = [0, 1, 2, 3, 4, 5];
const y = [0.1, 1.3, 1.8, 3.4, 3.7, 5.6];
const uncertainties = [0.1, 0.1, 0.2, 0.5, 0.5, 1];
const line = [x.map(() => 1), x];

describe("the Householder factorisation", () => {
  it("solves as ml-matrix's QR does", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 6 }), fc.integer({ min: 0, max: 9 }), (n, extra) => {
        const random = seededRandom(`matrix ${n} ${extra}`);
        const draw = (k: number) => Array.from({ length: k }, random.normal);
        const columns = Array.from({ length: n }, () => draw(n + extra));
        const right = draw(n + extra);
        const theirs = new QrDecomposition(new Matrix(columns).transpose())
          .solve(Matrix.columnVector(right)).to1DArray();
        const ours = factorise(columns).solve(right);
        // Random matrices this small lose at most a few digits.
        ours.forEach((value, j) => expect(Math.abs(value - theirs[j]!)).toBeLessThan(1e-8));
      }),
      { seed: 7, numRuns: 40 },
    );
  });

  it("gives the inverse of the normal matrix", () => {
    // (1 1 1; 0 1 2) has normal matrix (3 3; 3 5), inverse (5 -3; -3 3)/6.
    const inverse = factorise([[1, 1, 1], [0, 1, 2]]).inverseNormal();
    expect(inverse[0]![0]).toBeCloseTo(5 / 6, 14);
    expect(inverse[0]![1]).toBeCloseTo(-0.5, 14);
    expect(inverse[1]![1]).toBeCloseTo(0.5, 14);
  });

  it("sees that a column is a combination of others, whatever its unit", () => {
    const columns = [[1, 1, 1, 1], [1e-9, 2e-9, 3e-9, 5e-9], [3e6, 5e6, 7e6, 11e6]];
    expect(factorise(columns).rank).toBe(2);
    expect(() => factorise(columns).inverseNormal()).toThrow(/rank is 2 of 3/);
    expect(factorise(columns.slice(0, 2)).rank).toBe(2);
  });

  it("refuses more unknowns than equations, and NaN", () => {
    expect(() => factorise([[1], [2]])).toThrow(RangeError);
    expect(() => factorise([[1, NaN]])).toThrow(/finite/);
  });
});

describe("linear least squares", () => {
  it("weighs by the uncertainties", () => {
    const fit = must(linearLeastSquares({ columns: line, observed: y, uncertainties }));
    // Exact weighted answer by rational arithmetic: 0.1760062, 0.9716642.
    expect(fit.parameters[0]).toBeCloseTo(0.1760062, 7);
    expect(fit.parameters[1]).toBeCloseTo(0.9716642, 7);
  });

  it("does not care about the scale of uncertainties when it takes their size from the scatter", () => {
    const one = must(linearLeastSquares({ columns: line, observed: y, uncertainties }));
    const ten = must(linearLeastSquares({
      columns: line,
      observed: y,
      uncertainties: uncertainties.map((u) => 10 * u),
    }));
    ten.standardErrors.forEach((error, j) => expect(error).toBeCloseTo(one.standardErrors[j]!, 12));
    const stated = must(linearLeastSquares({ columns: line, observed: y, uncertainties }, {
      covariance: "stated",
    }));
    const factor = one.residualStandardDeviation!;
    expect(stated.standardErrors[0]! * factor).toBeCloseTo(one.standardErrors[0]!, 12);
  });

  it("says why there is no fit", () => {
    const twice = [line[0]!, line[1]!, line[1]!];
    expect(linearLeastSquares({ columns: twice, observed: y })).toMatchObject({ ok: false });
    expect(linearLeastSquares({ columns: [[1], [2]], observed: [1] })).toMatchObject({ ok: false });
    const exact = linearLeastSquares({ columns: [[1, 1], [0, 1]], observed: [1, 2] });
    expect(exact).toMatchObject({ ok: false });
    expect(() => linearLeastSquares({ columns: line, observed: [...y.slice(1), NaN] })).toThrow();
    expect(() => linearLeastSquares({ columns: line, observed: y, uncertainties: x })).toThrow();
  });
});

describe("nonlinear least squares", () => {
  const straight = ([a, b]: readonly number[]) => x.map((value) => a! + b! * value);

  it("equals the linear fit where the curve is a line, weights and standard errors included", () => {
    const linear = must(linearLeastSquares({ columns: line, observed: y, uncertainties }));
    const fit = must(
      nonlinearLeastSquares({ model: straight, observed: y, uncertainties, start: [3, -2] }),
    );
    fit.parameters.forEach((value, j) => expect(value).toBeCloseTo(linear.parameters[j]!, 9));
    fit.standardErrors.forEach((error, j) =>
      expect(error).toBeCloseTo(linear.standardErrors[j]!, 9)
    );
    expect(fit.degreesOfFreedom).toBe(4);
  });

  it("stops at a bound and says so: no uncertainty there, the rest fitted without it", () => {
    const fit = must(nonlinearLeastSquares({
      model: straight,
      observed: y,
      start: [0.5, 0.5],
      bounds: [{ low: 0.3 }, {}],
    }));
    expect(fit.parameters[0]).toBe(0.3);
    expect(fit.atBound).toEqual([true, false]);
    expect(fit.standardErrors[0]).toBeNull();
    // With the intercept held, the slope is sum x (y - 0.3) / sum x^2.
    const slope = x.reduce((sum, value, i) => sum + value * (y[i]! - 0.3), 0) /
      x.reduce((sum, value) => sum + value * value, 0);
    expect(fit.parameters[1]).toBeCloseTo(slope, 10);
    expect(fit.degreesOfFreedom).toBe(5);
  });

  it("leaves a bound again when the minimum is inside", () => {
    const fit = must(nonlinearLeastSquares({
      model: straight,
      observed: y,
      start: [-1, 0.5],
      bounds: [{ low: -1 }, {}],
    }));
    expect(fit.atBound).toEqual([false, false]);
  });

  it("says that two parameters can't be told apart instead of giving them errors", () => {
    const fit = must(nonlinearLeastSquares({
      model: ([a, b]) => x.map((value) => a! * b! * value),
      derivatives: ([a, b]) => [x.map((value) => b! * value), x.map((value) => a! * value)],
      observed: y,
      start: [1, 1],
    }));
    expect(fit.standardErrors).toEqual([null, null]);
  });

  it("does not depend on the units of the parameters", () => {
    const times = [0, 1, 2, 3, 4, 6, 8];
    const observed = [8.1, 5.2, 3.1, 2.2, 1.2, 0.6, 0.2];
    const fit = (unit: number) =>
      must(nonlinearLeastSquares({
        model: ([size, rate]) => times.map((t) => size! * Math.exp(-rate! * unit * t)),
        observed,
        start: [4, 1 / unit],
      }));
    expect(fit(1e8).parameters[1]! * 1e8).toBeCloseTo(fit(1).parameters[1]!, 9);
    expect(fit(1e-8).standardErrors[1]! * 1e-8).toBeCloseTo(fit(1).standardErrors[1]!, 9);
  });

  it("finds a parameter whose value is zero, started at zero too", () => {
    const observed = x.map((value) => 2 * value);
    for (const start of [[0, 1], [1, 0], [0, 0]]) {
      const fit = must(nonlinearLeastSquares({ model: straight, observed, start }));
      expect(fit.parameters[0]).toBeCloseTo(0, 9);
      expect(fit.parameters[1]).toBeCloseTo(2, 9);
    }
  });

  it("fails with a reason, never with NaN", () => {
    const failing = (model: (p: readonly number[]) => readonly number[], start = [1, 1]) =>
      nonlinearLeastSquares({ model, observed: y, start });
    expect(failing(() => y.map(() => NaN))).toMatchObject({ ok: false });
    expect(failing(straight, [1, 1, 1, 1, 1, 1, 1])).toMatchObject({ ok: false });
    expect(nonlinearLeastSquares({ model: straight, observed: y, start: [9, 9] }, { mostSteps: 1 }))
      .toMatchObject({ ok: false });
    expect(() => failing(straight, [NaN, 1])).toThrow(RangeError);
    expect(() =>
      nonlinearLeastSquares({
        model: straight,
        observed: y,
        start: [1, 1],
        bounds: [{ low: 2 }, {}],
      })
    ).toThrow(/outside its bounds/);
  });
});
