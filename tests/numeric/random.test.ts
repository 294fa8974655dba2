import { describe, expect, it } from "vitest";
import { hashText, seededRandom } from "lakeproof/numeric/random.ts";

describe("seeded random numbers", () => {
  it("give the same stream for the same name and another for another", () => {
    const draw = (name: string) => Array.from({ length: 5 }, seededRandom(name).uniform);
    expect(draw("a")).toEqual(draw("a"));
    expect(draw("a")).not.toEqual(draw("b"));
    expect(seededRandom("a").stream("b").uniform()).toBe(seededRandom("a / b").uniform());
  });

  it("hash as FNV-1a does: the published offset basis for the empty text", () => {
    // Offset basis 2166136261 as published by Fowler, Noll and Vo; here as a signed 32-bit number.
    expect(hashText("") >>> 0).toBe(2166136261);
  });

  it("have the moments of a normal distribution", () => {
    const { normal } = seededRandom("moments");
    const n = 200_000;
    let [sum, squares, fourth] = [0, 0, 0];
    for (let i = 0; i < n; i++) {
      const z = normal();
      sum += z;
      squares += z * z;
      fourth += z ** 4;
    }
    // Four Monte Carlo standard errors of each moment: sqrt(1/n), sqrt(2/n), sqrt(96/n).
    expect(Math.abs(sum / n)).toBeLessThan(4 * Math.sqrt(1 / n));
    expect(Math.abs(squares / n - 1)).toBeLessThan(4 * Math.sqrt(2 / n));
    expect(Math.abs(fourth / n - 3)).toBeLessThan(4 * Math.sqrt(96 / n));
  });

  it("draw whole numbers evenly and shuffle without losing any", () => {
    const random = seededRandom("dice");
    const counts = [0, 0, 0, 0, 0, 0];
    for (let i = 0; i < 60_000; i++) counts[random.integer(6)]!++;
    const chiSquare = counts.reduce((sum, c) => sum + (c - 10_000) ** 2 / 10_000, 0);
    // 99.9 % point of chi-square with 5 degrees of freedom is 20.5.
    expect(chiSquare).toBeLessThan(20.5);
    expect([...random.shuffle([1, 2, 3, 4, 5])].sort()).toEqual([1, 2, 3, 4, 5]);
    expect(() => random.integer(0)).toThrow(RangeError);
  });
});
