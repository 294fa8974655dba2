import { describe, expect, it } from "vitest";
import { editDistance } from "lakeproof/base/edit-distance.ts";

describe("the distance between two words", () => {
  it("is one for a letter missing, one too many, one changed and two swapped", () => {
    for (const slip of ["distnce", "distannce", "distamce", "distanec"]) {
      expect(editDistance(slip, "distance"), slip).toBe(1);
      expect(editDistance("distance", slip), slip).toBe(1);
    }
  });

  it("is three for kitten and sitting, and the length for an empty word", () => {
    // The usual example of textbooks, from memory.
    expect(editDistance("kitten", "sitting")).toBe(3);
    expect(editDistance("", "abc")).toBe(3);
    expect(editDistance("abc", "abc")).toBe(0);
  });
});
