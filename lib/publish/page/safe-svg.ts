/**
 * A figure's SVG made fit for a page: nothing in it can run or load, and its ids are its own.
 *
 * @module
 */
import sanitizeHtml from "sanitize-html";

const TAGS = [
  ...["svg", "g", "defs", "clipPath", "linearGradient", "stop", "marker", "title", "desc"],
  ...["path", "rect", "circle", "ellipse", "line", "polyline", "polygon", "text", "tspan"],
];

const ATTRIBUTES = [
  ...["id", "class", "role", "aria-labelledby", "aria-describedby", "aria-hidden", "aria-label"],
  ...["xmlns", "viewBox", "width", "height", "preserveAspectRatio", "version"],
  ...["x", "y", "x1", "y1", "x2", "y2", "cx", "cy", "r", "rx", "ry", "dx", "dy", "d", "points"],
  ...["transform", "clip-path", "clipPathUnits", "clip-rule", "opacity", "color", "visibility"],
  ...["fill", "fill-opacity", "fill-rule", "stroke", "stroke-opacity", "stroke-width"],
  ...["stroke-dasharray", "stroke-dashoffset", "stroke-linecap", "stroke-linejoin"],
  ...["stroke-miterlimit", "paint-order", "vector-effect", "shape-rendering", "display"],
  ...["font-family", "font-size", "font-weight", "font-style", "font-variant", "letter-spacing"],
  ...["text-anchor", "dominant-baseline", "alignment-baseline", "offset", "stop-color"],
  ...["stop-opacity", "orient", "refX", "refY", "markerWidth", "markerHeight", "markerUnits"],
  ...["marker-start", "marker-mid", "marker-end", "gradientUnits", "gradientTransform"],
];

/** Values that point out of the drawing. */
const FOREIGN = /url\s*\(\s*["']?\s*(?!#)|javascript:|data:/i;

/**
 * The SVG with only drawing elements and attributes left; texts stay texts.
 *
 * @param svg one SVG element as text
 * @returns the same drawing as well-formed XML with its name space
 * @throws Error when the text holds no SVG element
 */
export function safeSvg(svg: string): string {
  const clean = sanitizeHtml(svg, {
    allowedTags: TAGS,
    allowedAttributes: { "*": ATTRIBUTES },
    allowedSchemes: [],
    parser: { xmlMode: true, lowerCaseTags: false, lowerCaseAttributeNames: false },
    selfClosing: ["path", "rect", "circle", "ellipse", "line", "polyline", "polygon", "stop"],
    transformTags: {
      "*": (tagName, attribs) => ({
        tagName,
        attribs: Object.fromEntries(
          Object.entries(attribs).filter(([, value]) => !FOREIGN.test(value)),
        ),
      }),
    },
  }).trim();
  if (!/^<svg[\s>][\s\S]*<\/svg>$/.test(clean)) {
    throw new Error("Cannot show a figure as it must be one SVG element: none was found");
  }
  return /^<svg[^>]*\sxmlns=/.test(clean)
    ? clean
    : clean.replace("<svg", '<svg xmlns="http://www.w3.org/2000/svg"');
}

/**
 * The SVG with every id, and every reference to one, put behind a prefix of its own.
 *
 * @param svg as `safeSvg` gives it
 * @param prefix for instance "figure-1-wide"
 * @returns the same drawing, safe beside others on a page
 */
export function withOwnIds(svg: string, prefix: string): string {
  const numbers = new Map<string, string>();
  for (const [tag] of svg.matchAll(/<[^>]+>/g)) {
    const id = /\sid="([^"]*)"/.exec(tag)?.[1];
    if (id !== undefined && !numbers.has(id)) numbers.set(id, `${prefix}-${numbers.size + 1}`);
  }
  const own = (id: string) => numbers.get(id) ?? `${prefix}-none`;
  return svg.replace(/<[^>]+>/g, (tag) =>
    tag.replace(
      /\s(id|aria-labelledby|aria-describedby)="([^"]*)"|url\(#([^)"]*)\)/g,
      (_, attribute: string | undefined, value: string, reference: string) =>
        attribute === undefined
          ? `url(#${own(reference)})`
          : ` ${attribute}="${value.split(/\s+/).map(own).join(" ")}"`,
    ));
}
