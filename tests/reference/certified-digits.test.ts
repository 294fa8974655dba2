import { describe, expect, it } from "vitest";
import {
  correctDigits,
  countDigits,
  linearDigits,
  nonlinearDigits,
} from "lakeproof/decide/published-checks/certified-digits.ts";
import {
  readLinearCertifiedSets,
  readNonlinearCertifiedSets,
} from "lakeproof/read/certified-sets.ts";

// NIST Statistical Reference Datasets: data, starts and certified values in shared/nist-*.csv.
const linear = readLinearCertifiedSets();
const nonlinear = readNonlinearCertifiedSets();

describe("linear least squares on the certified NIST sets", () => {
  it.each(linearDigits(linear).map((row) => [row.set, row] as const))("%s", (set, row) => {
    expect(row.reason).toBeNull();
    // Wampler5 holds errors ten thousand times its data's own last digit: no double-precision QR does much better.
    expect(row.parameterDigits).toBeGreaterThanOrEqual(set === "Wampler5" ? 5 : 7);
    expect(row.standardErrorDigits).toBeGreaterThanOrEqual(7);
  });
});

describe("nonlinear least squares on the certified NIST sets", () => {
  it("reaches 6 digits from all 54 starts with exact slopes, and 4 digits of 52 standard errors", () => {
    const rows = nonlinearDigits(nonlinear, { derivatives: "exact" });
    const counts = countDigits(rows);
    expect(counts.rows).toBe(54);
    expect(counts.parametersWith6, JSON.stringify(rows.filter((r) => r.parameterDigits < 6))).toBe(
      54,
    );
    expect(counts.standardErrorsWith4).toBeGreaterThanOrEqual(52);
    // Lanczos1 fits to the last double: what is left of its residuals is rounding.
    expect(rows.filter((row) => row.standardErrorDigits < 4).map((row) => row.set))
      .toEqual(["Lanczos1", "Lanczos1"]);
  });
});

describe("the count of correct digits", () => {
  it("is capped, never negative, and 0 where there is no value", () => {
    expect(correctDigits(1, 1, 11)).toBe(11);
    expect(correctDigits(5, 1, 11)).toBe(0);
    expect(correctDigits(null, 1, 11)).toBe(0);
    expect(correctDigits(1e-9, 0, 15)).toBeCloseTo(9, 12);
  });
});
