import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { buildIndex } from "lakeproof/publish/page/build-index.ts";
import { buildPage } from "lakeproof/publish/page/build-page.ts";
import { SAMPLE, SAMPLE_STAMP } from "../pages/sample-notebook.ts";
import { HOSTILE } from "../pages/hostile-notebook.ts";
import { WHOLE } from "../pages/whole-notebook.ts";
import { accessibility, CHROMIUM, fallbackFonts, launch, open, REQUIRED } from "./chromium.ts";

const site = new URL("../../out/", import.meta.url).pathname;

function htmlFiles(folder: string): string[] {
  try {
    return [...Deno.readDirSync(folder)].map((one) => one.name)
      .filter((name) => name.endsWith(".html")).sort();
  } catch {
    return [];
  }
}

const published = htmlFiles(site);
const samples = Deno.makeTempDirSync({ prefix: "lakeproof-sample-" });
const pages = [
  ...["01-sample.html", "02-whole.html", "index.html"]
    .map((name) => ({ name: `sample ${name}`, path: `${samples}/${name}` })),
  ...published.map((name) => ({ name: `out/${name}`, path: site + name })),
];

if (CHROMIUM === null && !REQUIRED) {
  console.warn("Browser tests SKIPPED: no Chromium here. Install it, or set CHROMIUM to its path.");
}
if (published.length === 0 && !REQUIRED) {
  console.warn("Browser tests look at the sample page only: out/ holds no page. Run task report.");
}

let browser: Browser;

beforeAll(async () => {
  if (CHROMIUM === null) return;
  const links = [
    { slug: "00-first", title: "A first page" },
    { slug: "01-sample", title: "Which of two wings glides better?" },
    { slug: "02-whole", title: "Everything that can be shown" },
  ];
  const cards = [];
  for (const [slug, notebook] of [["01-sample", SAMPLE], ["02-whole", WHOLE]] as const) {
    const page = await buildPage({ slug, notebook, stamp: SAMPLE_STAMP, pages: links });
    await Deno.writeTextFile(`${samples}/${slug}.html`, page.html);
    cards.push(page.card);
  }
  cards.push({ ...cards[0]!, slug: "00-first", answer: null });
  await Deno.writeTextFile(`${samples}/index.html`, await buildIndex(cards));
  browser = await launch();
});

afterAll(async () => {
  await browser?.close();
  await Deno.remove(samples, { recursive: true });
});

it.runIf(REQUIRED)("a Chromium and a published site are there to be tested", () => {
  expect(CHROMIUM).not.toBeNull();
  expect(published).toContain("index.html");
});

it.skipIf(CHROMIUM === null)("a page that breaks the rules is noticed", async () => {
  const path = `${samples}/broken.html`;
  await Deno.writeTextFile(
    path,
    `<!DOCTYPE html><html lang="en"><title>t</title><body><img src="other.png">` +
      `<p style="width:900px;color:#ccc;background:#fff">pale, wide, and in the machine's font</p>`,
  );
  const { page, requests, complaints } = await open(browser, path, { width: 320, scheme: "light" });
  expect(requests).toHaveLength(2);
  expect(complaints).toHaveLength(1);
  const found = (await accessibility(page)).join("\n");
  expect(found).toMatch(/image-alt/);
  expect(found).toMatch(/color-contrast/);
  expect(await page.evaluate("document.documentElement.scrollWidth")).toBeGreaterThan(900);
  expect((await fallbackFonts(page)).join("\n")).toMatch(/pale, wide/);
  await page.close();
});

it.skipIf(CHROMIUM === null)(
  "a page of hostile names runs nothing and asks for nothing",
  async () => {
    const path = `${samples}/hostile.html`;
    const built = await buildPage({
      slug: "hostile",
      notebook: HOSTILE,
      stamp: SAMPLE_STAMP,
      pages: [],
    });
    const visit = async (file: string) => {
      const { page, requests, complaints } = await open(browser, file, {
        width: 1100,
        scheme: "light",
      });
      let dialogs = 0;
      page.on("dialog", (dialog) => {
        dialogs++;
        void dialog.dismiss();
      });
      await page.reload();
      await page.waitForTimeout(300);
      expect(dialogs).toBe(0);
      expect(new Set(requests.filter((url) => !url.startsWith("data:")))).toEqual(
        new Set([`file://${file}`]),
      );
      expect(complaints).toEqual([]);
      await page.close();
    };
    await Deno.writeTextFile(path, built.html);
    await visit(path);
    // The drawing beside the page is opened by itself, without the page's policy.
    const svg = built.files.find((file) => file.path.endsWith(".svg"))!;
    await Deno.writeFile(`${samples}/hostile.svg`, svg.bytes);
    await visit(`${samples}/hostile.svg`);
  },
);

for (const width of [1100, 360]) {
  it.skipIf(CHROMIUM === null)(
    `a number's note opens by the keyboard, lies inside a window of ${width} px, is accessible, and closes`,
    async () => {
      const { page } = await open(browser, `${samples}/01-sample.html`, { width, scheme: "dark" });
      const number = page.locator("button.value").first();
      const note = page.locator(".value-note").first();
      expect(await note.isVisible()).toBe(false);
      await number.focus();
      await page.keyboard.press("Enter");
      expect(await note.isVisible()).toBe(true);
      const [at, box] = [await number.boundingBox(), await note.boundingBox()];
      expect(box!.x).toBeGreaterThanOrEqual(0);
      expect(box!.x + box!.width).toBeLessThanOrEqual(width);
      expect(box!.y).toBeGreaterThanOrEqual(0);
      expect(box!.y + box!.height).toBeLessThanOrEqual(900);
      // Beside the number: below it, or above it at the foot of the window.
      const below = box!.y - (at!.y + at!.height);
      const above = at!.y - (box!.y + box!.height);
      expect(Math.max(below, above)).toBeGreaterThanOrEqual(0);
      expect(Math.max(below, above)).toBeLessThan(30);
      expect(await accessibility(page)).toEqual([]);
      await page.keyboard.press("Escape");
      expect(await note.isVisible()).toBe(false);
      await page.close();
    },
  );
}

it.skipIf(published.length === 0)("every link within the published site leads somewhere", () => {
  const broken: string[] = [];
  for (const name of published) {
    const html = Deno.readTextFileSync(site + name);
    for (const [, address] of html.matchAll(/<a [^>]*href="([^"#:]+)(?:#[^"]*)?"/g)) {
      try {
        Deno.statSync(site + address);
      } catch {
        broken.push(`${name}: ${address}`);
      }
    }
  }
  expect(broken).toEqual([]);
});

const sheets = (pdf: string) => pdf.match(/\/Type\s*\/Page\b/g)?.length ?? 0;

describe.skipIf(CHROMIUM === null).each(pages)("$name in a browser", ({ path }) => {
  it("asks for nothing but itself and has nothing to complain of", async () => {
    const { page, requests, complaints } = await open(browser, path, {
      width: 1100,
      scheme: "light",
    });
    await page.waitForTimeout(100);
    expect(requests.filter((url) => !url.startsWith("data:"))).toEqual([`file://${path}`]);
    expect(complaints).toEqual([]);
    await page.close();
  });

  for (const width of [1100, 360]) {
    for (const scheme of ["light", "dark"] as const) {
      it(`is accessible by the rules of axe-core at ${width} px, ${scheme}, all unfolded`, async () => {
        const { page } = await open(browser, path, { width, scheme });
        expect(await accessibility(page)).toEqual([]);
        await page.close();
      });
    }
  }

  it("does not scroll sideways at 320 px", async () => {
    const { page } = await open(browser, path, { width: 320, scheme: "light" });
    expect(await page.evaluate("document.documentElement.scrollWidth")).toBe(320);
    await page.close();
  });

  it("brings along every font that it is set in", async () => {
    for (const width of [1100, 360]) {
      const { page } = await open(browser, path, { width, scheme: "light" });
      expect(await fallbackFonts(page)).toEqual([]);
      await page.close();
    }
  });

  it("turns dark and light by its own switch, without a script", async () => {
    const { page } = await open(browser, path, { width: 1100, scheme: "light" });
    const paper = () => page.evaluate("getComputedStyle(document.documentElement).backgroundColor");
    expect(await paper()).toBe("rgb(252, 252, 250)");
    await page.getByRole("radio", { name: "Dark" }).check();
    expect(await paper()).toBe("rgb(20, 24, 28)");
    await page.getByRole("radio", { name: "Light" }).check();
    expect(await paper()).toBe("rgb(252, 252, 250)");
    await page.close();
  });

  it("prints on two sheets at most, all folded, if it is a compact page", async () => {
    const { page } = await open(browser, path, { width: 1100, scheme: "light" });
    await page.evaluate(
      "document.querySelectorAll('details').forEach((one) => { one.open = false; })",
    );
    const bytes = await page.pdf({ preferCSSPageSize: true });
    const compact = await page.evaluate("document.body.classList.contains('compact')");
    expect(sheets(new TextDecoder("latin1").decode(bytes))).toBeLessThanOrEqual(compact ? 2 : 99);
    await page.close();
  });

  it("prints on A4 with every figure whole", async () => {
    // A4 less the margins is 170 mm by 259 mm: 642 by 978 CSS pixels.
    const { page } = await open(browser, path, { width: 642, scheme: "dark" });
    // The pale halo of letters in drawings is written as outlines; all other letters must stay letters.
    await page.evaluate(
      "document.querySelectorAll('svg.drawing [stroke]').forEach((one) => { if (one.closest('text') || one.querySelector('text')) one.removeAttribute('stroke'); })",
    );
    const bytes = await page.pdf({ preferCSSPageSize: true, tagged: true });
    const pdf = new TextDecoder("latin1").decode(bytes);
    expect(sheets(pdf)).toBeGreaterThan(0);
    expect(pdf).not.toContain("/Subtype /Type3");
    await page.emulateMedia({ media: "print" });
    const figures = await page.evaluate(
      `[...document.querySelectorAll("figure.figure")].map((one) => ({
      height: one.getBoundingClientRect().height,
      width: one.querySelector(".wide").getBoundingClientRect().width,
      breakInside: getComputedStyle(one).breakInside,
    }))`,
    ) as { height: number; width: number; breakInside: string }[];
    for (const figure of figures) {
      expect(figure.breakInside).toBe("avoid");
      expect(figure.height).toBeLessThan(978);
      expect(figure.width).toBeGreaterThan(300);
      expect(figure.width).toBeLessThanOrEqual(642);
    }
    expect(await page.evaluate("getComputedStyle(document.documentElement).backgroundColor"))
      .toBe("rgb(255, 255, 255)");
    await page.close();
  });
});
