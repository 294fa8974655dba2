/**
 * The page that says what changed since an earlier state of the site.
 *
 * @module
 */
import type { TableCell, TableRecord } from "../../base/records.ts";
import { escapeHtml } from "../../base/escape-html.ts";
import type { Changes } from "../since/changes.ts";
import { apartWords, causeGroups, sorted } from "../since/changes-text.ts";
import type { Publication } from "../publication.ts";
import { documentHtml } from "./document.ts";
import { pageMetadata } from "./page-metadata.ts";
import { proseHtml } from "./prose-html.ts";
import { tableElement } from "./table-part.ts";

/** Rows of the page; the JSON beside it holds all. */
const ROWS = 60;

const cell = (text: string): TableCell => ({ text, number: null, mark: null });

function table(name: string, labels: readonly string[], rows: readonly string[][]): TableRecord {
  return {
    name,
    caption: "",
    columns: labels.map((label, at) => ({ label, unit: "", align: at === 0 ? "left" : "right" })),
    rows: rows.map((row) => row.map(cell)),
  };
}

function figure(n: number, caption: string, record: TableRecord): string {
  return `<figure class="table long" id="table-${n}">
<figcaption id="table-${n}-caption"><b>Table&nbsp;${n}.</b> ${proseHtml(caption)}</figcaption>
<section class="scroll" tabindex="0" aria-labelledby="table-${n}-caption">
${tableElement(record, `table-${n}-caption`)}
</section>
</figure>`;
}

/** What the earlier state did not have, or this one has no more. */
function comeAndGone(changes: Changes): string {
  const { fresh, gone } = sorted(changes.numbers);
  const parts = [
    ...(fresh.length > 0 ? [`${fresh.length} results are new`] : []),
    ...(gone.length > 0 ? [`${gone.length} are gone`] : []),
  ];
  return parts.length === 0 ? "" : `<p>${parts.join(", ")}; changes.json names them.</p>`;
}

function verdictsPart(changes: Changes): string {
  const verdicts = sorted(changes.verdicts).both;
  if (verdicts.length === 0) return "<p>No verdict turned.</p>";
  const rows = verdicts.map((one) => [one.path, one.before ?? "not there", one.now ?? "not there"]);
  return figure(1, "Verdicts that turned.", table("verdicts", ["verdict", "before", "now"], rows));
}

function numbersPart(changes: Changes): string {
  const { unmoved } = changes;
  const numbers = sorted(changes.numbers).both;
  const verdicts = sorted(changes.verdicts).both;
  const still = unmoved === 1 ? "1 result is" : `${unmoved} results are`;
  if (numbers.length === 0) return `<p>No published result moved: ${still} what they were.</p>`;
  const rows = numbers.slice(0, ROWS)
    .map((one) => [one.path, one.before ?? "–", one.now ?? "–", apartWords(one)]);
  const shown = numbers.length > ROWS
    ? ` The ${ROWS} that moved furthest of ${numbers.length}; all stand in changes.json.`
    : "";
  return figure(
    verdicts.length === 0 ? 1 : 2,
    `Published results that moved, each ± its standard uncertainty, furthest first.${shown} ${still} what they were.`,
    table("numbers", ["result", "before", "now", "moved, in its own uncertainties"], rows),
  );
}

function causesPart({ causes }: Changes): string {
  const groups = causeGroups(causes).filter(([, of]) => of.length > 0);
  if (groups.length === 0) {
    return "<p>Data, code cells, library, packages and Deno are what they were.</p>";
  }
  const items = groups.map(([title, of]) =>
    `<dt>${title}</dt><dd>${of.map(escapeHtml).join("<br>")}</dd>`
  );
  return `<dl>\n${items.join("\n")}\n</dl>`;
}

/**
 * Builds `changes.html`.
 *
 * @param changes between the earlier state and this one
 * @param publication what the site says of itself
 * @returns HTML text
 */
export async function buildChanges(changes: Changes, publication: Publication): Promise<string> {
  const title = "What changed since last time";
  const description = `Results of this site beside those of ${changes.since}`;
  return await documentHtml({
    title,
    description,
    metadata: pageMetadata({
      page: "changes.html",
      title,
      description,
      preview: null,
      sessions: [],
      publication,
    }),
    bodyClass: "",
    script: null,
    main: `<h1>${title}</h1>
<p>Results of this site beside those of <code>${
      escapeHtml(changes.since)
    }</code>. A move far below one
standard uncertainty leaves what was said as it was.</p>
<h2 id="verdicts">Verdicts</h2>
${verdictsPart(changes)}
<h2 id="numbers">Numbers</h2>
${numbersPart(changes)}
${comeAndGone(changes)}
<h2 id="causes">What differs underneath</h2>
<p>Nothing was run again to find a cause: these are the entries that differ.</p>
<section class="box data">
${causesPart(changes)}
</section>`,
    after:
      `<footer><section class="stamp" id="stamp"><p>The same as data: <a href="changes.json">changes.json</a></p></section></footer>`,
  });
}
