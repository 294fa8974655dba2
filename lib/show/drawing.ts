/**
 * Draws a figure twice from one function of the size: for the column, and for a narrow screen. Scaling one drawing down
 * would leave letters that nobody can read.
 *
 * @module
 */
import * as Plot from "@observablehq/plot";
import { parseHTML } from "linkedom";
import type { FigureRecord } from "../base/records.ts";
import { printable } from "../base/printable.ts";
import { type DrawingSize, NARROW, WIDE } from "./drawing-size.ts";
import { finishSvg, type SvgElement } from "./finish-svg.ts";

export { type DrawingSize, WIDE } from "./drawing-size.ts";
export { cutToWidth, pushApart, textWidth } from "./label-room.ts";

/** What a figure is besides its drawings. */
export type FigureWords = Omit<FigureRecord, "wide" | "narrow">;

/**
 * A figure record with both drawings.
 *
 * @param words names, captions and numbers
 * @param options the plot for a size; margins, height and marks may depend on it
 * @returns the record, ready to show
 */
export function figureRecord(
  words: FigureWords,
  options: (size: DrawingSize) => Plot.PlotOptions,
): FigureRecord {
  const { document } = parseHTML("<!doctype html><html><body></body></html>") as unknown as {
    readonly document: unknown;
  };
  const draw = (size: DrawingSize): string => {
    const svg = Plot.plot({
      ...options(size),
      document: document as never,
      width: size.width,
      className: "lakeproof",
    });
    return finishSvg(svg as unknown as SvgElement, {
      id: `${words.name}-${size.narrow ? "narrow" : "wide"}`,
      title: printable(words.title),
      description: printable(words.description),
      fontSize: size.fontSize,
    });
  };
  return { ...words, wide: draw(WIDE), narrow: draw(NARROW) };
}
