import { describe, expect, it } from "vitest";
import { coverageTable } from "lakeproof/show/coverage-table.ts";

const rows = Deno.readTextFileSync(new URL("../../shared/coverage.csv", import.meta.url))
  .trim().split("\n").map((line) => line.split(","));
const [head, ...body] = rows;
const records = body.map((cells) =>
  Object.fromEntries(head!.map((name, i) => [name, cells[i] ?? ""]))
);

describe("the table of coverage", () => {
  for (const foils of ["pair", "null"] as const) {
    it(`names every row of the study apart (${foils})`, () => {
      const table = coverageTable(records, foils);
      const names = table.rows.map((row) => `${row[0]!.text}, ${row[1]!.text}`);
      expect(new Set(names).size).toBe(names.length);
      expect(names).toHaveLength(records.length / 2);
    });
  }
});
