/** A headless Chromium of the machine's own, and what the tests ask of a page in it. */
import axe from "axe-core";
import { type Browser, chromium, type Page } from "playwright-core";

const PLACES = [
  Deno.env.get("CHROMIUM"),
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome",
];

function isFile(path: string): boolean {
  try {
    return Deno.statSync(path).isFile;
  } catch {
    return false;
  }
}

/** Path of the browser; `null` when the machine has none. */
export const CHROMIUM = PLACES.find((path) => path !== undefined && isFile(path)) ?? null;

/** Whether a missing browser or site is a failure and not a reason to skip: in continuous integration. */
export const REQUIRED = Deno.env.get("LAKEPROOF_BROWSER") === "required";

export function launch(): Promise<Browser> {
  return chromium.launch({
    executablePath: CHROMIUM!,
    args: ["--no-sandbox", "--disable-dev-shm-usage", "--disable-gpu", "--hide-scrollbars"],
  });
}

/** A page, and what it asked for and complained of since it was opened. */
export interface Opened {
  readonly page: Page;
  readonly requests: readonly string[];
  readonly complaints: readonly string[];
}

/** How a reader looks at a page. */
export interface View {
  readonly width: number;
  readonly scheme: "light" | "dark";
}

/** Opens a file with every folded part unfolded and all fonts there. */
export async function open(browser: Browser, path: string, view: View): Promise<Opened> {
  const page = await browser.newPage({
    viewport: { width: view.width, height: 900 },
    colorScheme: view.scheme,
    reducedMotion: "reduce",
  });
  const requests: string[] = [];
  const complaints: string[] = [];
  page.on("request", (request) => requests.push(request.url()));
  page.on("console", (message) => {
    if (["error", "warning"].includes(message.type())) complaints.push(message.text());
  });
  page.on("pageerror", (error) => complaints.push(String(error)));
  await page.goto(`file://${path}`, { waitUntil: "load" });
  await page.evaluate(
    "document.querySelectorAll('details').forEach((one) => { one.open = true; }); document.fonts.ready.then(() => 0)",
  );
  return { page, requests, complaints };
}

/** What axe-core finds: levels A and AA, contrast by AAA, and its best practices. */
export async function accessibility(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  const found = await page.evaluate(
    `axe.run(document, {
      runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
      rules: { "color-contrast-enhanced": { enabled: true } },
    }).then((results) => results.violations.map((one) =>
      one.impact + " " + one.id + ": " + one.nodes.slice(0, 3).map((node) => node.target.join(" ")).join(" | ")))`,
  );
  return found as string[];
}

/** Texts set in a font that the page did not bring along, as "font: text". */
export async function fallbackFonts(page: Page): Promise<string[]> {
  const session = await page.context().newCDPSession(page);
  await session.send("DOM.enable");
  await session.send("CSS.enable");
  const { nodes } = await session.send("DOM.getFlattenedDocument", { depth: -1, pierce: false });
  const slips: string[] = [];
  for (const node of nodes) {
    if (node.nodeType !== 3 || node.nodeValue.trim() === "") continue;
    const { fonts } = await session.send("CSS.getPlatformFontsForNode", { nodeId: node.nodeId });
    for (const font of fonts) {
      if (!font.isCustomFont) slips.push(`${font.familyName}: ${node.nodeValue.trim()}`);
    }
  }
  await session.detach();
  return slips;
}
