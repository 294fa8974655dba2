/**
 * Room for the labels of a figure: how wide a text is, where it must be cut, how far two must stand apart.
 *
 * @module
 */
import { printable } from "../base/printable.ts";

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
