import { parse } from "csv-parse/sync";
import { describe, expect, it } from "vitest";
import type { TableRecord } from "lakeproof/base/records.ts";
import { tableCsv } from "lakeproof/publish/page/table-csv.ts";

const table = (...cells: (string | number)[]): TableRecord => ({
  name: "t",
  caption: "c",
  columns: cells.map((_, n) => ({ label: `c${n}`, unit: n === 0 ? "m/s" : "", align: "left" })),
  rows: [
    cells.map((cell) => ({
      text: String(cell),
      number: typeof cell === "number" ? cell : null,
      mark: null,
    })),
  ],
});

describe("a table as CSV", () => {
  it("carries the full number, twelve digits of it, and the unit in its header", () => {
    expect(tableCsv(table(1 / 3, -2.5), "point")).toBe("c0 [m/s],c1\r\n0.333333333333,-2.5\r\n");
  });

  it("with decimal commas parts cells by semicolons and names its encoding", () => {
    expect(tableCsv(table(1 / 3, -2.5), "comma")).toBe(
      "\ufeffc0 [m/s];c1\r\n0,333333333333;-2,5\r\n",
    );
  });

  it("guards texts that a spreadsheet would take for formulas, and no numbers", () => {
    for (const text of ["=1+1", "+1", "-1", "@SUM(A1)", "\t=1"]) {
      for (const sign of ["point", "comma"] as const) {
        const [, row] = parse(tableCsv(table(text, -1), sign), {
          bom: true,
          delimiter: sign === "comma" ? ";" : ",",
        });
        expect(row).toEqual([`'${text}`, "-1"]);
      }
    }
  });

  it("is read back whole by another CSV reader, whatever the texts hold", () => {
    const texts = ['a"b', "a,b;c", "line\r\nbreak", "", " edge ", "日本 <script>"];
    for (const sign of ["point", "comma"] as const) {
      const rows = parse(tableCsv(table(...texts), sign), {
        bom: true,
        delimiter: sign === "comma" ? ";" : ",",
      });
      expect(rows[1]).toEqual(texts);
    }
  });
});
