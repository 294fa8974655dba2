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
import { finishSvg, type SvgElement } from "./finish-svg.ts";

/** Size of a drawing, in units of the page. */
export interface DrawingSize {
  readonly width: number;
  readonly fontSize: number;
  readonly narrow: boolean;
}

/** Fits the column of text. */
export const WIDE: DrawingSize = { width: 560, fontSize: 14, narrow: false };

/** Fits a telephone. */
const NARROW: DrawingSize = { width: 344, fontSize: 13, narrow: true };

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

/**
 * Width of a text in units, estimated on the wide side: figures are drawn where no font can be measured.
 *
 * @param text printable
 * @param fontSize units
 * @returns units of the drawing
 */
export function textWidth(text: string, fontSize: number): number {
  const widths = [...text].map((letter) => letter.codePointAt(0)! >= 0x1100 ? 1 : 0.6);
  return fontSize * widths.reduce((sum, width) => sum + width, 0);
}

/**
 * A text cut to a width, with an ellipsis where letters are missing.
 *
 * @param text any
 * @param width in units of the drawing
 * @param fontSize units
 * @returns printable text of at least one letter
 */
export function cutToWidth(text: string, width: number, fontSize: number): string {
  const clean = printable(text);
  if (textWidth(clean, fontSize) <= width) return clean;
  const letters = [...clean];
  while (letters.length > 1 && textWidth(letters.join("") + "…", fontSize) > width) letters.pop();
  return letters.join("") + "…";
}

/**
 * Moves labels apart that would overlap, as little as needed and in their own order.
 *
 * @param places where each would stand, in units
 * @param gap smallest distance between two
 * @param low nothing goes below
 * @param high nothing goes above, if there is room
 * @returns places in the order given
 */
export function pushApart(
  places: readonly number[],
  gap: number,
  low: number,
  high: number,
): number[] {
  const order = places.map((_, at) => at).sort((a, b) => places[a]! - places[b]! || a - b);
  const moved = [...places];
  let floor = low;
  for (const at of order) {
    moved[at] = Math.max(moved[at]!, floor);
    floor = moved[at]! + gap;
  }
  let ceiling = high;
  for (const at of order.toReversed()) {
    moved[at] = Math.min(moved[at]!, ceiling);
    ceiling = moved[at]! - gap;
  }
  return moved;
}
