/**
 * How a design looks wherever it is drawn: colour, mark and dash by its place in `designs.csv`, never by order of
 * appearance, so that one design keeps its look through a whole page.
 *
 * Colour never stands alone: the mark, the dash and the name tell the designs apart in grey and for any colour vision.
 * Names are written in ink and not in the design's colour, since marks need a contrast of 3:1 only. Past six designs:
 * grey, with the name.
 *
 * Source: hue families from Okabe and Ito, Color Universal Design, 2008; contrast from WCAG 2.2, 1.4.11.
 *
 * @module
 */

/** Shapes of marks; the names are those of the plotting library. */
export type MarkShape = "circle" | "triangle" | "square" | "diamond" | "cross" | "star";

/** The look of one design. */
export interface DesignStyle {
  /** Name of the custom property that a page may set. */
  readonly property: string;
  /** Colour on light paper; also what stands in a file of its own. */
  readonly light: string;
  /** Colour on dark paper. */
  readonly dark: string;
  /** Colour that can be seen on white and on black, where the ground is not known. */
  readonly either: string;
  readonly symbol: MarkShape;
  /** Lengths of dash and gap along the curve; `null` is solid. */
  readonly dash: string | null;
}

const style = (
  place: number | "other",
  light: string,
  dark: string,
  either: string,
  symbol: MarkShape,
  dash: string | null,
): DesignStyle => ({ property: `--design-${place}`, light, dark, either, symbol, dash });

/** The six looks, in order of place. */
export const DESIGN_STYLES: readonly DesignStyle[] = [
  style(1, "#162684", "#2a75e0", "#3b63cc", "circle", null),
  style(2, "#a8170f", "#ef810e", "#bc4612", "triangle", "8 4"),
  style(3, "#2d9b78", "#56f7dd", "#6fa074", "square", "3 3.5"),
  style(4, "#67314d", "#ae799f", "#995985", "diamond", "12 3 2 3"),
  style(5, "#107382", "#87b8e7", "#0399fc", "cross", "16 5"),
  style(6, "#ae6e15", "#f6c78b", "#c48730", "star", "8 3 2 3 2 3"),
];

/** The look of every design past the sixth. */
export const OTHER_STYLE: DesignStyle = style(
  "other",
  "#5d656d",
  "#98a1a9",
  "#7d868e",
  "circle",
  "2 3",
);

/** Ground and ink: the custom properties that a page sets, with the values of a file of its own. */
export const PAPER = "var(--paper, #ffffff)";
export const INK = "var(--ink, #1a1e23)";
export const INK_SOFT = "var(--ink-soft, #474f58)";

/**
 * The look of the design in a given place.
 *
 * @param place of the design in `designs.csv`, from 1
 * @returns its style; the grey one past six
 * @throws RangeError for a place that is not a whole number from 1 on
 */
export function designStyle(place: number): DesignStyle {
  if (!Number.isInteger(place) || place < 1) {
    throw new RangeError(`Cannot style a design as places count from 1: ${place}`);
  }
  return DESIGN_STYLES[place - 1] ?? OTHER_STYLE;
}

/**
 * A design's colour as a figure carries it: the page's own if it sets one, else the light one.
 *
 * @param place of the design in `designs.csv`, from 1
 * @returns for instance "var(--design-2, #a8170f)"
 * @example
 * ```ts
 * import { designColour } from "lakeproof/show/design-style.ts";
 * if (designColour(2) !== "var(--design-2, #a8170f)") throw new Error(designColour(2));
 * ```
 */
export function designColour(place: number): string {
  const { property, light } = designStyle(place);
  return `var(${property}, ${light})`;
}

/**
 * The same for a display whose ground is not known, such as a notebook's own.
 *
 * @param place of the design in `designs.csv`, from 1
 * @returns CSS that can be seen on white and on black
 */
export function designColourOnAnyGround(place: number): string {
  const { property, either } = designStyle(place);
  return `var(${property}, ${either})`;
}
