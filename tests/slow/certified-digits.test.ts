import { describe, expect, it } from "vitest";
import {
  countDigits,
  nonlinearDigits,
} from "lakeproof/decide/published-checks/certified-digits.ts";
import { readNonlinearCertifiedSets } from "lakeproof/read/certified-sets.ts";

// NIST Statistical Reference Datasets: data, starts and certified values in shared/nist-*.csv.
const nonlinear = readNonlinearCertifiedSets();

describe("nonlinear least squares on the certified NIST sets", () => {
  it("reaches 4 digits from at least 46 starts with differences, and of at least 44 standard errors", () => {
    const counts = countDigits(nonlinearDigits(nonlinear, { derivatives: "differences" }));
    // Measured 54 and 52; the bar leaves room for engines whose exp and sin differ in the last digit.
    expect(counts.parametersWith4).toBeGreaterThanOrEqual(46);
    expect(counts.standardErrorsWith4).toBeGreaterThanOrEqual(44);
  });
});
