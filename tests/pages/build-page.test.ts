import { describe, expect, it } from "vitest";
import { MEDIA } from "lakeproof/base/records.ts";
import { buildIndex } from "lakeproof/publish/page/build-index.ts";
import { buildPage } from "lakeproof/publish/page/build-page.ts";
import type { PageBuild } from "lakeproof/publish/page/page-types.ts";
import { build, messages, pages, withoutData, withoutStyles } from "./built-page.ts";
import {
  code,
  display,
  markdown,
  notebookOf,
  SAMPLE,
  SAMPLE_ANSWER,
  SAMPLE_STAMP,
} from "./sample-notebook.ts";
import { WHOLE } from "./whole-notebook.ts";

const sample = build(SAMPLE);

const textOf = (page: PageBuild, path: string) =>
  new TextDecoder().decode(page.files.find((file) => file.path === path)!.bytes);

describe("a page", () => {
  it("is valid HTML by the recommended and accessibility rules of html-validate", async () => {
    expect(await messages((await sample).html)).toEqual([]);
    expect(await messages(await buildIndex([(await sample).card]))).toEqual([]);
  });

  it("tells programs what it is, with its data, its first figure and texts that can't end the element", async () => {
    const publication = {
      title: "Wings",
      description: "Of wings",
      authors: ["An evening class (invented)"],
      licence: "MIT",
      address: null,
    };
    const { html, card } = await buildPage({
      slug: "01-sample",
      notebook: { ...SAMPLE, cells: [markdown("# A </script><b>title"), ...SAMPLE.cells] },
      stamp: SAMPLE_STAMP,
      pages,
      publication,
    });
    const data = JSON.parse(/<script type="application\/ld\+json">(.*?)<\/script>/.exec(html)![1]!);
    // schema.org: the two types, and what catalogues ask of a Dataset (name, description, distribution).
    expect(data).toMatchObject({
      "@context": "https://schema.org",
      "@type": "ScholarlyArticle",
      headline: "A </script><b>title",
      author: [{ "@type": "Organization", name: "An evening class (invented)" }],
      image: card.preview!.path,
    });
    for (const set of data.isBasedOn) {
      expect(set).toMatchObject({ "@type": "Dataset", name: expect.any(String) });
      expect(set.description).toContain("Of wings");
      expect(set.distribution[0].contentUrl).toBe(`data/${set.name}.zip`);
    }
    expect(html).toContain(`<meta property="og:image" content="${card.preview!.path}">`);
    expect(card.preview!.path).toMatch(/^figures\/01-sample-.*\.png$/);
    expect(await messages(html)).toEqual([]);
  });

  it("is valid with everything on it that the library can show, and stays under 400 kB", async () => {
    const { html } = await build(WHOLE);
    expect(await messages(html)).toEqual([]);
    expect(new TextEncoder().encode(html).length).toBeLessThan(400_000);
  });

  it("is titled by its file when the notebook has no heading", async () => {
    const { html, card } = await build(notebookOf([markdown("Words.")]));
    expect(html).toContain("<h1>01-sample</h1>");
    expect(card.question).toBe("01-sample");
    expect(await messages(html)).toEqual([]);
  });

  it("folds a table of more than thirty rows, and no other", async () => {
    const { html } = await build(WHOLE);
    expect(html.match(/<details class="rows">/g)).toHaveLength(1);
    expect(html).toContain("<summary>All 40 rows</summary>");
  });

  it("asks nobody for anything: every address that a browser loads by itself is a data address", async () => {
    const { html } = await sample;
    const loaded = [
      ...html.matchAll(/\b(?:src|srcset|poster|data)="([^"]*)"/g),
      ...html.matchAll(/<link[^>]*href="([^"]*)"/g),
      ...html.matchAll(/url\(([^)]*)\)/g),
    ].map((match) => match[1]!);
    expect(loaded.filter((address) => !/^(data:|#)/.test(address))).toEqual([]);
    expect(withoutData(html)).not.toMatch(/<script|@import|<iframe|<object|<embed/);
  });

  it("stays under 400 kB", async () => {
    expect(new TextEncoder().encode((await sample).html).length).toBeLessThan(400_000);
  });

  it("comes out the same, byte for byte, when it is built again", async () => {
    const [first, second] = [await sample, await build(SAMPLE)];
    expect(second.html).toBe(first.html);
    expect(second.files).toEqual(first.files);
  });

  it("uses no id twice, and every link within the page has its end", async () => {
    const html = withoutStyles((await sample).html);
    const ids = [...html.matchAll(/\sid="([^"]*)"/g)].map((match) => match[1]!);
    expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([]);
    const ends = [...html.matchAll(/href="#([^"]*)"|url\(#([^)]*)\)/g)]
      .map((match) => match[1] ?? match[2]!);
    expect(ends.filter((end) => !ids.includes(end))).toEqual([]);
    const named = [...html.matchAll(/aria-(?:labelledby|describedby)="([^"]*)"/g)]
      .flatMap((match) => match[1]!.split(" "));
    expect(named.filter((name) => !ids.includes(name))).toEqual([]);
  });

  it("has the fixed ids that other pages link to", async () => {
    const { html } = await sample;
    for (const id of ["answer", "data", "method", "result", "limits", "rerun", "notes", "stamp"]) {
      expect(html).toContain(` id="${id}"`);
    }
  });

  it("says by which rule its numbers are rounded", async () => {
    expect((await sample).html).toContain("second digit of their standard uncertainty");
  });

  it("opens with title and question, then the answer box that took over its heading", async () => {
    const html = withoutStyles((await sample).html);
    expect(html.match(/<h1/g)).toHaveLength(1);
    expect(html.indexOf("<h1>")).toBeLessThan(html.indexOf('<blockquote class="question">'));
    expect(html).toContain('<h2 id="answer-title">The short answer</h2>');
    expect(html.match(/The short answer/g)).toHaveLength(1);
  });

  it("puts an open ring on a card that cannot tell, and no mark on one that compares nothing", async () => {
    const { card } = await sample;
    const ring = /<strong><svg[^>]*>[^<]*<circle[^>]*stroke-dasharray/;
    const cardOf = (verdict: "told" | "cannot-tell-yet") =>
      buildIndex([{ ...card, answer: { ...card.answer!, verdict, ahead: null } }]);
    expect(await cardOf("cannot-tell-yet")).toMatch(ring);
    expect(await cardOf("told")).not.toMatch(/<strong><svg/);
  });

  it("marks words that are bound to an answer, and leaves no link to a value", async () => {
    const { html } = await sample;
    expect(html).toMatch(/<button type="button" class="value" popovertarget="value-1">1\.18</);
    expect(html).not.toMatch(/#(value|claim|literal):/);
  });

  it("opens a note behind each bound number: value, interval, uncertainty, unit, where it comes from", async () => {
    const ratio = {
      value: 1.1834,
      standardUncertainty: 0.062,
      degreesOfFreedom: 11.4,
      low: 1.05,
      high: 1.33,
      level: 0.95,
      kind: "interval",
      unit: "1",
    };
    const shown = { ...SAMPLE_ANSWER, answer: { ratio, runs: 7, "<x>": "<i>" } };
    const { html } = await build(notebookOf([
      markdown(
        "# A\n\nIt is [1.183](#value:glide/ratio) with [7](#value:glide/runs) runs, [x](<#value:glide/\\<x\\>>).",
      ),
      markdown("## Of [1.183](#value:glide/ratio)\n\n[two](<#literal:advice>) more"),
      code("show();", [display({ [MEDIA.answer]: shown })]),
    ]));
    const notes = [
      ...html.matchAll(
        /popovertarget="(.*?)">(.*?)<\/button><span class="value-note" id="(.*?)" popover>(.*?)<\/span>/g,
      ),
    ];
    expect(notes.map((one) => one[2])).toEqual(["1.183", "7", "x"]);
    for (const one of notes) expect(one[1]).toBe(one[3]);
    const first = notes[0]![4]!.replaceAll("\u00a0", " ");
    expect(first).toContain("<b>1.183</b>");
    expect(first).toContain("95 % interval: 1.050 to 1.330");
    expect(first).toContain("Standard uncertainty 0.062; degrees of freedom 11");
    expect(first).toContain("A ratio: no unit");
    expect(first).toContain('<a href="answers/01-sample-glide.json">glide</a>, <code>ratio</code>');
    expect(notes[1]![4]).toContain("no uncertainty of its own");
    expect(notes[2]![4]).toContain("&lt;i&gt;");
    expect(html).toContain('Of <span class="value">1.183</span></a></h2>');
    expect(html).toContain("<p>two more</p>");
    expect(await messages(html)).toEqual([]);
  });

  it("keeps a bound number on one line with the bracket before it and the stop after it", async () => {
    const { html } = await build(notebookOf([
      markdown(
        "# A\n\nIt is far ([7](#value:glide/runs)), then [7](#value:glide/runs) and ([7](#value:glide/runs) runs).",
      ),
      code("show();", [display({ [MEDIA.answer]: { ...SAMPLE_ANSWER, answer: { runs: 7 } } })]),
    ]));
    const text = html.replace(/<span class="value-note".*?<\/span>/g, "")
      .replace(/<button[^>]*>(.*?)<\/button>/g, "{$1}");
    expect(text).toContain(
      'It is far <span class="whole">({7}),</span> then {7} and <span class="whole">({7}</span> runs).',
    );
    expect(await messages(html)).toEqual([]);
  });

  it("gives figures as SVG and PNG, answers as JSON, tables as CSV in both forms", async () => {
    const page = await sample;
    const paths = page.files.map((file) => file.path);
    expect(paths).toContain("figures/01-sample-distance-against-launch-speed.png");
    for (const path of paths) expect(page.html).toContain(`href="${path}"`);
    expect(JSON.parse(textOf(page, "answers/01-sample-glide.json"))).toEqual(SAMPLE_ANSWER.answer);
    expect(textOf(page, "tables/01-sample-results.csv")).toBe(
      "design,glide ratio,distance [m],95 % interval [m],runs\r\n" +
        "alder,9.81234567890,15.312,14.2 to 16.4,7\r\n".replace("67890", "6789") +
        "birch,11.58,18.07,16.9 to 19.3,7\r\n",
    );
    expect(textOf(page, "tables/01-sample-results-decimal-comma.csv")).toContain(
      "alder;9,8123456789;15,312;14.2 to 16.4;7\r\n",
    );
  });

  it("says on its card what it asks and what came out", async () => {
    const { card } = await sample;
    expect(card.question).toMatch(/^Birch flew shorter distances/);
    expect(card.summary).toMatch(/^Two wings built in an evening class/);
    expect(card.answer?.headline).toBe("Birch glides further than alder.");
    expect(await buildIndex([card])).toContain("Birch glides further than alder.");
  });
});
