import { Resvg } from "@resvg/resvg-js";
import { expect } from "vitest";
import type { FigureRecord } from "lakeproof/base/records.ts";
import { parsed } from "./drawn.ts";

/** A design's name that would hurt as markup. */
export const HOSTILE = `<script>alert("1")</script>]]>&amp;\u0007`;

/** Named in four to eight words, described, on its own paper, of the right width, without style, aria of a library or needless digits. */
export function expectWellMade(record: FigureRecord): void {
  const words = record.title.split(" ").length;
  expect(words).toBeGreaterThanOrEqual(4);
  expect(words).toBeLessThanOrEqual(8);
  for (const [own, svg, width] of [["wide", record.wide, 560], ["narrow", record.narrow, 344]]) {
    const root = parsed(String(svg));
    expect(root.getAttribute("role")).toBe("img");
    expect(svg).toMatch(/^<svg [^>]*xmlns="http:\/\/www.w3.org\/2000\/svg"/);
    expect(svg).toMatch(/<\/desc><rect [^>]*fill="var\(--paper, #ffffff\)"/);
    expect(root.getAttribute("aria-labelledby")).toBe(`${record.name}-${own}-title`);
    expect(svg).not.toMatch(/<style|\sstyle=|plot-clip|aria-label=|="[^"]*\.\d{3}/);
    expect(Number(root.getAttribute("width"))).toBe(width);
  }
}

/** Drawn with a hostile name: the name is text, and the XML is well formed. */
export function expectTextOnly({ wide, narrow }: FigureRecord): void {
  for (const svg of [wide, narrow]) {
    expect(svg).not.toContain("<script");
    expect(svg).toContain("&lt;script");
    expect(svg).not.toContain("\u0007");
    // The renderer's XML parser is strict.
    expect(() => new Resvg(svg)).not.toThrow();
  }
}

/** Nothing that could not be worked out is drawn or said. */
export function expectNoHoles({ wide, narrow, description, caption }: FigureRecord): void {
  expect(wide + narrow + description + caption).not.toMatch(/NaN|undefined|Infinity|null/);
}
