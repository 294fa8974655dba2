import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ELLIPSE_95, ellipsePoints, errorEllipse } from "lakeproof/numeric/error-ellipse.ts";
import { seededRandom } from "lakeproof/numeric/random.ts";

describe("ellipse of two errors", () => {
  it("has the half axes and the tilt that numpy.linalg.eigh 2.4.6 gives", () => {
    // numpy.sqrt(eigh([[2, 1.2], [1.2, 1]])) and arctan of the larger one's eigenvector; the same with -1.2 and swapped.
    const cases = [
      [[[2, 1.2], [1.2, 1]], 1.6733200530681511, 0.44721359549995787, 0.5880026035475677],
      [[[1, -1.2], [-1.2, 2]], 1.6733200530681511, 0.44721359549995787, -0.982793723247329],
      [
        [[4e-4, 9.5e-6], [9.5e-6, 2.5e-7]],
        0.020005640173263863,
        0.00015608093378447334,
        0.023746981738149188,
      ],
    ] as const;
    for (const [covariance, major, minor, tilt] of cases) {
      const ellipse = errorEllipse(covariance);
      expect(ellipse.semiMajor / major).toBeCloseTo(1, 12);
      expect(ellipse.semiMinor / minor).toBeCloseTo(1, 9);
      expect(ellipse.tilt).toBeCloseTo(tilt, 12);
    }
  });

  it("has all its points at the same Mahalanobis distance, whatever the covariance", () => {
    const sizes = fc.double({ min: 1e-4, max: 1e2, noNaN: true });
    fc.assert(fc.property(
      sizes,
      sizes,
      fc.double({ min: -0.999, max: 0.999, noNaN: true }),
      fc.double({ min: 0.1, max: 3, noNaN: true }),
      (u, v, correlation, scale) => {
        const [a, b, d] = [u * u, correlation * u * v, v * v];
        const determinant = a * d - b * b;
        for (const [x, y] of ellipsePoints([2, -1], [[a, b], [b, d]], { scale })) {
          const [p, q] = [x - 2, y + 1];
          const squared = (d * p * p - 2 * b * p * q + a * q * q) / determinant;
          // Centres of size 1 leave 1e-16 / 1e-4 of a point; the correlation magnifies it by up to 1 / (1 - 0.999^2).
          expect(Math.abs(squared / scale ** 2 - 1)).toBeLessThan(1e-6);
        }
      },
    ));
  });

  it("holds 39 of 100 normal errors at one standard uncertainty, 95 at the other size", () => {
    const random = seededRandom("ellipse");
    const [a, b, d] = [2, 1.2, 1];
    const counts = [1, ELLIPSE_95].map((scale) => {
      let inside = 0;
      for (let i = 0; i < 20_000; i++) {
        const first = random.normal(), second = random.normal();
        const x = Math.sqrt(a) * first;
        const y = b / Math.sqrt(a) * first + Math.sqrt(d - b * b / a) * second;
        inside += Number((d * x * x - 2 * b * x * y + a * y * y) / (a * d - b * b) < scale ** 2);
      }
      return inside / 20_000;
    });
    // Three standard errors of 20,000: 1.1 and 0.5 points. 1 - exp(-1/2) = 0.3935.
    expect(Math.abs(counts[0]! - 0.3935)).toBeLessThan(0.011);
    expect(Math.abs(counts[1]! - 0.95)).toBeLessThan(0.005);
  });

  it("is closed, and flat where both errors are one", () => {
    const points = ellipsePoints([0, 0], [[4, 2], [2, 1]], { count: 12 });
    expect(points.length).toBe(13);
    expect(points[12]).toEqual(points[0]);
    expect(errorEllipse([[4, 2], [2, 1]]).semiMinor).toBe(0);
    expect(errorEllipse([[0, 0], [0, 0]])).toEqual({ semiMajor: 0, semiMinor: 0, tilt: 0 });
  });

  it("refuses what is no covariance", () => {
    expect(() => errorEllipse([[1, 2], [2, 1]])).toThrow(RangeError);
    expect(() => errorEllipse([[-1, 0], [0, 1]])).toThrow(RangeError);
    expect(() => errorEllipse([[NaN, 0], [0, 1]])).toThrow(RangeError);
  });
});
