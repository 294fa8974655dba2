import { describe, expect, it } from "vitest";
import { buildIndex } from "lakeproof/publish/page/build-index.ts";
import { buildPage } from "lakeproof/publish/page/build-page.ts";
import { messages, pages, withoutData, withoutStyles } from "./built-page.ts";
import { SAMPLE_STAMP } from "./sample-notebook.ts";
import { HOSTILE, HOSTILE_NAME } from "./hostile-notebook.ts";

describe("a page with hostile names", () => {
  const page = buildPage({
    slug: "01-sample",
    notebook: HOSTILE,
    stamp: {
      ...SAMPLE_STAMP,
      notebook: HOSTILE_NAME,
      versions: { [HOSTILE_NAME]: HOSTILE_NAME },
      data: [],
    },
    pages: [...pages, { slug: "02-next", title: HOSTILE_NAME }],
  });

  it("holds them as text only: no element or attribute comes of them", async () => {
    const { html, card } = await page;
    for (const whole of [html, await buildIndex([card])].map(withoutData)) {
      const tags = [...withoutStyles(whole).matchAll(/<\/?([a-zA-Z][\w-]*)([^>]*)>/g)];
      const names = tags.map((tag) => tag[1]!.toLowerCase());
      for (const bad of ["script", "iframe", "foreignobject", "image", "object"]) {
        expect(names).not.toContain(bad);
      }
      expect(tags.filter((tag) => /\son\w+\s*=/.test(tag[2]!.replace(/"[^"]*"/g, "")))).toEqual([]);
      expect(whole).not.toMatch(/(href|src)="javascript:/);
      expect(whole).not.toContain("https://example.org");
      expect(whole).toContain("&lt;script&gt;alert(1)&lt;/script&gt;");
    }
  });

  it("is still valid HTML", async () => {
    const { html, card } = await page;
    expect(await messages(html)).toEqual([]);
    expect(await messages(await buildIndex([card]))).toEqual([]);
  });

  it("names its files plainly and keeps formulas out of its tables", async () => {
    const { files } = await page;
    for (const { path } of files) {
      expect(path).toMatch(/^(figures|tables|answers)\/01-sample-[a-z0-9-]+\.(svg|png|json|csv)$/);
    }
    expect(new Set(files.map((file) => file.path)).size).toBe(files.length);
    const csv = files.find((file) => file.path.endsWith(".csv"))!;
    expect(new TextDecoder().decode(csv.bytes)).toContain("\r\n'=cmd()\r\n");
    const svg = files.find((file) => file.path.endsWith(".svg"))!;
    const text = new TextDecoder().decode(svg.bytes);
    expect(text).not.toMatch(/<script|<image|onclick|javascript:|<foreignObject|https:/);
    expect(text).toContain("&lt;script&gt;alert(1)&lt;/script&gt;");
  });
});
