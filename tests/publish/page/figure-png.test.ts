import { Buffer } from "node:buffer";
import { Resvg } from "@resvg/resvg-js";
import { describe, expect, it } from "vitest";
import { figurePng, withPlainColours } from "lakeproof/publish/page/figure-png.ts";
import { withFontFiles } from "lakeproof/publish/page/fonts.ts";
import { SAMPLE_FIGURE } from "../../pages/sample-notebook.ts";

/** Pixels of a PNG, as "r,g,b" with how often each occurs. */
function colours(png: Uint8Array, width: number, height: number): Map<string, number> {
  const source = `data:image/png;base64,${Buffer.from(png).toString("base64")}`;
  const { pixels } = new Resvg(
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}">` +
      `<image href="${source}" width="${width}" height="${height}"/></svg>`,
  ).render();
  const counts = new Map<string, number>();
  for (let at = 0; at < pixels.length; at += 4) {
    const colour = `${pixels[at]},${pixels[at + 1]},${pixels[at + 2]}`;
    counts.set(colour, (counts.get(colour) ?? 0) + 1);
  }
  return counts;
}

describe("a figure as PNG", () => {
  const png = withFontFiles((fonts) => figurePng(SAMPLE_FIGURE.wide, fonts));

  it("has the light colours of its designs on white, and is not all black", async () => {
    const found = colours(await png, 1120, 600);
    expect(found.get("255,255,255")! / (1120 * 600)).toBeGreaterThan(0.9);
    expect(found.get("22,38,132") ?? 0).toBeGreaterThan(500); // --design-1, #162684
    expect(found.get("168,23,15") ?? 0).toBeGreaterThan(500); // --design-2, #a8170f
    expect(found.get("0,0,0") ?? 0).toBe(0);
  });

  it("has its letters: the same drawing without texts has fewer dark pixels", async () => {
    const silent = await withFontFiles((fonts) =>
      figurePng(SAMPLE_FIGURE.wide.replace(/<text[\s\S]*?<\/text>/g, ""), fonts)
    );
    const ink = (bytes: Uint8Array) => colours(bytes, 1120, 600).get("26,30,35") ?? 0;
    expect(ink(await png)).toBeGreaterThan(ink(silent) + 500);
  });

  it("is set in the same letters when one sign of a text comes from the math font", async () => {
    const drawn = (text: string) =>
      withFontFiles((fonts) =>
        figurePng(
          `<svg xmlns="http://www.w3.org/2000/svg" width="200" height="30" font-size="14" ` +
            `font-family="'Source Sans 3','Lakeproof Math',sans-serif">` +
            `<text x="4" y="20">launch speed (m/s)${text}</text></svg>`,
          fonts,
        )
      );
    const left = (bytes: Uint8Array) =>
      new Resvg(
        `<svg xmlns="http://www.w3.org/2000/svg" width="220" height="60"><image width="400" height="60" href="data:image/png;base64,${
          Buffer.from(bytes).toString("base64")
        }"/></svg>`,
      ).render().pixels;
    expect(Buffer.compare(left(await drawn(" →")), left(await drawn("")))).toBe(0);
  });

  it("leaves no custom property to a renderer that knows none", () => {
    expect(withPlainColours('fill="var(--design-1, #162684)" stroke="var( --ink , #1a1e23 )"'))
      .toBe('fill="#162684" stroke="#1a1e23 "');
  });
});
