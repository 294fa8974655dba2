/**
 * Marks in a page's lines: one for a design, one for no design.
 *
 * @module
 */
import type { AnswerRecord, DesignMark } from "../../base/records.ts";
import { designColour } from "../../show/design-style.ts";
import { markSvg, smallSvg } from "../../show/mark-svg.ts";

/** What the page's styles call a mark. */
const CLASS = "mark";

/**
 * A design's mark in the page's own colours.
 *
 * @param mark the design and its place
 * @returns an SVG element
 */
export function pageMark(mark: DesignMark): string {
  return markSvg(mark.place, designColour(mark.place), CLASS);
}

/** The mark that stands for no design: a hollow ring, drawn with a broken line. */
const RING = smallSvg(
  `<circle r="6" fill="none" stroke="currentColor" stroke-width="1.8" stroke-dasharray="3 2.2"/>`,
  CLASS,
);

/**
 * The mark before a headline: of the design that is ahead, an open ring for "cannot tell", none where nothing is compared.
 *
 * @param answer what the headline is of
 * @returns an SVG element with a space behind it, or nothing
 */
export function headlineMark({ verdict, ahead }: Pick<AnswerRecord, "verdict" | "ahead">): string {
  if (ahead !== null) return `${pageMark(ahead)} `;
  return verdict === "told" ? "" : `${RING} `;
}
