/**
 * The Markdown parser of pages: HTML stays text, formulas and notes work, headings can be linked to, numbers bound to an
 * answer are marked, and blockquotes that are a question or a caution become what they mean.
 *
 * @module
 */
import MarkdownIt, { type Token } from "markdown-it";
import anchor from "markdown-it-anchor";
import footnote from "markdown-it-footnote";
import { tex } from "@mdit/plugin-tex";
import { escapeHtml } from "../../base/escape-html.ts";
import { formula } from "./formula.ts";
import { boundWords, keepTogether, type MarkdownParser, type NoteEnv } from "./markdown-words.ts";
import { boxes } from "./markdown-boxes.ts";
import { plainName } from "./part-names.ts";

/** Ids that parts of a page have of themselves. */
const FIXED =
  /^(main|answer|findings|notes|stamp|theme|(figure|table|equation|code|caution|note)-\d)/;

/** Headings of parts that every page names alike, so that a link to them always works. */
const PARTS: readonly (readonly [RegExp, string])[] = [
  [/^(the )?(data|session)\b/i, "data"],
  [/^(the )?method\b|^how (we|it|this|the)\b/i, "method"],
  [/^(the )?results?\b|^what (comes|came) out\b/i, "result"],
  [/^(the )?limits\b|^how much to believe\b|^what this (does not|can't|cannot)\b/i, "limits"],
  [/^(re-?run|run it again|how to re)/i, "rerun"],
];

/**
 * Id of a heading, before it is made unique.
 *
 * @param text of the heading
 * @returns small letters, digits and hyphens
 */
export function headingId(text: string): string {
  const part = PARTS.find(([pattern]) => pattern.test(text.trim()));
  if (part !== undefined) return part[1];
  const name = plainName(text, "part");
  return FIXED.test(name) ? `on-${name}` : name;
}

/** What the rules of one page share. */
export interface PageEnv extends NoteEnv {
  equations: number;
  cautions: number;
  /** Whether the page's question has been met. */
  question: boolean;
  [key: string | symbol]: unknown;
}

/**
 * A parser whose rules beyond blocks run once over all cells of a page.
 *
 * @returns a new parser
 */
export function markdownParser(): MarkdownParser {
  const parser = new MarkdownIt({ html: false, linkify: false, typographer: false });
  parser.use(footnote);
  parser.use(tex, {
    render: (content: string, displayed: boolean, env: unknown) => {
      const markup = formula(content, displayed);
      if (!displayed) return markup;
      const n = ++(env as PageEnv).equations;
      return `<div class="equation" id="equation-${n}">${markup}<span class="number">(${n})</span>` +
        `</div>\n`;
    },
  });
  parser.use(boundWords);
  parser.use(keepTogether);
  parser.use(boxes);
  parser.use(anchor, {
    level: [2, 3, 4],
    slugify: headingId,
    tabIndex: false,
    permalink: anchor.permalink.headerLink({ class: "anchor" }),
  });
  const rules = parser.renderer.rules;
  rules["footnote_block_open"] = () =>
    `<section class="notes">\n<h2 id="notes"><a class="anchor" href="#notes">Notes</a></h2>\n<ol>\n`;
  rules["footnote_block_close"] = () => "</ol>\n</section>\n";
  rules["footnote_ref"] = (tokens, index) => {
    const { id, subId } = noteOf(tokens[index]!);
    const own = subId > 0 ? `${id}-${subId + 1}` : String(id);
    return `<sup class="note"><a href="#note-${id}" id="note-${own}-text" ` +
      `aria-label="Note ${id}">${id}</a></sup>`;
  };
  rules["footnote_open"] = (tokens, index) => `<li id="note-${noteOf(tokens[index]!).id}">`;
  rules["footnote_anchor"] = (tokens, index) => {
    const { id, subId } = noteOf(tokens[index]!);
    const own = subId > 0 ? `${id}-${subId + 1}` : String(id);
    return ` <a class="back" href="#note-${own}-text" aria-label="Back to the text of note ${own}">` +
      `↑</a>`;
  };
  rules["image"] = (tokens, index) => {
    const token = tokens[index]!;
    const source = String(token.attrGet("src") ?? "");
    if (/^data:image\/(png|jpeg|gif|svg\+xml);base64,[A-Za-z0-9+/=]+$/.test(source)) {
      return `<img src="${source}" alt="${escapeHtml(token.content)}">`;
    }
    // A page asks no other host for anything: a picture from elsewhere is a link to it.
    return `<a href="${escapeHtml(source)}">${escapeHtml(token.content || source)}</a>`;
  };
  rules["table_open"] = () => `<div class="scroll">\n<table>\n`;
  rules["table_close"] = () => "</table>\n</div>\n";
  rules["fence"] = rules["code_block"] = (tokens, index) =>
    `<pre class="block"><code>${escapeHtml(tokens[index]!.content)}</code></pre>\n`;
  return parser;
}

function noteOf(token: Token): { id: number; subId: number } {
  const meta = token.meta as { id: number; subId?: number };
  return { id: meta.id + 1, subId: meta.subId ?? 0 };
}
