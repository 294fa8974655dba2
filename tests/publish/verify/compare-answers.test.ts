import { describe, expect, it } from "vitest";
import { compareAnswers } from "lakeproof/publish/verify/compare-answers.ts";

const ratio = (value: number, u = 0.05) => ({
  value,
  standardUncertainty: u,
  low: value - 2 * u,
  high: value + 2 * u,
  unit: "1",
});
const answer = (value: number) => ({
  comparisons: [{ candidate: "birch", verdict: "cannot-tell-yet", ratio: ratio(value) }],
});
const wrong = (published: unknown, fresh: unknown) =>
  compareAnswers("answers/a.json", published, fresh).filter((one) => one.sameness !== "same");

describe("published and fresh answers", () => {
  it("that are equal are the same in every entry", () => {
    expect(wrong(answer(1.2), answer(1.2))).toEqual([]);
    expect(compareAnswers("a", answer(1.2), answer(1.2))).toHaveLength(7);
  });

  it("are told apart in units of their own standard uncertainty, by name of the member", () => {
    const [value, low, high] = wrong(answer(1.3), answer(1.2));
    expect(value).toMatchObject({ path: "comparisons[birch]/ratio/value", sameness: "different" });
    // (1.3 - 1.2) / 0.05
    expect(value!.apart).toBeCloseTo(2, 9);
    expect([low!.path, high!.path]).toEqual([
      "comparisons[birch]/ratio/low",
      "comparisons[birch]/ratio/high",
    ]);
  });

  it("count as within rounding where only the last digits differ", () => {
    expect(wrong({ x: 1.00000000001 }, { x: 1 })[0]).toMatchObject({
      sameness: "within rounding",
      apart: null,
    });
    expect(wrong({ x: 1.00001 }, { x: 1 })[0]!.sameness).toBe("different");
  });

  it("differ by a word, by null against a number, and by an entry on one side only", () => {
    expect(wrong({ verdict: "a" }, { verdict: "b" })).toHaveLength(1);
    expect(wrong({ x: null }, { x: 0 })[0]!.sameness).toBe("different");
    expect(wrong({ x: 1 }, { x: 1, y: null })[0]).toMatchObject({ path: "y" });
    expect(wrong({ x: [] }, { x: [1] })).toHaveLength(2);
    expect(wrong(undefined, { x: 1 })).toHaveLength(1);
    expect(wrong({ x: 0 }, { x: -0 })).toHaveLength(1);
  });
});
