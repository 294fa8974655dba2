/**
 * The frame of every page of the site: head, styles, skip link, header with the light and dark switch.
 *
 * @module
 */
import { createHash } from "node:crypto";
import { COLOUR_CSS } from "./css-colours.ts";
import { LIVE_CSS } from "./css-live.ts";
import { MEDIA_CSS } from "./css-media.ts";
import { PARTS_CSS } from "./css-parts.ts";
import { TEXT_CSS } from "./css-text.ts";
import { escapeHtml } from "../../base/escape-html.ts";
import { fontCss } from "./fonts.ts";

/** What goes into the frame. */
export interface DocumentParts {
  /** Text of the title; the site's name follows it. */
  readonly title: string;
  /** Text for lists of pages elsewhere. */
  readonly description: string;
  /** Class of the body; empty for an ordinary page. */
  readonly bodyClass: string;
  /** HTML lines for the head: what the page says of itself to programs. */
  readonly metadata: string;
  /** HTML of the article. */
  readonly main: string;
  /** HTML after the article. */
  readonly after: string;
  /** Script of a page whose figures can be moved; `null` on all others. */
  readonly script: string | null;
}

/** Nothing runs but what is named, nothing is fetched; styles and fonts stand in the page. */
const POLICY =
  "default-src 'none'; style-src 'unsafe-inline'; font-src data:; img-src data:; base-uri 'none'; form-action 'none'";

const THEMES = [["auto", "Auto"], ["light", "Light"], ["dark", "Dark"]] as const;

const THEME_SWITCH = `<fieldset class="theme"><legend>Colours</legend>${
  THEMES.map(([id, label]) =>
    `<label><input type="radio" name="theme" id="theme-${id}" value="${id}"${
      id === "auto" ? " checked" : ""
    }>${label}</label>`
  ).join("")
}</fieldset>`;

/** Style sheets, in the order in which they win. */
const CSS = [COLOUR_CSS, TEXT_CSS, PARTS_CSS, MEDIA_CSS];

/** The policy of a page: a script runs only if its bytes are those that were published. */
function policyOf(script: string | null): string {
  if (script === null) return POLICY;
  const hash = createHash("sha256").update(script).digest("base64");
  return `${POLICY}; script-src 'sha256-${hash}'`;
}

/**
 * A whole page that asks no other host for anything.
 *
 * @param parts what goes into the frame
 * @returns HTML text
 */
export async function documentHtml(parts: DocumentParts): Promise<string> {
  const { script } = parts;
  const body = `<body${parts.bodyClass === "" ? "" : ` class="${parts.bodyClass}"`}>
<a class="skip" href="#main">Skip to the text</a>
<header class="site"><a class="home" href="index.html">Lakeproof</a>${THEME_SWITCH}</header>
<main id="main" tabindex="-1"><article>
${parts.main.trim()}
</article></main>
${parts.after.trim()}${script === null ? "" : `\n<script>${script}</script>`}
</body>`;
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policyOf(script)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<meta name="description" content="${escapeHtml(parts.description)}">
<title>${escapeHtml(parts.title)} – Lakeproof</title>
${parts.metadata}
<link rel="icon" href="data:,">
<style>
${(script === null ? CSS : [...CSS, LIVE_CSS]).join("").trim()}
${await fontCss(body)}
</style>
</head>
${body}
</html>
`;
}
