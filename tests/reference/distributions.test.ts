import { describe, expect, it } from "vitest";
import { distributionDigits } from "lakeproof/decide/published-checks/distribution-digits.ts";
import { readDistributionValues } from "lakeproof/read/distribution-values.ts";

// Golden values: shared/distributions-mpmath.csv, made by shared/distributions-mpmath.py (mpmath 1.3.0, 60 digits).
const values = readDistributionValues();
const rows = distributionDigits(values);

describe("distributions against mpmath", () => {
  it.each(rows.map((row) => [row.function, row] as const))("%s keeps 12 digits", (_name, row) => {
    // Relative, far tails included; stdlib's special functions reach 1e-13 at worst (normal tail at -30).
    expect(row.digits, `worst at ${row.worstAt}`).toBeGreaterThan(12);
  });

  it("are all there, with all their points", () => {
    expect(rows.map((row) => row.points).reduce((sum, n) => sum + n)).toBe(125);
    expect(rows.length).toBe(12);
  });

  it("refuse a function of another name", () => {
    const one = { ...values[0]!, function: "toString" };
    expect(() => distributionDigits([one])).toThrow(/toString/);
  });
});
