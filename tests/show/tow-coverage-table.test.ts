import { describe, expect, it } from "vitest";
import {
  sharedErrorsTable,
  towClaimsTable,
  towCoverageTable,
} from "lakeproof/show/tow-coverage-table.ts";
import { falseWordsTable, unitSlipsTable } from "lakeproof/show/tow-findings-table.ts";

function records(name: string) {
  const [head, ...rows] = Deno.readTextFileSync(
    new URL(`../../shared/${name}`, import.meta.url),
  ).trim().split("\n").map((line) => line.split(","));
  return rows.map((cells) => Object.fromEntries(head!.map((one, i) => [one, cells[i] ?? ""])));
}

const coverage = records("tow-coverage.csv"), findings = records("tow-findings.csv");

describe("the tables of simulated tows", () => {
  for (const table of [towCoverageTable(coverage), towClaimsTable(coverage)]) {
    it(`name every cell of the study apart (${table.name})`, () => {
      const names = table.rows.map((row) => `${row[0]!.text}, ${row[1]!.text}`);
      expect(new Set(names).size).toBe(names.length);
      expect(names).toHaveLength(23);
    });
  }

  it("show that an interval without the shared errors fails more the more readings there are", () => {
    const { rows, columns } = sharedErrorsTable(coverage);
    expect(rows.map((row) => row[0]!.text)).toEqual(["8", "15", "27", "40"]);
    const best = columns.findIndex((one) =>
      one.label === "best lift-to-drag, shared errors ignored"
    );
    const shares = rows.map((row) => Number(row[best]!.number));
    expect(shares[2]).toBeLessThan(0.85);
    expect(shares[3]).toBeLessThan(shares[0]!);
  });

  it("hold a share in every cell of the words and of the slips", () => {
    for (const table of [falseWordsTable(findings), unitSlipsTable(findings)]) {
      for (const row of table.rows) {
        expect(row.filter((cell) => cell.text === "")).toEqual([]);
      }
    }
  });
});
