import { describe, expect, it } from "vitest";
import { gradientOf, PLAIN } from "lakeproof/numeric/dual.ts";
import { parseFormula } from "lakeproof/numeric/formula.ts";
import { numericalJacobian } from "lakeproof/numeric/numerical-jacobian.ts";

const FORMULAS = [
  "a*exp(-b/c) + sqrt(a + b**2)",
  "log(a)/(b - c)**3",
  "sin(a*b)*cos(c) - atan(b/a)",
  "a**b - c**2*pi",
  "-(a - 4)**2/(2*c**2) + 1e-3*b",
];

describe("exact slopes", () => {
  it.each(FORMULAS)("of %s equal differences", (text) => {
    const formula = parseFormula(text, ["a", "b", "c"]);
    const at = [1.7, 0.9, 2.3];
    const { value, slopes } = gradientOf((n, p) => formula(n, p), at);
    expect(value).toBeCloseTo(formula(PLAIN, at), 14);
    numericalJacobian((p) => [formula(PLAIN, p)], at).forEach((column, j) => {
      // Five-point differences keep about 11 digits.
      expect(Math.abs(column[0]! - slopes[j]!)).toBeLessThan(1e-10 * (1 + Math.abs(slopes[j]!)));
    });
  });

  it("of a power of a negative base to a whole number are there", () => {
    const { value, slopes } = gradientOf((n, [x]) => n.power(x!, n.constant(3)), [-2]);
    expect([value, slopes[0]]).toEqual([-8, 12]);
  });
});

describe("differences", () => {
  it("scale their step with the argument: 1e-7 keeps its digits as 1 does", () => {
    const slope = numericalJacobian(([x]) => [Math.exp(1e7 * x!)], [1e-7])[0]![0]!;
    expect(slope / 1e7).toBeCloseTo(Math.E, 9);
  });

  it("step closer where the function ends, and refuse where there is no room", () => {
    const near = numericalJacobian(([x]) => [Math.sqrt(x! - 1)], [1.001])[0]![0]!;
    expect(near).toBeCloseTo(0.5 / Math.sqrt(0.001), 4);
    expect(() => numericalJacobian(([x]) => [Math.sqrt(x! - 1)], [1])).toThrow(/differences/);
  });
});

describe("formulas", () => {
  it("follow the usual precedence", () => {
    const value = (text: string) => parseFormula(text, ["x"])(PLAIN, [3]);
    expect(value("-x**2")).toBe(-9);
    expect(value("2**-1*4")).toBe(2);
    expect(value("2**3**2")).toBe(512);
    expect(value("12/2/3 - 1 - 1")).toBe(0);
    expect(value("1.5e-1*x")).toBeCloseTo(0.45, 15);
  });

  it.each(["", "1 +", "(1", "1 2", "y", "exp", "foo(1)", "1 & 2"])("refuse %j", (text) => {
    expect(() => parseFormula(text, ["x"])).toThrow(SyntaxError);
  });
});
