/**
 * The mark of a design as a small drawing that stands in a line of text.
 *
 * @module
 */
import { designStyle, type MarkShape } from "./design-style.ts";

/** Paths within a circle of radius 7 about the origin, of about the same area each. */
const OUTLINES: Readonly<Record<MarkShape, string>> = {
  circle: "M5.6 0A5.6 5.6 0 1 1 -5.6 0A5.6 5.6 0 1 1 5.6 0Z",
  triangle: "M0 -6.6L6.3 4.6L-6.3 4.6Z",
  square: "M-5 -5H5V5H-5Z",
  diamond: "M0 -7L5.4 0L0 7L-5.4 0Z",
  cross: "M-2.1 -6.3H2.1V-2.1H6.3V2.1H2.1V6.3H-2.1V2.1H-6.3V-2.1H-2.1Z",
  star: "M0 -7L1.8 -2.3L6.7 -2.2L2.8 0.9L4.1 5.7L0 2.9L-4.1 5.7L-2.8 0.9L-6.7 -2.2L-1.8 -2.3Z",
};

/**
 * Outline of a design's mark, for a drawing that sets its own place and size.
 *
 * @param place of the design in `designs.csv`, from 1
 * @returns SVG path data within a circle of radius 7 about the origin
 */
export function markOutline(place: number): string {
  return OUTLINES[designStyle(place).symbol];
}

/**
 * A drawing of 14 by 14 units about its middle; it says nothing to a screen reader, since words stand beside it.
 *
 * @param content SVG within a circle of radius 8 about the origin
 * @param className for a page's styles; none unless said
 * @returns an SVG element
 */
export function smallSvg(content: string, className?: string): string {
  const named = className === undefined ? "" : ` class="${className}"`;
  return `<svg width="14" height="14" viewBox="-8 -8 16 16" aria-hidden="true"${named}>` +
    `${content}</svg>`;
}

/**
 * A design's mark.
 *
 * @param place of the design in `designs.csv`, from 1
 * @param colour CSS, of `designColour` or `designColourOnAnyGround`
 * @param className for a page's styles; none unless said
 * @returns an SVG element
 * @throws RangeError for a place that is not a whole number from 1 on
 */
export function markSvg(place: number, colour: string, className?: string): string {
  return smallSvg(`<path d="${markOutline(place)}" fill="${colour}"/>`, className);
}
