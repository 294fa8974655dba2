import { describe, expect, it } from "vitest";
import {
  DESIGN_STYLES,
  designColour,
  designStyle,
  OTHER_STYLE,
} from "lakeproof/show/design-style.ts";

/** Relative luminance and contrast. Source: WCAG 2.2, definitions of both terms. */
function luminance(hex: string): number {
  const [red, green, blue] = [1, 3, 5].map((at) => {
    const share = parseInt(hex.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;
}

function contrast(one: string, other: string): number {
  const [high, low] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (high! + 0.05) / (low! + 0.05);
}

const all = [...DESIGN_STYLES, OTHER_STYLE];

describe("the look of a design", () => {
  // WCAG 2.2, 1.4.11: marks need 3:1 against their ground.
  it("is seen on light paper, on dark paper and on either", () => {
    for (const { light, dark, either, property } of all) {
      expect(contrast(light, "#fcfcfa"), property).toBeGreaterThanOrEqual(3);
      expect(contrast(dark, "#14181c"), property).toBeGreaterThanOrEqual(3);
      expect(contrast(either, "#ffffff"), property).toBeGreaterThanOrEqual(3);
      expect(contrast(either, "#111111"), property).toBeGreaterThanOrEqual(3);
    }
  });

  it("differs in colour, mark and dash between any two of the first six", () => {
    for (const key of ["light", "dark", "either", "symbol", "dash"] as const) {
      expect(new Set(DESIGN_STYLES.map((one) => one[key])).size, key).toBe(6);
    }
  });

  it("is grey past the sixth and refuses places that do not exist", () => {
    expect(designStyle(7)).toBe(OTHER_STYLE);
    expect(designColour(7)).toBe("var(--design-other, #5d656d)");
    expect(() => designStyle(0)).toThrow(RangeError);
    expect(() => designStyle(1.5)).toThrow(RangeError);
  });
});
