import { describe, expect, it } from "vitest";
import { compareTows } from "lakeproof/decide/compare-tows.ts";
import { demoTowTruth } from "lakeproof/read/demo-truth.ts";
import { openSession } from "lakeproof/read/open-session.ts";
import { towTruthTable } from "lakeproof/show/tow-truth-table.ts";

describe("a towed answer beside the truth", () => {
  it("holds the truth of the demo session, and says no where it would not", async () => {
    const evidence = compareTows(await openSession("quillwater-tow"));
    const truth = demoTowTruth("quillwater-tow");
    const inside = (rows: ReturnType<typeof towTruthTable>["rows"]) =>
      rows.map((row) => row.at(-1)!.text);
    expect(inside(towTruthTable(evidence, truth).rows)).toEqual(["yes", "yes", "yes", "yes"]);
    const moved = truth.map((one) => ({ ...one, liftToDrag: one.liftToDrag * 1.1 }));
    expect(inside(towTruthTable(evidence, moved).rows)).toEqual(["no", "yes", "no", "yes"]);
    expect(inside(towTruthTable(evidence, []).rows)).toEqual(Array(4).fill("not known"));
  });
});
