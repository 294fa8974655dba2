/**
 * The frame of a figure whose rows stand below each other at places of their own.
 *
 * @module
 */
import type { DrawingSize } from "./drawing.ts";

/** Room around the rows, in units of the drawing. */
export interface Margins {
  readonly top: number;
  readonly bottom: number;
  readonly left: number;
  readonly right: number;
}

/**
 * Options of a plot as high as its rows need.
 *
 * @param size of the drawing
 * @param inner height of all rows, in units; places count downwards from 0
 * @param margins around them
 * @returns width, height, margins, and the scale of the rows' places
 */
export function rowFrame(size: DrawingSize, inner: number, margins: Margins) {
  return {
    width: size.width,
    height: inner + margins.top + margins.bottom,
    marginTop: margins.top,
    marginBottom: margins.bottom,
    marginLeft: margins.left,
    marginRight: margins.right,
    y: { axis: null, domain: [inner, 0] },
  };
}
