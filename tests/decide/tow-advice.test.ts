import { describe, expect, it } from "vitest";
import { compareTows } from "lakeproof/decide/compare-tows.ts";
import { adviceFor, sharedByAll, whatHelps } from "lakeproof/decide/tow-advice.ts";
import { exampleTow } from "../support/towed-world.ts";

const CODE = "more-points-no-help";

describe("what would make a tow's answer surer", () => {
  const answers = [1, 2, 3, 5, 8].map((sweeps) =>
    compareTows(exampleTow(`advice ${sweeps}`, { sweeps }).session).answer
  );

  it("is not more readings exactly where what they share makes over 60 % of the variance", () => {
    const told = answers.flatMap(({ designs, findings }) =>
      designs.map((one) => ({
        shared: sharedByAll(one.uncertaintyShares).reduce((sum, each) => sum + each.share, 0),
        said: findings.some((each) => each.code === CODE && each.what.includes(` ${one.design} `)),
      }))
    );
    for (const { shared, said } of told) expect(said).toBe(shared > 0.6);
    expect(new Set(told.map((one) => one.said)).size).toBe(2);
  });

  it("is to calibrate the cell and to weigh the rider, where neither was done well", () => {
    const found = answers.flatMap((one) => one.findings.filter((each) => each.code === CODE));
    expect(found.some((one) =>
      one.wanted ===
        "Calibrate the cell with known weights over the pulls that you measure and weigh the rider with all that flies."
    )).toBe(true);
  });

  it("names the largest first, nothing twice, and small ones not at all", () => {
    const shares = [
      { source: "carried mass", share: 0.2 },
      { source: "load cell zero", share: 0.3 },
      { source: "load cell scale", share: 0.4 },
      { source: "depth", share: 0.05 },
    ];
    expect(whatHelps(shares, 3)).toEqual([adviceFor("load cell zero"), adviceFor("carried mass")]);
    expect(whatHelps([])).toEqual([]);
    expect(adviceFor("something new")).toBe("know the something new better");
  });
});
