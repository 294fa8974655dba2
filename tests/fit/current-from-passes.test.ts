import { describe, expect, it } from "vitest";
import { currentFromPasses, type Pass } from "lakeproof/fit/current-from-passes.ts";
import golden from "../golden/tow-instruments.json" with { type: "json" };

// Parent: tests/golden/tow-instruments.py (numpy 2.4.6, scipy 1.17.1), by a dummy column a group.

const { group, sign, time, speed, ...wanted } = golden.passes;
const passes = group.map((one, i): Pass => ({
  group: String(one),
  sign: sign[i] as 1 | -1,
  time: time[i]!,
  speed: speed[i]!,
}));

function found(given: readonly Pass[]) {
  const current = currentFromPasses(given);
  if (!current.ok) throw new Error(current.reason);
  return current;
}

describe("a current by passes both ways", () => {
  it("is that of a least-squares fit with a column for each group", () => {
    for (const [name, value] of Object.entries(wanted)) {
      // Differences of speeds 40 times as large.
      expect(found(passes)[name as keyof typeof wanted] / value, name).toBeCloseTo(1, 9);
    }
  });

  it("turns round with its sign, and does not hear of groups that ran one way", () => {
    const turned = found(passes.map((one) => ({ ...one, sign: -one.sign as 1 | -1 })));
    expect(turned.value).toBeCloseTo(-found(passes).value, 12);
    const lone = { group: "lone", sign: 1, time: 3, speed: 9 } as const;
    expect(found([...passes, lone])).toEqual(found(passes));
  });

  it("keeps an even tide out of one group by the order A B B A", () => {
    const tide = [1, -1, -1, 1].map((sign, i): Pass => ({
      group: "one",
      sign: sign as 1 | -1,
      time: i,
      speed: 4 + sign * (0.1 + 0.02 * i),
    }));
    // By hand: 0.1 + 0.02 x 1.5 in the middle.
    expect(found(tide).value).toBeCloseTo(0.13, 12);
  });

  it("is none where no speed ran both ways, or one did once", () => {
    expect(currentFromPasses([])).toMatchObject({ ok: false });
    expect(currentFromPasses(passes.filter((one) => one.sign === 1))).toMatchObject({ ok: false });
    expect(currentFromPasses(passes.slice(0, 2))).toMatchObject({ ok: false });
    expect(() => currentFromPasses([{ ...passes[0]!, speed: NaN }])).toThrow(/finite/);
  });
});
