/**
 * A figure's SVG as a PNG for documents that take no SVG: light colours, twice the drawing's size.
 *
 * @module
 */
import { Resvg } from "@resvg/resvg-js";

/**
 * The SVG with every custom property replaced by the value that stands behind it.
 *
 * The renderer knows no `var()` and would draw everything black, without an error.
 *
 * @param svg with colours such as `var(--design-1, #162684)`
 * @returns the same drawing with plain colours
 */
export function withPlainColours(svg: string): string {
  return svg.replace(/var\(\s*--[\w-]+\s*,\s*([^()]*)\)/g, "$1");
}

/**
 * A drawing as PNG.
 *
 * @param svg as a figure's record has it, wide form
 * @param fontFiles paths of the fonts that its texts are set in
 * @returns the file's bytes, equal for equal input
 */
export function figurePng(svg: string, fontFiles: readonly string[]): Uint8Array {
  const image = new Resvg(withPlainColours(svg), {
    fitTo: { mode: "zoom", value: 2 },
    background: "#ffffff",
    font: {
      fontFiles: [...fontFiles],
      loadSystemFonts: false,
      defaultFontFamily: "Source Sans 3",
      sansSerifFamily: "Source Sans 3",
    },
  });
  return new Uint8Array(image.render().asPng());
}
