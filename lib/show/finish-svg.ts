/**
 * Turns what the plotting library drew into a finished SVG: it stands alone as a file, inside a page that sets its own
 * colours, and for a screen reader; the same data gives the same bytes.
 *
 * The order of the steps matters: the library's style goes first, since it would win over the attributes set later.
 *
 * Source: W3C, SVG Accessibility API Mappings (title and description by `aria-labelledby` and `aria-describedby`).
 *
 * @module
 */
import { INK, PAPER } from "./design-style.ts";

/** Fonts by preference; the first two are those of the page. */
export const FIGURE_FONTS = "'Source Sans 3','Lakeproof Math','DejaVu Sans',system-ui,sans-serif";

/** The little of an element that is needed here, whichever document made it. */
export interface SvgElement {
  readonly tagName: string;
  textContent: string | null;
  readonly ownerDocument: { createElementNS(space: string, name: string): SvgElement };
  readonly firstChild: unknown;
  readonly attributes: Iterable<{ readonly name: string; readonly value: string }>;
  readonly outerHTML: string;
  getAttribute(name: string): string | null;
  setAttribute(name: string, value: string): void;
  removeAttribute(name: string): void;
  querySelectorAll(selector: string): Iterable<SvgElement>;
  insertBefore(child: SvgElement, before: unknown): unknown;
  remove(): void;
}

/** What a finished drawing is called and how large its letters are. */
export interface FinishOptions {
  /** Unique on a page; prefix of all ids inside. */
  readonly id: string;
  /** Four to eight words. */
  readonly title: string;
  /** One to three sentences with the numbers that matter. */
  readonly description: string;
  /** Units of the drawing. */
  readonly fontSize: number;
}

const SPACE = "http://www.w3.org/2000/svg";

/** Attributes that hold lengths or paths. */
const GEOMETRY = new Set([
  ...["d", "transform", "points", "x", "y", "x1", "y1", "x2", "y2", "cx", "cy", "r", "dx", "dy"],
  ...["width", "height"],
]);

function roundedNumbers(text: string): string {
  return text.replace(
    /-?\d*\.\d+(?:e[-+]?\d+)?|-?\d+e[-+]?\d+/g,
    (number) => String(Number(Number(number).toFixed(2)) + 0),
  );
}

/** Clip ids carry a counter that runs on from figure to figure; here they start anew. */
function renumberIds(root: SvgElement, id: string): void {
  const numbers = new Map<string, string>();
  for (const element of root.querySelectorAll("[id]")) {
    const own = `${id}-part-${numbers.size + 1}`;
    numbers.set(element.getAttribute("id")!, own);
    element.setAttribute("id", own);
  }
  for (const element of root.querySelectorAll("*")) {
    for (const { name, value } of [...element.attributes]) {
      const reference = /^url\(#(.*)\)$/.exec(value)?.[1];
      if (reference === undefined) continue;
      const own = numbers.get(reference);
      if (own === undefined) element.removeAttribute(name);
      else element.setAttribute(name, `url(#${own})`);
    }
  }
}

/**
 * The finished SVG text.
 *
 * @param root the library's SVG element; it is changed
 * @param options id, words, size of letters
 * @returns one SVG element as well-formed XML, coordinates rounded to a hundredth of a unit
 */
export function finishSvg(root: SvgElement, options: FinishOptions): string {
  const { id, title, description, fontSize } = options;
  for (const style of [...root.querySelectorAll("style")]) style.remove();
  for (const element of [root, ...root.querySelectorAll("*")]) {
    for (const name of ["aria-label", "aria-hidden", "class", "style"]) {
      element.removeAttribute(name);
    }
  }
  renumberIds(root, id);
  for (const element of root.querySelectorAll("*")) {
    for (const { name, value } of [...element.attributes]) {
      if (GEOMETRY.has(name)) element.setAttribute(name, roundedNumbers(value));
    }
  }
  const attributes = {
    xmlns: SPACE,
    role: "img",
    "aria-labelledby": `${id}-title`,
    "aria-describedby": `${id}-desc`,
    "font-family": FIGURE_FONTS,
    "font-size": String(fontSize),
    fill: "currentColor",
    color: INK,
  };
  for (const [name, value] of Object.entries(attributes)) root.setAttribute(name, value);

  const make = (name: string) => root.ownerDocument.createElementNS(SPACE, name);
  const paper = make("rect");
  paper.setAttribute("width", root.getAttribute("width")!);
  paper.setAttribute("height", root.getAttribute("height")!);
  paper.setAttribute("fill", PAPER);
  const words = (name: "title" | "desc", text: string) => {
    const element = make(name);
    element.setAttribute("id", `${id}-${name}`);
    element.textContent = text;
    return element;
  };
  const first = root.firstChild;
  for (const element of [words("title", title), words("desc", description), paper]) {
    root.insertBefore(element, first);
  }
  return root.outerHTML;
}
