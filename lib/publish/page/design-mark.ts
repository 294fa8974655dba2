/**
 * The mark of a design as a small drawing that stands in a line of text.
 *
 * @module
 */
import type { DesignMark } from "../../base/records.ts";
import { designColour, designStyle } from "../../show/design-style.ts";
import { MARK_OUTLINES } from "../../show/mark-outline.ts";

const open = '<svg class="mark" viewBox="-8 -8 16 16" width="14" height="14" aria-hidden="true">';

/**
 * A design's mark; says nothing to a screen reader, since the name stands beside it.
 *
 * @param mark the design and its place
 * @returns an SVG element
 */
export function markSvg(mark: DesignMark): string {
  const outline = MARK_OUTLINES[designStyle(mark.place).symbol];
  return `${open}<path d="${outline}" fill="${designColour(mark.place)}"/></svg>`;
}

/** The mark that stands for no design: a hollow ring, drawn with a broken line. */
export const RING_SVG =
  `${open}<circle r="6" fill="none" stroke="currentColor" stroke-width="1.8" stroke-dasharray="3 2.2"/></svg>`;
