/**
 * The front page of the site: what it is, and a card for each page with its question and its bottom line.
 *
 * @module
 */
import { headlineMark } from "./page-mark.ts";
import { documentHtml } from "./document.ts";
import { escapeHtml } from "../../base/escape-html.ts";
import { type Publication, UNNAMED } from "../publication.ts";
import { pageMetadata } from "./page-metadata.ts";
import { proseHtml } from "./prose-html.ts";
import type { IndexCard } from "./page-types.ts";

const WHAT =
  "Evidence from the water for people who build their own hydrofoil wings. Each page asks one question, answers it " +
  "from measurements, says how sure the answer is, and can be run again by anyone.";

function cardItem(card: IndexCard): string {
  const { answer } = card;
  const lines = [
    `<h2><a href="${card.slug}.html">${proseHtml(card.question)}</a></h2>`,
    ...(answer === null ? [`<p>${proseHtml(card.summary)}</p>`] : [
      `<p><strong>${headlineMark(answer)}${proseHtml(answer.headline)}</strong></p>`,
      ...(answer.detail === "" ? [] : [`<p>${proseHtml(answer.detail)}</p>`]),
    ]),
    `<p class="tag">${escapeHtml(answer?.tag || card.title)}</p>`,
  ];
  const verdict = answer === null ? "" : ` data-verdict="${answer.verdict}"`;
  return `<li${verdict}>\n${lines.join("\n")}\n</li>`;
}

/**
 * Builds `index.html`.
 *
 * @param cards of all pages, in any order
 * @param publication what the site says of itself; nothing when left out
 * @param changes whether there is a page that says what changed since last time
 * @returns HTML text with the cards in order of the pages' file names
 */
export async function buildIndex(
  cards: readonly IndexCard[],
  publication: Publication = UNNAMED,
  changes = false,
): Promise<string> {
  const sorted = [...cards].sort((a, b) => (a.slug < b.slug ? -1 : a.slug > b.slug ? 1 : 0));
  return await documentHtml({
    title: "Which of my wings is better?",
    description: WHAT,
    metadata: pageMetadata({
      page: "index.html",
      title: publication.title,
      description: publication.description,
      preview: sorted.find((card) => card.preview !== null)?.preview ?? null,
      sessions: [],
      publication,
    }),
    bodyClass: "index",
    script: null,
    main: `<h1>Which of my wings is better?</h1>
<p class="lead">${escapeHtml(WHAT)}</p>
<ul class="cards">
${sorted.map(cardItem).join("\n")}
</ul>`,
    after: `<footer><section class="stamp" id="stamp"><p>How this site was made, as data: ` +
      `<a href="site.json">site.json</a></p>` +
      (changes ? '<p>What changed since last time: <a href="changes.html">changes</a></p>' : "") +
      `</section></footer>`,
  });
}
