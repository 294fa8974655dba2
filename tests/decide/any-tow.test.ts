import { describe, expect, it } from "vitest";
import { compareTows } from "lakeproof/decide/compare-tows.ts";
import { seededRandom } from "lakeproof/numeric/random.ts";
import { exampleTow } from "../support/towed-world.ts";

describe("any readings at all", () => {
  it("give finite numbers or nulls, never an exception", () => {
    const random = seededRandom("any readings");
    const pick = <T>(...from: readonly T[]): T => from[Math.floor(random.uniform() * from.length)]!;
    const strange = (value: number | null) =>
      random.uniform() > 0.03 || value === null
        ? value
        : pick(null, 0, -value, value * 1e3, value / 1e3, 1e-9, 1e12);
    const check = (value: unknown, path: string): void => {
      if (typeof value === "number") expect(Number.isFinite(value), path).toBe(true);
      else if (value !== null && typeof value === "object") {
        for (const [key, one] of Object.entries(value)) check(one, `${path}/${key}`);
      }
    };
    let laws = 0;
    for (let i = 0; i < 150; i++) {
      const from = exampleTow(`any ${i % 5}`).session;
      const share = pick(0, 0.3, 0.7, 0.95);
      const kept = from.tow.filter(() => random.uniform() > share);
      const rate = pick(0, 1);
      const tow = kept.map((one) =>
        rate === 0 ? one : {
          ...one,
          speed: strange(one.speed),
          lineTension: strange(one.lineTension),
          lineAngle: strange(one.lineAngle),
          carriedMass: strange(one.carriedMass),
          depth: strange(one.depth),
          setSpeed: strange(one.setSpeed),
          speedChange: pick(null, null, 0, 0.3),
        }
      );
      const designs = from.designs.map((one) => ({
        ...one,
        wetVolume: strange(one.wetVolume),
        area: strange(one.area) ?? one.area,
      }));
      const { answer, pairs } = compareTows({ ...from, designs, tow });
      check({ answer, bands: pairs.map((one) => one.band) }, `session ${i}`);
      laws += answer.designs.filter((one) => one.law !== null).length;
    }
    expect(laws).toBeGreaterThan(30);
  });
});
