/**
 * Formulas: TeX in, MathML out, which browsers draw themselves with the page's math font.
 *
 * @module
 */
import temml from "temml";

/**
 * A formula as MathML.
 *
 * @param tex between the dollar signs
 * @param displayed true for a formula on a line of its own
 * @returns one math element
 * @throws Error naming the formula when it can't be read
 */
export function formula(tex: string, displayed: boolean): string {
  let markup: string;
  try {
    markup = temml.renderToString(tex, { displayMode: displayed, throwOnError: true });
  } catch (cause) {
    const why = cause instanceof Error ? cause.message : String(cause);
    throw new Error(`Cannot read the formula ${tex.trim()}: ${why}`, { cause });
  }
  // The bar of \bar is a sign that the math font lacks; the macron is the same bar.
  return markup.replaceAll("\u203e", "\u00af");
}
