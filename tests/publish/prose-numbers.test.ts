import { describe, expect, it } from "vitest";
import { parseNotebook } from "lakeproof/publish/notebook.ts";
import { bareNumbers } from "lakeproof/publish/prose-numbers.ts";
import { newNotebook } from "lakeproof/tasks/new-notebook.ts";
import { code, notebookOf, prose } from "../support/example-notebook.ts";

const found = (source: string) =>
  bareNumbers(notebookOf(code("const x = 17;", "a"), prose(source, "b")))
    .map((one) => /^"(.*?)"/.exec(one.what)?.[1] ?? one.what);

describe("a number in prose", () => {
  it("typed by hand is a fault with its cell, line and sentence", () => {
    const [fault] = bareNumbers(
      notebookOf(prose("# Title", "a"), prose("## Part\n\nGood.\nBirch won by 12,5 m. Good.", "b")),
    );
    expect(fault).toMatchObject({
      cell: 2,
      line: 4,
      sentence: "Birch won by 12,5 m.",
      stale: false,
    });
    expect(fault!.what).toContain('"12,5" is typed by hand');
    expect(fault!.what).toContain("[12,5](<#literal:the reason>)");
  });

  it("is found wherever prose stands, as digits and as words", () => {
    expect(found("# Twenty runs")).toEqual(["Twenty"]);
    expect(found("- a list of 3\n- 4")).toEqual(["3", "4"]);
    expect(found("> 7 times")).toEqual(["7"]);
    expect(found("| a | 5 |\n|---|---|\n| twelve | b |")).toEqual(["5", "twelve"]);
    expect(found("**1.18** and *two dozen*, twice")).toEqual(["1.18", "two", "dozen", "twice"]);
    expect(found("a ![picture of 3](x.png)")).toEqual([]);
    expect(found("<b>9</b>")).toEqual(["9"]);
  });

  it("is none in notation, code, formulas, links, sources, notes and names", () => {
    for (
      const text of [
        "[1.18](#value:glide/ratio) and [two](#claim:glide/verdict=refused)",
        "`x = 3` and\n\n```sh\nrun 4\n```\n\n    5 indented",
        "$x_0 + 2$ and\n\n$$ 3 x^2 $$",
        "[chapter 3](other.ipynb) and [the guide of 1947](https://lake.example/1947)",
        "Source: Welch 1947.\n\n*Source of the rest:* JCGM 100:2008.",
        "## References\n\n- Tukey 1958, volume 29.",
        "A word.[^1]\n\n[^1]: Tukey 1958.",
        "an A4 sheet, m2, birch2",
        "1. first\n2. second",
        "one of them, the first half, someone, often, weight",
      ]
    ) expect([text, ...found(text)]).toEqual([text]);
    expect(found("## References\n\n- Tukey 1958.\n\n## Next\n\n3 runs")).toEqual(["3"]);
  });

  it("may be marked with a reason, and not without one", () => {
    expect(found("[nineteen of twenty](<#literal:what 95 % means>) sessions")).toEqual([]);
    expect(found("[2](#literal:advice)")).toEqual([]);
    expect(found("[2](#literal:)")[0]).toContain("without a reason");
  });
});

describe("the prose of the project's own notebooks", () => {
  it("holds no number typed by hand, and nor does that of a new one", () => {
    const folder = new URL("../../notebooks/", import.meta.url);
    const names = [...Deno.readDirSync(folder)].map((one) => one.name)
      .filter((name) => name.endsWith(".ipynb"));
    expect(names.length).toBeGreaterThan(0);
    for (const name of names) {
      const notebook = parseNotebook(Deno.readTextFileSync(new URL(name, folder)), name);
      expect([name, ...bareNumbers(notebook)]).toEqual([name]);
    }
    expect(bareNumbers(newNotebook("my-lake"))).toEqual([]);
  });
});
