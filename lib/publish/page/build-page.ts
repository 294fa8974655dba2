/**
 * One page of the site from one notebook that has been run.
 *
 * @module
 */
import { article } from "./article.ts";
import { documentHtml } from "./document.ts";
import { escapeHtml } from "../../base/escape-html.ts";
import { figurePng } from "./figure-png.ts";
import { withFontFiles } from "./fonts.ts";
import type { IndexCard, PageBuild, PageInput } from "./page-types.ts";
import { liveScript } from "./live-script.ts";
import { pageMetadata } from "./page-metadata.ts";
import { UNNAMED } from "../publication.ts";
import { sessionsOf } from "../side-files.ts";
import { PageState } from "./page-state.ts";
import type { Notebook } from "../notebook.ts";
import { stampPart } from "./stamp-part.ts";

/** Links to the pages before and after this one. */
function neighbours(input: PageInput): string {
  const here = input.pages.findIndex((page) => page.slug === input.slug);
  const link = (at: number, side: "previous" | "next", word: string) => {
    const page = here < 0 ? undefined : input.pages[at];
    return page === undefined
      ? ""
      : `<a class="${side}" href="${page.slug}.html">${word}: ${escapeHtml(page.title)}</a>`;
  };
  const links = link(here - 1, "previous", "Before") + link(here + 1, "next", "Next");
  return links === "" ? "" : `<nav class="pages" aria-label="Pages">${links}</nav>`;
}

/** Whether the notebook asks for small print on few sheets: `"lakeproof": { "print": "compact" }` in its metadata. */
function isCompact(notebook: Notebook): boolean {
  const own = notebook.metadata["lakeproof"];
  return typeof own === "object" && own !== null && "print" in own && own["print"] === "compact";
}

/** The first sentences of a paragraph, as many as a card holds. */
function opening(paragraph: string, letters = 170): string {
  const sentences = paragraph.replace(/^In short[.:]\s*/, "").match(
    /[^.!?]+[.!?]+(\s|$)|[^.!?]+$/g,
  );
  let text = sentences?.[0] ?? "";
  for (const sentence of sentences?.slice(1) ?? []) {
    if (text.length + sentence.length > letters) break;
    text += sentence;
  }
  return text.trim();
}

/**
 * Builds a page: one HTML text that needs nothing else, the files beside it, and its card for the index.
 *
 * Equal input gives equal bytes. Texts from data stay texts, whatever they hold.
 *
 * @param input the notebook after its run, its stamp, and the pages of the site
 * @returns the page
 * @throws Error naming the cell that can't be shown
 */
export async function buildPage(input: PageInput): Promise<PageBuild> {
  const state = new PageState(input.slug);
  const body = article(input.notebook, state);
  const title = body.title === "" ? input.slug : body.title;
  const drawing = state.drawings[0];
  const preview = drawing === undefined ? null : { path: drawing.path, alt: drawing.alt };
  const html = await documentHtml({
    title,
    description: body.question === "" ? body.summary : body.question,
    metadata: pageMetadata({
      page: `${input.slug}.html`,
      title,
      description: body.question === "" ? body.summary : body.question,
      preview,
      sessions: sessionsOf(input.stamp.data),
      publication: input.publication ?? UNNAMED,
    }),
    bodyClass: isCompact(input.notebook) ? "compact" : "",
    main: body.title === "" ? `<h1>${escapeHtml(title)}</h1>\n${body.html}` : body.html,
    script: state.live ? await liveScript() : null,
    after: `${neighbours(input)}\n${stampPart(input.stamp)}`,
  });
  if (state.drawings.length > 0) {
    await withFontFiles((fonts) => {
      for (const { path, svg } of state.drawings) {
        state.files.push({ path, bytes: figurePng(svg, fonts) });
      }
    });
  }
  const answer: IndexCard["answer"] = state.answer === null ? null : {
    verdict: state.answer.verdict,
    headline: state.answer.headline,
    detail: state.answer.details[0] ?? "",
    tag: state.answer.tag,
    ahead: state.answer.ahead,
  };
  const card: IndexCard = {
    slug: input.slug,
    title,
    question: body.question === "" ? title : body.question,
    summary: opening(body.summary),
    preview,
    answer,
  };
  return { html, files: state.files, card };
}
