import { describe, expect, it } from "vitest";
import type { GlideEvidence } from "lakeproof/decide/glide-evidence.ts";
import { naiveTable } from "lakeproof/show/naive-table.ts";
import { frameTable } from "lakeproof/show/frame-table.ts";
import { truthTable } from "lakeproof/show/truth-table.ts";
import { inventedEvidence } from "../support/invented-evidence.ts";

const evidence: GlideEvidence = inventedEvidence();

describe("the tables that stand beside a verdict", () => {
  it("give raw means over the runs that were used", () => {
    const rows = naiveTable(evidence).rows;
    expect(rows.map((row) => row[0]!.text)).toEqual(evidence.designs.map((one) => one.design));
    for (const [index, design] of evidence.designs.entries()) {
      const used = design.runs.filter((run) => run.used && run.distance !== null);
      const mean = used.reduce((sum, run) => sum + run.distance!, 0) / used.length;
      expect(rows[index]![3]!.number).toBeCloseTo(mean, 10);
    }
  });

  it("say whether the truth lies inside, and when nobody knows it", () => {
    const ratio = evidence.answer.comparisons[0]!.ratio!;
    expect(truthTable(evidence, () => ratio.value).rows[0]![4]!.text).toBe("yes");
    expect(truthTable(evidence, () => ratio.high! + 0.1).rows[0]![4]!.text).toBe("no");
    expect(truthTable(evidence, () => null).rows[0]![4]!.text).toBe("not known");
  });
});

describe("a data frame as a table", () => {
  it("shows every row, numbers to the right, nothing for what is not measured", () => {
    const frame = {
      columns: ["design", "runs", "distance"],
      toRecords: () => [
        { design: "<b>alder", runs: 8, distance: 8.4667 },
        { design: "birch", runs: 7, distance: null },
      ],
    };
    const table = frameTable(frame, { name: "means", caption: "Means." });
    expect(table.columns.map((one) => one.align)).toEqual(["left", "right", "right"]);
    expect(table.rows.map((row) => row.map((cell) => cell.text))).toEqual([
      ["<b>alder", "8", "8.47"],
      ["birch", "7", ""],
    ]);
    expect(table.rows[0]![2]!.number).toBe(8.4667);
  });
});
