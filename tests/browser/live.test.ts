import { HtmlValidate } from "html-validate";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { buildPage } from "lakeproof/publish/page/build-page.ts";
import { liveStates } from "lakeproof/show/live-state.ts";
import { liveControls } from "lakeproof/show/live-task.ts";
import { LIVE_TASK, liveNotebook } from "../pages/live-notebook.ts";
import { SAMPLE_STAMP } from "../pages/sample-notebook.ts";
import { accessibility, CHROMIUM, fallbackFonts, launch, open } from "./chromium.ts";

const folder = Deno.makeTempDirSync({ prefix: "lakeproof-live-" });
const path = `${folder}/01-live.html`;
const controls = liveControls(LIVE_TASK);

let browser: Browser;

beforeAll(async () => {
  const page = await buildPage({
    slug: "01-live",
    notebook: liveNotebook(),
    stamp: SAMPLE_STAMP,
    pages: [],
  });
  await Deno.writeTextFile(path, page.html);
  if (CHROMIUM !== null) browser = await launch();
});

afterAll(async () => {
  await browser?.close();
  await Deno.remove(folder, { recursive: true });
});

/** What the page drew last: the whole states in full digits, told by an event on the block. */
interface Drawn {
  readonly values: unknown;
  readonly states: unknown;
  readonly milliseconds: number;
}

const listen = (page: Page) =>
  page.evaluate(
    `window.drawn = []; document.querySelector("section.live")
      .addEventListener("lakeproof-drawn", (event) => window.drawn.push(event.detail)); 0`,
  );

const lastDrawn = (page: Page): Promise<Drawn> =>
  page.evaluate("window.drawn.at(-1)") as Promise<Drawn>;

/** Numbers at equal places of two structures, that differ by more than a share. */
function apart(one: unknown, other: unknown, share: number, at = ""): string[] {
  if (typeof one === "number" && typeof other === "number") {
    return Math.abs(one - other) <= share * Math.abs(other) ? [] : [`${at}: ${one} ${other}`];
  }
  if (typeof one === "object" && one !== null && typeof other === "object" && other !== null) {
    const keys = new Set([...Object.keys(one), ...Object.keys(other)]);
    return [...keys].flatMap((key) =>
      apart(Reflect.get(one, key), Reflect.get(other, key), share, `${at}/${key}`)
    );
  }
  return one === other ? [] : [`${at}: ${one} ${other}`];
}

const press = async (page: Page, name: string, key: string, times: number) => {
  await page.getByRole("slider", { name }).focus();
  for (let n = 0; n < times; n++) await page.keyboard.press(key);
  await page.waitForTimeout(60);
};

const opened = (width: number, scheme: "light" | "dark") => open(browser, path, { width, scheme });

describe.skipIf(CHROMIUM === null)("a live figure in a browser", () => {
  it("draws, after keys on every control, what the library computes for the same input", async () => {
    const { page, requests, complaints } = await opened(1100, "light");
    await listen(page);
    const values: Record<string, number> = {};
    const before = await page.locator(".wide svg path").evaluateAll((all) =>
      all.map((one) => one.getAttribute("d"))
    );
    for (const [at, control] of controls.entries()) {
      const steps = at % 2 === 0 ? 7 : 4;
      await press(page, control.label, "ArrowRight", steps);
      values[control.name] = Number((control.start + steps * control.step).toFixed(6));
      const drawn = await lastDrawn(page);
      expect(drawn.values).toEqual(values);
      // 1e-9: the browser's engine may differ from ours in the last digits of its elementary functions.
      expect(apart(drawn.states, liveStates(LIVE_TASK, values), 1e-9)).toEqual([]);
    }
    const after = await page.locator(".wide svg path").evaluateAll((all) =>
      all.map((one) => one.getAttribute("d"))
    );
    expect(after).not.toEqual(before);
    expect(requests.filter((url) => !url.startsWith("data:"))).toEqual([`file://${path}`]);
    expect(complaints).toEqual([]);
    await page.close();
  });

  it("goes back to the published setting with one button, and says where it stands", async () => {
    const { page } = await opened(1100, "light");
    const summary = page.locator("div.summary");
    await press(page, "Load", "End", 1);
    await page.waitForTimeout(300);
    expect(await summary.textContent()).toContain("instead of 88");
    expect(await page.getByRole("slider", { name: "Load" }).getAttribute("aria-valuetext"))
      .toMatch(/^14\d kilograms$/);
    await page.getByRole("button", { name: "Back to the published setting" }).click();
    await page.waitForTimeout(300);
    expect(await summary.textContent()).toMatch(/^As published\./);
    await page.close();
  });

  for (const width of [1100, 360]) {
    for (const scheme of ["light", "dark"] as const) {
      it(`is accessible by the rules of axe-core at ${width} px, ${scheme}, moved`, async () => {
        const { page } = await opened(width, scheme);
        await press(page, "Load", "ArrowRight", 5);
        await page.waitForTimeout(300);
        expect(await accessibility(page)).toEqual([]);
        expect(await fallbackFonts(page)).toEqual([]);
        await page.close();
      });
    }
  }

  it("is valid HTML with all that the script put in", async () => {
    const { page } = await opened(1100, "light");
    await press(page, "Load", "ArrowRight", 5);
    await page.waitForTimeout(300);
    const html = await page.locator("section.live").evaluate((one) => one.outerHTML);
    const validator = new HtmlValidate({
      extends: ["html-validate:recommended", "html-validate:a11y"],
      // The browser writes attributes in its own way.
      rules: { "attribute-boolean-style": "off", "attribute-empty-style": "off" },
    });
    const { results } = await validator.validateString(html);
    expect(results.flatMap((one) => one.messages.map((found) => found.message))).toEqual([]);
    await page.close();
  });

  it("does not scroll sideways at 320 px, and no letter of a control is cut", async () => {
    const { page } = await opened(320, "light");
    await press(page, "Area of birch", "Home", 1);
    await page.waitForTimeout(300);
    expect(await page.evaluate("document.documentElement.scrollWidth")).toBe(320);
    const cut = await page.evaluate(
      `[...document.querySelectorAll(".controls *, .summary *")]
        .filter((one) => one.scrollWidth > one.clientWidth + 1 && one.clientWidth > 0).map((one) => one.outerHTML)`,
    );
    expect(cut).toEqual([]);
    await page.close();
  });

  it("shows the still figure, and nothing to move, where scripts are off", async () => {
    const context = await browser.newContext({ javaScriptEnabled: false });
    const page = await context.newPage();
    await page.goto(`file://${path}`);
    expect(await page.locator("section.live .wide svg").isVisible()).toBe(true);
    expect(await page.locator("section.live input").count()).toBe(0);
    expect(await page.getByText("As published: load").isVisible()).toBe(true);
    await context.close();
  });

  it("prints the curves as they stand, without the controls", async () => {
    const { page } = await opened(642, "dark");
    await press(page, "Load", "ArrowRight", 5);
    await page.waitForTimeout(300);
    await page.emulateMedia({ media: "print" });
    expect(await page.locator(".controls").isVisible()).toBe(false);
    expect(await page.locator("div.summary").isVisible()).toBe(true);
    const height = await page.evaluate(
      `document.querySelector("figure.figure").getBoundingClientRect().height`,
    );
    // A4 less the margins is 978 CSS pixels high.
    expect(height).toBeLessThan(978);
    await page.close();
  });

  it("follows the hand: the time of a redraw is told here", async () => {
    const { page } = await opened(1100, "light");
    await listen(page);
    for (let turn = 0; turn < 5; turn++) {
      await press(page, "Load", "ArrowRight", 4);
      await press(page, "Running depth", "ArrowLeft", 4);
    }
    const times = (await page.evaluate("window.drawn.map((one) => one.milliseconds)") as number[])
      .sort((a, b) => a - b);
    expect(times.length).toBeGreaterThan(10);
    const at = (share: number) => times[Math.floor(share * (times.length - 1))]!.toFixed(1);
    console.log(
      `redraw of two designs in the browser: median ${at(0.5)} ms, ${at(0)} to ${at(1)} ms ` +
        `over ${times.length} redraws`,
    );
    await page.close();
  });
});
