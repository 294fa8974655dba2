import { describe, expect, it } from "vitest";
import { finding } from "lakeproof/base/finding.ts";
import { shortened } from "lakeproof/show/alike-findings.ts";
import { findingsText } from "lakeproof/show/findings-text.ts";

const odd = (row: number, file = "glides.csv") =>
  finding({ severity: "warning", code: "odd", file, row, column: "drop", what: `Row ${row}.` });

describe("a long series of like findings", () => {
  const series = [2, 3, 4, 5, 6, 9].map((row) => odd(row));

  it("is told by its first two and the rows of the others", () => {
    expect(shortened(series).map((one) => one.what)).toEqual([
      "Row 2.",
      "Row 3.",
      "and 4 more like these: rows 4 to 6, 9.",
    ]);
  });

  it("is told in full up to five", () => {
    expect(shortened(series.slice(1))).toEqual(series.slice(1));
  });

  it("is one series for each file: a session's rows are not another's", () => {
    const two = [...series.slice(0, 3), ...series.slice(0, 3).map((one) => odd(one.row!, "b"))];
    expect(shortened(two)).toEqual(two);
  });

  it("names its file where it is shown", () => {
    expect(findingsText(series)).toContain("Warning: glides.csv: and 4 more like these");
  });
});
