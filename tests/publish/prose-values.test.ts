import MarkdownIt from "markdown-it";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bindProse, describeFaults } from "lakeproof/publish/prose-values.ts";
import { proseLinks } from "lakeproof/publish/prose-links.ts";
import { notebookOf, prose, shown } from "../support/example-notebook.ts";

const ratio = {
  value: 1.1820182,
  standardUncertainty: 0.0694,
  degreesOfFreedom: 15.57,
  low: 1.0434176,
  high: 1.3390295,
  level: 0.95,
  kind: "interval",
  unit: "1",
};
const distance = {
  ...ratio,
  value: 41.234,
  standardUncertainty: 1.9,
  low: 37,
  high: 46,
  unit: "m",
};

const answer = {
  question: "glide",
  launch: null,
  designs: [
    { design: "alder", distance, runsUsed: 7 },
    { design: "big (blue) wing/2", distance, runsUsed: 6 },
    { design: "<script>*x*", distance, runsUsed: 5 },
  ],
  comparisons: [{
    baseline: "alder",
    candidate: "birch",
    verdict: "candidate-better",
    ratio,
    probabilityCandidateBetter: 0.9934,
    fragile: false,
  }],
};

function bind(source: string, refill = false) {
  const bound = bindProse(notebookOf(prose(source), shown("glide", answer)), { refill });
  return { ...bound, source: bound.notebook.cells[0]!.source };
}

describe("values in prose", () => {
  it("fill an open text, whichever way it is left open", () => {
    for (const open of ["", "…", "...", "?", " "]) {
      const bound = bind(`Birch goes [${open}](#value:glide/comparisons/0/ratio) times as far.`);
      expect(bound.faults).toEqual([]);
      expect(bound.filled).toBe(1);
      expect(bound.source).toBe(
        "Birch goes [1.182](#value:glide/comparisons/0/ratio) times as far.",
      );
    }
  });

  it("are written in every form, and members of a list are called by name", () => {
    const fill = (path: string) => bind(`[](#value:glide/${path})`).source.slice(1).split("](")[0];
    expect(fill("comparisons[birch]/ratio/@interval")).toBe("1.043 to 1.339");
    expect(fill("comparisons[birch]/ratio/@plusMinus")).toBe("1.182\u00a0±\u00a00.069");
    expect(fill("comparisons[birch]/probabilityCandidateBetter/@percent")).toBe("99.3\u00a0%");
    expect(fill("designs/@count")).toBe("3");
    expect(fill("designs[alder]/distance")).toBe("41.2\u00a0m");
    expect(fill("designs[0]/runsUsed")).toBe("7");
    expect(fill("designs/1/runsUsed")).toBe("6");
    expect(fill("comparisons[birch]/verdict")).toBe("candidate-better");
    expect(fill("comparisons[birch]/fragile")).toBe("no");
    expect(fill("comparisons[birch]/ratio/low")).toBe("1.04");
  });

  it("find a design with spaces, brackets and a slash in its name", () => {
    const angle = bind("[](<#value:glide/designs[big (blue) wing/2]/runsUsed>)");
    expect(angle.source).toMatch(/^\[6\]/);
    const encoded = bind("[](#value:glide/designs[big%20(blue)%20wing/2]/runsUsed)");
    expect(encoded.source).toMatch(/^\[6\]/);
  });

  it("never let text from data become markup", () => {
    const bound = bind("[](#value:glide/designs/2/design) is odd.");
    const html = new MarkdownIt({ html: true }).render(bound.source);
    expect(html).not.toContain("<script>");
    expect(html).not.toContain("<em>");
    expect(html).toContain("&lt;script&gt;*x*");
    // Bound again, the escaped text counts as right.
    expect(bind(bound.source)).toMatchObject({ filled: 0, faults: [] });
  });

  it("that are right pass unchanged, with an ordinary space for the unbreakable one too", () => {
    const source = "Alder went [41.2 m](#value:glide/designs[alder]/distance).";
    expect(bind(source)).toMatchObject({ filled: 0, faults: [], source });
  });

  it("that are stale stop with cell, line, sentence, old and new, and how to accept", () => {
    const source =
      "# Title\n\nA first sentence. Birch goes **[1.25](#value:glide/comparisons/0/ratio)**\n" +
      "times as far. A last one.";
    const bound = bind(source);
    expect(bound.source).toBe(source);
    expect(bound.faults).toEqual([{
      cell: 1,
      line: 3,
      sentence: "Birch goes **1.25** times as far.",
      what: 'it says "1.25", but the fresh value is "1.182"',
      stale: true,
    }]);
    const words = describeFaults("01-x.ipynb", bound.faults);
    expect(words).toContain("01-x.ipynb, cell 1, line 3:");
    expect(words).toContain("--refill");
    expect(bind(source, true)).toMatchObject({ filled: 1, faults: [] });
    expect(bind(source, true).source).toContain("[1.182](#value");
  });

  it("that are stale in one sentence are told together, in the order written", () => {
    const source = "From [2](#value:glide/designs[alder]/runsUsed) runs, " +
      "[9](#value:glide/comparisons/0/ratio) times.";
    const words = describeFaults("01-x.ipynb", bind(source).faults);
    expect(words.match(/01-x\.ipynb, cell 1, line 1/g)).toHaveLength(1);
    expect(words).toMatch(/fresh value is "7"[^]*fresh value is "1\.182"/);
  });

  it("with an unknown path stop with a guess and the keys there are", () => {
    const what = (path: string) => bind(`[](#value:${path})`).faults[0]?.what;
    expect(what("glide/comparisons[birch]/ration")).toContain('did you mean "ratio"?');
    expect(what("glide/comparisons[brich]/ratio")).toContain('did you mean "birch"?');
    expect(what("glyde/comparisons/0/ratio")).toContain('did you mean "glide"?');
    expect(what("glide/comparisons/0/ratio/@intervall")).toContain('did you mean "@interval"?');
    expect(what("glide/comparisons/7/ratio")).toContain("members in glide/comparisons: birch");
    expect(what("glide/question/x")).toContain("is a single value");
    expect(what("glide/launch/speed")).toContain("could not be told");
    expect(what("glide/launch")).toContain("could not be told");
    expect(what("glide/designs")).toContain("it is a list");
    expect(what("glide/designs/0")).toContain("go on with one of design, distance, runsUsed");
    expect(what("glide/designs/@percent")).toContain("@percent wants");
    expect(what("glide/toString")).toContain('no "toString"');
    expect(what("")).toContain("the path is empty");
  });

  it("are left alone in code, code blocks and escaped brackets", () => {
    const link = "[](#value:glide/comparisons/0/ratio)";
    const source = [
      "`" + link + "` and ``x ` " + link + "`` and \\" + link,
      "",
      "```",
      link,
      "```",
      "",
      "    " + link,
      "",
      "~~~md",
      link,
      "~~~",
      "",
      "<!-- " + link + " -->",
    ].join("\n");
    expect(bind(source)).toMatchObject({ filled: 0, faults: [], source });
  });

  it("are found in lists, tables, quotes, headings and emphasis, on the right line", () => {
    const link = "[](#value:glide/comparisons/0/ratio)";
    const source = [
      `# Head ${link}`,
      "",
      `- one\n  - two **${link}**`,
      "",
      `> quote ${link}`,
      "",
      `| a | b |\n|---|---|\n| ${link} | x |`,
      "",
      `A line with a lone \` and ${link}.`,
    ].join("\n");
    expect(proseLinks(source).links.map((one) => one.line)).toEqual([1, 4, 6, 10, 12]);
    expect(bind(source).filled).toBe(5);
  });
});

describe("an answer's name", () => {
  const link = prose("[](#value:glide/x)");

  it("may be shown twice when both are alike, and stops when they differ", () => {
    const alike = notebookOf(link, shown("glide", { x: 1 }, "a"), shown("glide", { x: 1 }, "b"));
    expect(bindProse(alike)).toMatchObject({ filled: 1, faults: [] });
    const unlike = notebookOf(link, shown("glide", { x: 1 }, "a"), shown("glide", { x: 2 }, "b"));
    expect(bindProse(unlike).faults[0]!.what).toContain('two different answers are called "glide"');
  });
});

describe("claims in prose", () => {
  const claim = (target: string) => bind(`It goes [further](#claim:glide/${target}).`);

  it("that hold pass unchanged", () => {
    for (
      const target of [
        "comparisons/0/verdict=candidate-better",
        "comparisons[birch]/verdict!=refused",
        "comparisons[birch]/ratio>1",
        "comparisons[birch]/ratio/low>=1.04",
        "comparisons[birch]/probabilityCandidateBetter<1",
        "designs[alder]/runsUsed=7",
        "designs/@count<=3",
        "comparisons[birch]/fragile=false",
        "launch=null",
      ]
    ) expect(claim(target)).toMatchObject({ filled: 0, faults: [] });
  });

  it("that no longer hold stop, with the value now, and can't be refilled", () => {
    const source = "It goes [further](#claim:glide/comparisons/0/verdict=baseline-better).";
    for (const refill of [false, true]) {
      const fault = bind(source, refill).faults[0]!;
      expect(fault.stale).toBe(false);
      expect(fault.sentence).toBe("It goes further.");
      expect(fault.what).toContain("no longer holds: the value is now candidate-better");
    }
    expect(claim("comparisons/0/ratio/low>1.1").faults).toHaveLength(1);
  });

  it("that can't be compared stop with the reason", () => {
    expect(claim("comparisons/0/verdict").faults[0]!.what).toContain("something to compare");
    expect(claim("comparisons/0/ratio>far").faults[0]!.what).toContain('"far" is not');
    expect(claim("comparisons/0/ratio>").faults[0]!.what).toContain("is not");
    expect(claim("comparisons/0/verdict>1").faults[0]!.what).toContain("not a number");
    expect(claim("comparisons/0>1").faults[0]!.what).toContain("a list or a group");
    expect(claim("comparisons/0/verdicd=refused").faults[0]!.what).toContain('"verdict"');
  });
});

describe("any Markdown", () => {
  it("yields exactly the bound links that a renderer sees", () => {
    const piece = fc.constantFrom(
      ...["[](#value:a/b)", "[x](#claim:a=1)", "`", "``", "\\", "\n", "\n\n", "    ", "- ", "> "],
      ...["```\n", "word ", "*", "[", "]", "(", ")", "# ", "|", "\n|a|b|\n|-|-|\n", "!"],
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 14 }), (pieces) => {
        const source = pieces.join("");
        const tokens = new MarkdownIt({ html: true }).parse(source, {});
        const seen = tokens.flatMap((token) => token.children ?? [])
          .map((token) => String(token.attrGet("href") ?? ""))
          .filter((href) => /^#(value|claim):/.test(href));
        const { links, unreadable } = proseLinks(source);
        expect(links.length + unreadable).toBe(seen.length);
      }),
      { numRuns: 5000, seed: 1 },
    );
  });

  it("stops at a bound link written in a form that can't be filled", () => {
    expect(bind("[**x**](#value:glide/question)").faults).toHaveLength(1);
    const odd = bind("[x [y] z](#value:glide/question)");
    expect(odd.faults[0]!.what).toContain("can't be filled");
    expect(bind("[x]\n\n[x]: #value:glide/question").faults[0]!.what).toContain("can't be filled");
  });
});
