/**
 * The mark of a design as a small drawing that stands in a line of text.
 *
 * @module
 */
import type { DesignMark } from "../../base/records.ts";
import { designColour, designStyle, type MarkShape } from "../../show/design-style.ts";

/** Outlines within a circle of radius 7 about the origin, of about the same area each. */
const OUTLINES: Readonly<Record<MarkShape, string>> = {
  circle: "M5.6 0A5.6 5.6 0 1 1 -5.6 0A5.6 5.6 0 1 1 5.6 0Z",
  triangle: "M0 -6.6L6.3 4.6L-6.3 4.6Z",
  square: "M-5 -5H5V5H-5Z",
  diamond: "M0 -7L5.4 0L0 7L-5.4 0Z",
  cross: "M-2.1 -6.3H2.1V-2.1H6.3V2.1H2.1V6.3H-2.1V2.1H-6.3V-2.1H-2.1Z",
  star: "M0 -7L1.8 -2.3L6.7 -2.2L2.8 0.9L4.1 5.7L0 2.9L-4.1 5.7L-2.8 0.9L-6.7 -2.2L-1.8 -2.3Z",
};

const open = '<svg class="mark" viewBox="-8 -8 16 16" width="14" height="14" aria-hidden="true">';

/**
 * A design's mark; says nothing to a screen reader, since the name stands beside it.
 *
 * @param mark the design and its place
 * @returns an SVG element
 */
export function markSvg(mark: DesignMark): string {
  const outline = OUTLINES[designStyle(mark.place).symbol];
  return `${open}<path d="${outline}" fill="${designColour(mark.place)}"/></svg>`;
}

/** The mark that stands for no design: a hollow ring, drawn with a broken line. */
export const RING_SVG =
  `${open}<circle r="6" fill="none" stroke="currentColor" stroke-width="1.8" stroke-dasharray="3 2.2"/></svg>`;
