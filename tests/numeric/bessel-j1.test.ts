import { describe, expect, it } from "vitest";
import { besselJ1OverArgument } from "lakeproof/numeric/bessel-j1.ts";

/* Parent of the values (Python, mpmath 1.3.0, 40 digits): besselj(1, mpf(z)) / mpf(z). The same package gave the Chebyshev
 * coefficients: projections on 60 points of J1(z)/z in 2 (z/8)^2 - 1, and of P and Q from J1 and Y1 in 2 (8/z)^2 - 1. */
const MPMATH: readonly [number, number][] = [
  [0.5, 0.484536915349747773],
  [1, 0.440050585744933516],
  [5, -0.0655158275182930444],
  [7.9, 0.0277442278381963474],
  [8.1, 0.0305688601211843109],
  [12, -0.0186205920408856344],
  [25, -0.00501400998321159619],
  [100, -0.00077145352014112158],
  [1000, 4.72831190708952392e-6],
];

/** J1(z) = (1/pi) int_0^pi cos(tau - z sin tau) dtau (DLMF 10.9.2); the trapezoid is exact to J_2N(z) on a full period. */
function byIntegral(z: number): number {
  const n = 400;
  let sum = 0;
  for (let k = 0; k < n; k++) {
    const tau = 2 * Math.PI * k / n;
    sum += Math.cos(tau - z * Math.sin(tau));
  }
  return sum / n / z;
}

describe("J1(z)/z", () => {
  it("is 1/2 at zero", () => {
    expect(besselJ1OverArgument(0)).toBeCloseTo(0.5, 15);
  });
  it("equals 40-digit values", () => {
    // 1e-15: a few units of the last place of the largest value.
    for (const [z, value] of MPMATH) {
      expect(Math.abs(besselJ1OverArgument(z) - value)).toBeLessThan(1e-15);
    }
  });
  it("equals its integral representation across both branches", () => {
    // 3e-15: rounding of a sum of 400 cosines.
    for (let z = 0.05; z < 60; z += 0.37) {
      expect(Math.abs(besselJ1OverArgument(z) - byIntegral(z))).toBeLessThan(3e-15);
    }
  });
  it("vanishes at the first zero of J1", () => {
    // DLMF table 10.21.1: j_(1,1) = 3.83170 59702.
    expect(Math.abs(besselJ1OverArgument(3.8317059702))).toBeLessThan(1e-11);
  });
  it("refuses what is not a finite number of 0 or more", () => {
    for (const z of [-1, NaN, Infinity]) {
      expect(() => besselJ1OverArgument(z)).toThrow(RangeError);
    }
  });
});
