import { describe, expect, it } from "vitest";
import { compareGlides } from "lakeproof/decide/compare-glides.ts";
import { readSession } from "lakeproof/read/read-session.ts";

const bytes = (text: string) => new TextEncoder().encode(text);
const designs = "design,span,area\nalder,1,0.16\nbirch,1.2,0.17\n";

function glides(distance: string): string {
  const rows = [1, 2, 3, 4].flatMap((n) => [
    `a${n},sat,alder,4.${n},3.1,0.2,${8 + n / 10},82,stalled`,
    `b${n},sat,birch,4.${n},3.0,0.2,${n === 4 ? distance : 11 + n / 10},82,stalled`,
  ]);
  return ["run,block,design,launch_speed,end_speed,drop,distance,carried_mass,ended", ...rows].join(
    "\n",
  );
}

const session = (distance: string, tow = "") =>
  readSession(
    "lake",
    new Map([
      ["designs.csv", bytes(designs)],
      ["glides.csv", bytes(glides(distance))],
      ...(tow === "" ? [] : [["tow.csv", bytes(tow)] as const]),
    ]),
  );

describe("a comparison over tables with faults", () => {
  it("is given when the tables are sound", () => {
    expect(compareGlides([session("11.4")]).answer.comparisons[0]!.verdict).toBe(
      "candidate-better",
    );
  });

  it("is refused while a cell that it rests on can't be read, and says so once", () => {
    const { comparisons, findings } = compareGlides([session("far")]).answer;
    expect(comparisons.map((one) => [one.verdict, one.ratio])).toEqual([["refused", null]]);
    expect(findings.filter((one) => one.code === "data-faults")).toHaveLength(1);
  });

  it("is given when the cell is left empty instead: that run then tells the end speed only", () => {
    const { comparisons, runs } = compareGlides([session("")]).answer;
    expect(comparisons[0]!.verdict).toBe("candidate-better");
    expect(runs.find((one) => one.run === "b4")).toMatchObject({ used: true });
  });

  it("is not held up by a fault in the tow readings", () => {
    const tow = "point,design,speed,line_tension\n1,alder,fast,60\n";
    expect(compareGlides([session("11.4", tow)]).answer.comparisons[0]!.verdict).toBe(
      "candidate-better",
    );
  });
});

describe("a wing said to run at the surface", () => {
  it("leaves the run out with the reason, since no formula holds there", () => {
    const text = glides("11.4").split("\n")
      .map((row, at) => at === 0 ? `${row},depth` : `${row},${at === 1 ? "0.005" : "0.4"}`).join(
        "\n",
      );
    const read = readSession(
      "lake",
      new Map([["designs.csv", bytes(designs)], ["glides.csv", bytes(text)]]),
    );
    const run = compareGlides([read]).answer.runs.find((one) => one.run === "a1")!;
    expect(run.used).toBe(false);
    expect(run.reason).toContain("a hundredth of the span");
  });
});
