import { describe, expect, it } from "vitest";
import { nearestWord } from "lakeproof/base/nearest-word.ts";

describe("the nearest word", () => {
  it("finds one letter missing, one too many, one changed and two swapped", () => {
    const known = ["distance", "designs", "comparisons"];
    for (const slip of ["distnce", "distannce", "distamce", "distanec", "Distance"]) {
      expect(nearestWord(slip, known)).toBe("distance");
    }
  });

  it("makes no guess when nothing is near", () => {
    expect(nearestWord("hull", ["distance", "designs"])).toBeNull();
    expect(nearestWord("x", [])).toBeNull();
    expect(nearestWord("", ["a"])).toBeNull();
    expect(nearestWord("q", ["a"])).toBeNull();
  });
});
