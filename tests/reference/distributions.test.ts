import { describe, expect, it } from "vitest";
import { parse } from "csv-parse/sync";
import * as distributions from "lakeproof/numeric/distributions.ts";

interface Row {
  readonly function: string;
  readonly first: string;
  readonly second: string;
  readonly third: string;
  readonly value: string;
}

// Golden values: shared/distributions-mpmath.csv, made by shared/distributions-mpmath.py (mpmath 1.3.0, 60 digits).
const rows: Row[] = parse(
  Deno.readTextFileSync(new URL("../../shared/distributions-mpmath.csv", import.meta.url)),
  { columns: true },
);

function ours(row: Row): number {
  const [x, a, b] = [Number(row.first), Number(row.second), Number(row.third)] as const;
  switch (row.function) {
    case "fisherFLowerTail":
    case "fisherFUpperTail":
    case "fisherFQuantile":
      return distributions[row.function](x, { numerator: a, denominator: b });
    case "noncentralTLowerTail":
    case "noncentralTUpperTail":
      return distributions[row.function](x, { degreesOfFreedom: a, noncentrality: b });
    case "normalLowerTail":
    case "normalQuantile":
      return distributions[row.function](x);
    case "studentTUpperTail":
    case "studentTQuantile":
    case "chiSquareLowerTail":
    case "chiSquareUpperTail":
    case "chiSquareQuantile":
      return distributions[row.function](x, a);
  }
  throw new Error(`no such function: ${row.function}`);
}

describe("distributions against mpmath", () => {
  const functions = [...new Set(rows.map((row) => row.function))];
  it.each(functions)("%s agrees to 12 digits, far tails included", (name) => {
    for (const row of rows.filter((one) => one.function === name)) {
      // Relative: stdlib's special functions reach 1e-13 at worst (normal tail at -30).
      expect(Math.abs(ours(row) / Number(row.value) - 1), Object.values(row).join(" "))
        .toBeLessThan(1e-12);
    }
  });

  it("count every function with its points", () => {
    expect(rows.length).toBe(125);
    expect(functions.length).toBe(12);
  });
});
