import { describe, expect, it } from "vitest";
import { writeValue } from "lakeproof/publish/prose-text.ts";

describe("a bare number in prose", () => {
  it("keeps three significant digits at most, without zeros at the end", () => {
    const written = [4.4, 0.18, 86.8, 0.79238, 0.6399, 12, 1234, 0.0456, -1.5, 0].map((value) =>
      writeValue(value, null)
    );
    expect(written.map((one) => one.ok ? one.text : one.reason)).toEqual(
      ["4.4", "0.18", "86.8", "0.792", "0.64", "12", "1234", "0.0456", "\u22121.5", "0"],
    );
  });
});

describe("a small number as a word", () => {
  it("is written for whole numbers and lists up to twelve, and refused beyond", () => {
    const word = (value: unknown) => {
      const written = writeValue(value, "@word");
      return written.ok ? written.text : written.reason;
    };
    expect([3, [1, 2], 0, 12].map(word)).toEqual(["three", "two", "no", "twelve"]);
    for (const value of [13, 2.5, -1, "3"]) expect(word(value)).toContain("wants a list");
  });
});
