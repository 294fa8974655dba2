import { parseHTML } from "linkedom";
import { describe, expect, it } from "vitest";
import { figureDecomposition } from "lakeproof/show/figure-decomposition.ts";
import { figureDistance } from "lakeproof/show/figure-distance.ts";
import { figureGlideRatio } from "lakeproof/show/figure-glide-ratio.ts";
import { figureRatios } from "lakeproof/show/figure-ratios.ts";
import { safeSvg, withOwnIds } from "lakeproof/publish/page/safe-svg.ts";
import { inventedEvidence } from "../../support/invented-evidence.ts";

interface Node {
  readonly nodeName: string;
  readonly textContent: string;
  readonly attributes?: Iterable<{ readonly name: string; readonly value: string }>;
  readonly childNodes: Iterable<Node>;
}

/** An element as plain data, whatever way its markup was written. */
function plain(node: Node): unknown {
  if (node.nodeName === "#text") return node.textContent;
  const attributes = [...node.attributes ?? []].map(({ name, value }) => `${name}=${value}`).sort();
  // The parser splits texts at entities.
  const children: unknown[] = [];
  for (const child of [...node.childNodes].map(plain)) {
    const last = children.at(-1);
    if (typeof child === "string" && typeof last === "string") {
      children[children.length - 1] = last + child;
    } else children.push(child);
  }
  return [node.nodeName, attributes, children];
}

const parsed = (svg: string) => plain(parseHTML(svg).document.querySelector("svg") as Node);

describe("an SVG made fit for a page", () => {
  const figures = [figureDistance, figureGlideRatio, figureDecomposition, figureRatios]
    .map((figure) => figure(inventedEvidence()));

  it("is the same drawing, when the library drew it", () => {
    for (const { wide, narrow } of figures) {
      for (const svg of [wide, narrow]) expect(parsed(safeSvg(svg))).toEqual(parsed(svg));
    }
  });

  it("keeps its references to itself under the new ids", () => {
    const own = withOwnIds(
      safeSvg(
        `<svg aria-labelledby="a b"><title id="a">id="a" url(#a)</title><desc id="b">d</desc>` +
          `<clipPath id="c"><path d="M0 0"/></clipPath><g clip-path="url(#c)"/></svg>`,
      ),
      "figure-1-wide",
    );
    expect(own).toContain('aria-labelledby="figure-1-wide-1 figure-1-wide-2"');
    expect(own).toContain('<clipPath id="figure-1-wide-3">');
    expect(own).toContain('clip-path="url(#figure-1-wide-3)"');
    expect(own).toMatch(/<title id="figure-1-wide-1">id=("|&quot;)a("|&quot;) url\(#a\)<\/title>/);
  });

  it("refuses what is no SVG element", () => {
    for (const text of ["", "a", "<p>a</p>", "<script></script>"]) {
      expect(() => safeSvg(text)).toThrow("must be one SVG element");
    }
  });
});
