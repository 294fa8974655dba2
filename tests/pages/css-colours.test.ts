import { describe, expect, it } from "vitest";
import { COLOURS } from "lakeproof/publish/page/css-colours.ts";

/** Relative luminance of "#rrggbb". Source: WCAG 2.2, definition of relative luminance. */
function luminance(colour: string): number {
  const [red, green, blue] = [1, 3, 5].map((at) => {
    const share = parseInt(colour.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** Source: WCAG 2.2, definition of contrast ratio. */
function contrast(one: string, other: string): number {
  const [light, dark] = [luminance(one), luminance(other)].sort((a, b) => b - a) as [
    number,
    number,
  ];
  return (light + 0.05) / (dark + 0.05);
}

const schemes = ["light", "dark"].map((scheme, at) => ({
  scheme,
  colour: (name: string) => COLOURS.find(([one]) => one === name)![at === 0 ? 1 : 2],
}));

describe.each(schemes)("the colours of $scheme pages", ({ colour }) => {
  const grounds = ["--paper", "--tint"];

  // Text over drawings and in formulas is out of reach of axe-core, so the pairs are tested here.
  it("give text at least 7:1 on every ground that it stands on (WCAG 2.2, 1.4.6)", () => {
    const texts = ["--ink", "--ink-soft", "--link", "--code-word", "--code-text", "--code-number"];
    for (const text of [...texts, "--code-name", "--code-note"]) {
      for (const ground of grounds) {
        expect(contrast(colour(text), colour(ground)), `${text} on ${ground}`).toBeGreaterThan(7);
      }
    }
    for (const ground of ["--caution-tint", "--target"]) {
      expect(contrast(colour("--ink"), colour(ground)), ground).toBeGreaterThan(7);
    }
  });

  it("give marks, and borders that mean something, at least 3:1 (WCAG 2.2, 1.4.11)", () => {
    const designs = [1, 2, 3, 4, 5, 6, "other"].map((place) => `--design-${place}`);
    for (const mark of [...designs, "--edge"]) {
      for (const ground of grounds) {
        expect(contrast(colour(mark), colour(ground)), `${mark} on ${ground}`).toBeGreaterThan(3);
      }
    }
    expect(contrast(colour("--caution-edge"), colour("--caution-tint"))).toBeGreaterThan(3);
  });
});

describe("the contrast ratio", () => {
  it("is 21 for black on white (WCAG 2.2, top of its scale), 4.54 for #767676 (from memory)", () => {
    expect(contrast("#000000", "#ffffff")).toBeCloseTo(21, 10);
    expect(contrast("#767676", "#ffffff")).toBeCloseTo(4.54, 2); // two printed decimals
  });
});
