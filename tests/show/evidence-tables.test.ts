import { describe, expect, it } from "vitest";
import type { GlideEvidence } from "lakeproof/decide/glide-evidence.ts";
import { naiveTable } from "lakeproof/show/naive-table.ts";
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
