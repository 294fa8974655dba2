/**
 * A figure of a page: both drawings, of which the width of the column shows one, its numbers folded below, and its files.
 *
 * @module
 */
import type { FigureRecord, TableRecord } from "../../base/records.ts";
import { proseHtml } from "./prose-html.ts";
import type { PageState } from "./page-state.ts";
import { safeSvg, withOwnIds } from "./safe-svg.ts";
import { isLong, tableDownloads, tableElement } from "./table-part.ts";

function drawing(svg: string, prefix: string): string {
  return withOwnIds(svg, prefix)
    .replace(/^<svg([^>]*?)\sclass="[^"]*"/, "<svg$1")
    .replace("<svg", '<svg class="drawing"')
    .replace(' xmlns="http://www.w3.org/2000/svg"', "");
}

/** Rows that the page itself shows of a figure's numbers; the files hold all. */
const ROWS = 40;

/**
 * The numbers of a figure as the page shows them: all of a short table, every so many rows of a long one.
 *
 * @param table behind the drawing
 * @returns the rows to show, first and last among them, and a sentence that says which they are
 */
export function thinned(
  table: TableRecord,
): { readonly shown: TableRecord; readonly note: string } {
  const count = table.rows.length;
  if (count <= ROWS) return { shown: table, note: "" };
  const step = Math.ceil((count - 1) / (ROWS - 2));
  const rows = table.rows.filter((_, at) => at % step === 0 || at === count - 1);
  const note = `Here stands about one in ${step} of the ${count} rows; the files hold all.`;
  return { shown: { ...table, rows }, note };
}

/**
 * A numbered figure.
 *
 * @param record what the cell showed
 * @param state of the page: gets the SVG file and the wish for a PNG
 * @returns HTML of a figure element and, where there are numbers, a folded table
 * @throws Error when a drawing is not one SVG element
 */
export function figurePart(record: FigureRecord, state: PageState): string {
  const n = state.next("figure");
  const id = `figure-${n}`;
  const wide = safeSvg(record.wide);
  const narrow = safeSvg(record.narrow);
  const path = state.path("figures", record.name);
  state.addText(`${path}.svg`, `${wide}\n`);
  state.drawings.push({ path: `${path}.png`, svg: wide, alt: record.description });

  const figure = [
    `<figure class="${record.breakout ? "figure breakout" : "figure"}" id="${id}" ` +
    `aria-labelledby="${id}-label">`,
    `<div class="wide">${drawing(wide, `${id}-wide`)}</div>`,
    `<div class="narrow" hidden>${drawing(narrow, `${id}-narrow`)}</div>`,
    `<figcaption><b id="${id}-label">Figure&nbsp;${n}.</b> ${proseHtml(record.caption)} ` +
    `<span class="downloads"><a href="${path}.svg" download>SVG</a>, ` +
    `<a href="${path}.png" download>PNG</a></span></figcaption>`,
    "</figure>",
  ];
  if (record.table === null) return figure.join("\n");
  const { shown, note } = thinned(record.table);
  return [
    ...figure,
    `<details class="numbers${
      isLong(record.table) ? " long" : ""
    }" id="${id}-numbers"><summary>The numbers of Figure&nbsp;${n}</summary>`,
    `<p id="${id}-numbers-caption">${proseHtml(record.table.caption)} ` +
    `${note === "" ? "" : `${note} `}${tableDownloads(record.table, state)}</p>`,
    `<section class="scroll" tabindex="0" aria-labelledby="${id}-numbers-caption">`,
    tableElement(shown, `${id}-numbers-caption`),
    "</section>",
    "</details>",
  ].join("\n");
}
