import { createHash } from "node:crypto";
import { HtmlValidate } from "html-validate";
import { describe, expect, it } from "vitest";
import { MEDIA } from "lakeproof/base/records.ts";
import { buildPage } from "lakeproof/publish/page/build-page.ts";
import { liveScript } from "lakeproof/publish/page/live-script.ts";
import type { Notebook } from "lakeproof/publish/notebook.ts";
import { LIVE_TASK, liveNotebook } from "./live-notebook.ts";
import { code, display, markdown, notebookOf, SAMPLE, SAMPLE_STAMP } from "./sample-notebook.ts";

const build = (notebook: Notebook) =>
  buildPage({ slug: "01-live", notebook, stamp: SAMPLE_STAMP, pages: [] });

const page = build(liveNotebook());

const bytes = (text: string) => new TextEncoder().encode(text).length;

describe("a page with a live figure", () => {
  it("is valid HTML by the recommended and accessibility rules of html-validate", async () => {
    const validator = new HtmlValidate({
      extends: ["html-validate:recommended", "html-validate:a11y"],
      rules: { "no-inline-style": "off", "long-title": "off" },
    });
    const { results } = await validator.validateString((await page).html);
    expect(results.flatMap((one) => one.messages.map((found) => found.message))).toEqual([]);
  });

  it("lets only the library's own script run, and that loads nothing", async () => {
    const { html } = await page;
    const scripts = [...html.matchAll(/<script>([\s\S]*?)<\/script>/g)].map((one) => one[1]!);
    expect(scripts).toEqual([await liveScript()]);
    const hash = createHash("sha256").update(scripts[0]!).digest("base64");
    expect(html).toContain(`; script-src 'sha256-${hash}'">`);
    expect(html).toContain("content=\"default-src 'none';");
    expect(html).not.toMatch(/<script[^>]*\ssrc=/);
  });

  it("stays under 400 kB, of which the script is less than 60", async () => {
    const [size, script] = [bytes((await page).html), bytes(await liveScript())];
    console.log(
      `live page of two designs: ${(size / 1000).toFixed(0)} kB, script ${
        (script / 1000).toFixed(1)
      } kB`,
    );
    expect(size).toBeLessThan(400_000);
    expect(script).toBeLessThan(60_000);
  });

  it("comes out the same, byte for byte, when it is built again", async () => {
    expect((await build(liveNotebook())).html).toBe((await page).html);
  });

  it("shows the still figure, its files and its numbers without the script", async () => {
    const { html, files } = await page;
    const still = html.replace(/<script[\s\S]*?<\/script>/g, "");
    expect(still).toMatch(/<figure class="figure" id="figure-1"/);
    expect(still).toContain("As published: load, all that flies 88");
    expect(still).not.toMatch(/<input type="range"|<fieldset class="controls"/);
    expect(files.map((file) => file.path)).toContain("figures/01-live-takeoff-live.png");
    expect(files.map((file) => file.path)).toContain("figures/01-live-takeoff-live.svg");
  });

  it("holds a hostile name as text only, also in what the script reads", async () => {
    const design = "</script><script>alert(1)</script>";
    const { html } = await build(liveNotebook({
      designs: [{ ...LIVE_TASK.designs[0]!, design }],
    }));
    // Three: what the page says of itself to programs, what the script reads, and the script.
    expect(html.match(/<script/g)).toHaveLength(3);
    expect(html.match(/<\/script/g)).toHaveLength(3);
    const [, json] = /<script type="application\/json">([\s\S]*?)<\/script>/.exec(html)!;
    expect(JSON.parse(json!).task.designs[0].design).toBe(design);
  });

  it("is refused with the cell's number when the record lacks what it must have", async () => {
    const broken = code("x", [display({ [MEDIA.live]: { legend: "move" } })]);
    await expect(build(notebookOf([markdown("# T"), broken]))).rejects.toThrow(
      /cell 2: Cannot show a record as application\/vnd.lakeproof.live\+json/,
    );
  });
});

describe("a page without one", () => {
  it("holds no script that runs, and no word about scripts", async () => {
    const { html } = await build(SAMPLE);
    // Data for catalogues stand in an element of the same name, which nothing runs.
    expect(html.match(/<script(?! type="application\/ld\+json">)|script-src|\.controls/g))
      .toBeNull();
  });
});
