/**
 * The two sizes in which each figure is drawn.
 *
 * @module
 */

/** Size of a drawing, in units of the page. */
export interface DrawingSize {
  readonly width: number;
  readonly fontSize: number;
  readonly narrow: boolean;
}

/** Fits the column of text. */
export const WIDE: DrawingSize = { width: 560, fontSize: 14, narrow: false };

/** Fits a telephone. */
export const NARROW: DrawingSize = { width: 344, fontSize: 13, narrow: true };
