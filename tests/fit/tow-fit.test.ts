import { describe, expect, it } from "vitest";
import { inverseOfThree, mapThree, type SymmetricThree } from "lakeproof/fit/symmetric-three.ts";
import type { TowData } from "lakeproof/fit/tow-data.ts";
import { fitTow, type TowFit } from "lakeproof/fit/tow-fit.ts";
import { towedBestSpeed, towedLeastPowerSpeed } from "lakeproof/fit/tow-curve.ts";
import { lineWithErrors } from "lakeproof/infer/line-with-errors.ts";
import { leastDragSpeed, leastPowerSpeed } from "lakeproof/model/drag-law.ts";
import { linearLeastSquares } from "lakeproof/numeric/linear-least-squares.ts";
import { seededRandom } from "lakeproof/numeric/random.ts";
import { goldenData } from "../golden/tow-data.ts";

function fitted(data: TowData): TowFit {
  const fit = fitTow(data);
  if (!fit.ok) throw new Error(fit.reason);
  return fit;
}

/** Level pulls along a law with a little scatter; constants in newtons at 5 m/s. */
function level(law: readonly [number, number, number], scatter: number): TowData {
  const random = seededRandom("level pulls");
  const readings = Array.from({ length: 24 }, (_, i) => {
    const set = 3.5 + 0.3 * Math.floor(i / 2);
    const drag = law[0] * (set / 5) ** 2 + law[1] + law[2] * (5 / set) ** 2;
    return {
      speed: set * (1 + scatter * random.normal()),
      tension: drag * (1 + scatter * random.normal()),
      angle: 0,
      weight: 800,
      inertia: 0,
      group: String(set),
      block: "all",
      uncertainty: {
        speed: { fixed: 0, share: scatter },
        tension: { fixed: 0, share: scatter },
        angle: 0,
      },
    };
  });
  return { readings, craft: { lift: 800, phi: () => 1, expected: null } };
}

describe("a law through towed points", () => {
  it("does not depend on the order of the points or on what speeds are called", () => {
    const data = goldenData("birch");
    const fit = fitted(data);
    const turned = fitted({
      ...data,
      readings: data.readings.map((one) => ({ ...one, group: `speed ${one.group}` })).reverse(),
    });
    // Sums in another order, 60 points' worth of rounding.
    fit.parameters.forEach((p, j) => expect(turned.parameters[j]! / p - 1).toBeCloseTo(0, 9));
    expect(turned.scatterScale / fit.scatterScale - 1).toBeCloseTo(0, 9);
  });

  it("is weighted least squares where speeds are exact and the planform is off", () => {
    const data = level([40, -5, 25], 0.02);
    const exact: TowData = {
      ...data,
      readings: data.readings.map((one, i) => ({
        ...one,
        uncertainty: {
          speed: { fixed: 0, share: 0 },
          tension: { fixed: 0.5 + 0.1 * (i % 4), share: 0 },
          angle: 0,
        },
      })),
    };
    const fit = fitted(exact);
    const plain = linearLeastSquares({
      columns: [
        exact.readings.map((one) => (one.speed / fit.referenceSpeed) ** 2),
        exact.readings.map(() => 1),
        exact.readings.map((one) => (fit.referenceSpeed / one.speed) ** 2),
      ],
      observed: exact.readings.map((one) => one.tension),
      uncertainties: exact.readings.map((one) => one.uncertainty.tension.fixed),
    }, { covariance: "stated" });
    if (!plain.ok) throw new Error(plain.reason);
    fit.parameters.forEach((p, j) => expect(p / plain.parameters[j]! - 1).toBeCloseTo(0, 9));
    fit.parameters.forEach((_, j) =>
      expect(
        fit.dataCovariance[j]![j]! / (fit.scatterScale * plain.covariance[j]![j]!) - 1,
      ).toBeCloseTo(0, 9)
    );
    // All of the law comes from the points then.
    expect(fit.effectiveParameters).toBeCloseTo(3, 9);
  });

  it("agrees with York's line through squared lift coefficients and drag coefficients", () => {
    const data = level([40, 0, 25], 0.01);
    // The constant term pinned to nothing leaves the straight line.
    const fit = fitted({
      ...data,
      craft: {
        ...data.craft,
        expected: {
          constant: { mean: 0, standardUncertainty: 1e-6 },
          liftTerm: { mean: 1, standardUncertainty: 1e9 },
        },
      },
    });
    const pressure = (v: number) => 500 * 0.16 * v * v;
    const line = lineWithErrors(data.readings.map(({ speed, tension }) => {
      const lift = 800 / pressure(speed), drag = tension / pressure(speed);
      // Speed 1 %: four shares of it in the squared lift coefficient, two in the drag coefficient, both the same way.
      return {
        x: lift ** 2,
        y: drag,
        xUncertainty: 0.04 * lift ** 2,
        yUncertainty: Math.hypot(0.02, 0.01) * drag,
        correlation: 0.02 / Math.hypot(0.02, 0.01),
      };
    }));
    if (!line.ok) throw new Error(line.reason);
    const factor = fit.parameters[2] * fit.referenceSpeed ** 2 * 500 * 0.16 / 800 ** 2;
    // Same estimator to first order; second-order terms of 1 % errors stay within 1 %.
    expect(Math.abs(line.slope / factor - 1)).toBeLessThan(0.01);
  });

  it("has its least drag and least power where the closed form has them", () => {
    const fit = fitted(goldenData("alder"));
    const v0 = fit.referenceSpeed;
    const law = {
      a: fit.parameters[0] / v0 ** 2,
      d: fit.parameters[1],
      e: fit.parameters[2] * v0 ** 2,
    };
    // Slopes by differences of 0.02 m/s of a constant phi are exact; the root is found to 1e-13.
    expect(towedBestSpeed(fit)!.speed).toBeCloseTo(leastDragSpeed(law), 10);
    expect(towedLeastPowerSpeed(fit)!.speed).toBeCloseTo(leastPowerSpeed(law), 10);
  });

  it("refuses readings that are no pull, and says why where there is no law", () => {
    const data = goldenData("alder");
    const with_ = (part: object): TowData => ({
      ...data,
      readings: data.readings.map((one, i) => i === 3 ? { ...one, ...part } : one),
    });
    for (const part of [{ tension: 0 }, { tension: -20 }, { speed: 0 }, { speed: NaN }]) {
      expect(() => fitTow(with_(part))).toThrow(/above zero/);
    }
    expect(fitTow({ ...data, readings: data.readings.slice(0, 3) })).toMatchObject({ ok: false });
    const one = level([40, 0, 25], 0);
    const same = {
      ...one,
      readings: one.readings.map((two) => ({ ...two, speed: 5, tension: 60 })),
    };
    expect(fitTow(same)).toMatchObject({ ok: false });
  });
});

describe("the inverse of a symmetric matrix of three", () => {
  it("times the matrix is one, however different the sizes", () => {
    const matrix: SymmetricThree = [[4e8, 2e3, 1e4], [2e3, 3e-2, 1e-2], [1e4, 1e-2, 2]];
    const inverse = inverseOfThree(matrix)!;
    mapThree((i, j) => {
      const product = [0, 1, 2].reduce((sum, k) => sum + matrix[i]![k]! * inverse[k]![j]!, 0);
      const size = Math.sqrt(matrix[i]![i]! / matrix[j]![j]!);
      expect(product / size).toBeCloseTo(i === j ? 1 / size : 0, 10);
      return 0;
    });
  });

  it("is not there for a matrix that is singular or not definite", () => {
    expect(inverseOfThree([[1, 1, 0], [1, 1, 0], [0, 0, 1]])).toBeNull();
    expect(inverseOfThree([[1, 2, 0], [2, 1, 0], [0, 0, 1]])).toBeNull();
    expect(inverseOfThree([[0, 0, 0], [0, 1, 0], [0, 0, 1]])).toBeNull();
  });
});
