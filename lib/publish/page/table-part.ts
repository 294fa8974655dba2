/**
 * A table of a page, rebuilt from the record that a cell showed, with its files.
 *
 * @module
 */
import type { TableCell, TableRecord } from "../../base/records.ts";
import { pageMark } from "./page-mark.ts";
import { escapeHtml } from "../../base/escape-html.ts";
import { proseHtml } from "./prose-html.ts";
import type { PageState } from "./page-state.ts";
import { tableCsv } from "./table-csv.ts";

/** Letters of a cell that is never broken. */
const SHORT = 12;

/** Letters from which on a cell holds words and may not be squeezed into one a line. */
const WORDS = 24;

/** Short texts, such as a name with a date, stay on one line. */
function onOneLine(text: string): string {
  return text.length <= SHORT ? text.replaceAll(" ", "\u00a0") : text;
}

/**
 * The `<table>` element alone; rows whose first cell is their head.
 *
 * @param table to show
 * @param labelledBy id of the element that names it
 * @returns HTML
 */
export function tableElement(table: TableRecord, labelledBy: string): string {
  const side = (column: number) =>
    table.columns[column]?.align === "right" ? ' class="number"' : "";
  const head = table.columns.map((column, n) => {
    const unit = column.unit === ""
      ? ""
      : ` <span class="unit">(${escapeHtml(column.unit)})</span>`;
    return `<th scope="col"${side(n)}>${escapeHtml(column.label)}${unit}</th>`;
  });
  const content = (cell: TableCell) =>
    `${cell.mark === null ? "" : `${pageMark(cell.mark)} `}${escapeHtml(onOneLine(cell.text))}`;
  const look = (cell: TableCell, n: number) =>
    cell.text.length > WORDS ? ' class="words"' : side(n);
  const rows = table.rows.map((row) =>
    `<tr>${
      row.map((cell, n) =>
        n === 0
          ? `<th scope="row"${look(cell, n)}>${content(cell)}</th>`
          : `<td${look(cell, n)}>${content(cell)}</td>`
      ).join("")
    }</tr>`
  );
  return `<table aria-labelledby="${labelledBy}">\n<thead><tr>${head.join("")}</tr></thead>\n` +
    `<tbody>\n${rows.join("\n")}\n</tbody>\n</table>`;
}

/** A table of more rows is folded, with its caption left to say what it shows. */
const ROWS = 30;

/** Letters that a row may hold before the table reaches past the column of text, where there is room. */
const LETTERS = 64;

/**
 * Whether a table wants more room than the column of text.
 *
 * @param table any table
 * @returns true when its columns, each as wide as its longest cell up to 30 letters, would not fit
 */
export function isLong(table: TableRecord): boolean {
  const widths = table.columns.map((column, n) => {
    const words = column.label.split(" ").map((word) => word.length);
    const cells = table.rows.map((row) => Math.min(30, row[n]?.text.length ?? 0));
    return 3 + Math.max(...words, ...cells);
  });
  return widths.reduce((sum, width) => sum + width, 0) > LETTERS;
}

/**
 * Writes both forms of the table and gives the sentence that links to them.
 *
 * @param table to write
 * @param state of the page; takes the files
 * @returns HTML
 */
export function tableDownloads(table: TableRecord, state: PageState): string {
  const path = state.path("tables", table.name);
  state.addText(`${path}.csv`, tableCsv(table, "point"));
  state.addText(`${path}-decimal-comma.csv`, tableCsv(table, "comma"));
  return `<span class="downloads"><a href="${path}.csv" download>CSV</a>, ` +
    `<a href="${path}-decimal-comma.csv" download>CSV with decimal commas</a></span>`;
}

/**
 * A numbered table with its caption and downloads; scrolls sideways on its own when it is wider than the screen.
 *
 * @param table what the cell showed
 * @param state of the page
 * @returns HTML of one figure element
 */
export function tablePart(table: TableRecord, state: PageState): string {
  const n = state.next("table");
  const id = `table-${n}`;
  const downloads = tableDownloads(table, state);
  const rows = [
    `<section class="scroll" tabindex="0" aria-labelledby="${id}-caption">`,
    tableElement(table, `${id}-caption`),
    "</section>",
  ];
  return [
    `<figure class="table${isLong(table) ? " long" : ""}" id="${id}">`,
    `<figcaption id="${id}-caption"><b>Table&nbsp;${n}.</b> ${proseHtml(table.caption)} ` +
    `${downloads}</figcaption>`,
    ...(table.rows.length <= ROWS ? rows : [
      `<details class="rows"><summary>All ${table.rows.length} rows</summary>`,
      ...rows,
      "</details>",
    ]),
    "</figure>",
  ].join("\n");
}
