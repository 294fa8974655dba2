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
});
