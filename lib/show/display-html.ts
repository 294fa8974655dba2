/**
 * HTML of the displays in a notebook: readable on any ground, so no background and no text colour are set.
 *
 * Some notebook programs strip drawings and most styles: sentence and table must say it all.
 *
 * @module
 */
import type { Finding } from "../base/finding.ts";
import type { AnswerRecord, DesignMark, TableRecord } from "../base/records.ts";
import { shortened } from "./alike-findings.ts";
import { escapeHtml } from "../base/escape-html.ts";
import { printable } from "../base/printable.ts";
import { answerStrip } from "./answer-strip.ts";
import { designColourOnAnyGround } from "./design-style.ts";
import { findingWords, inOrder } from "./findings-text.ts";
import { markSvg } from "./mark-svg.ts";

const text = (words: string) => escapeHtml(printable(words));

function markOf(mark: DesignMark | null): string {
  if (mark === null) return "";
  return `${markSvg(mark.place, designColourOnAnyGround(mark.place))} `;
}

/**
 * The strip as a picture on its own white ground. Drawn inline, notebook programs that don't trust a file yet take the
 * drawing out and leave its numbers standing as one meaningless word.
 */
function stripImage(
  strip: NonNullable<AnswerRecord["strip"]>,
  sides: AnswerRecord["sides"],
): string {
  const drawing = answerStrip(strip, sides)
    .replace(/^<svg width="(\d+)" height="(\d+)" viewBox="[^"]*"/, (_, width, height) => {
      const [w, h] = [Number(width) + 16, Number(height) + 8];
      return `<svg xmlns="http://www.w3.org/2000/svg" width="${w}" height="${h}" viewBox="-8 -4 ${w} ${h}" ` +
        `color="#1a1e23" font-family="sans-serif"`;
    })
    .replace(">", `><rect x="-8" y="-4" width="100%" height="100%" fill="#fff"/>`);
  return `<img alt="" src="data:image/svg+xml,${
    encodeURIComponent(drawing.toWellFormed()).replaceAll("'", "%27")
  }">`;
}

/**
 * The box of the short answer: solid where a claim is made, dashed where it can't be.
 *
 * @param record the short answer
 * @returns HTML of one block
 */
export function answerHtml(record: AnswerRecord): string {
  const border = record.verdict === "cannot-tell-yet" || record.verdict === "refused"
    ? "dashed"
    : "solid";
  const strip = record.strip === null ? "" : `<p>${stripImage(record.strip, record.sides)}</p>`;
  return [
    `<div class="lakeproof-answer" style="max-width: 42em; padding: 0.5em 1em; ` +
    `border: 1px ${border}; border-left-width: 6px">`,
    `<p style="font-size: 1.3em; font-weight: 600">${markOf(record.ahead)}${
      text(record.headline)
    }</p>`,
    ...record.details.map((detail) => `<p>${text(detail)}</p>`),
    strip,
    `<p><small>${text(record.rests)}</small></p>`,
    "</div>",
  ].filter((part) => part !== "").join("\n");
}

/**
 * A table with its caption.
 *
 * @param table any table
 * @returns HTML of a table
 */
export function tableHtml(table: TableRecord): string {
  const align = (at: number) => table.columns[at]?.align ?? "left";
  const head = table.columns.map((column, at) => {
    const unit = column.unit === "" ? "" : ` (${text(column.unit)})`;
    return `<th scope="col" style="text-align: ${align(at)}">${text(column.label)}${unit}</th>`;
  });
  const rows = table.rows.map((row) =>
    row.map((cell, at) => {
      const [open, close] = at === 0 ? [`<th scope="row"`, "</th>"] : ["<td", "</td>"];
      const content = markOf(cell.mark) + text(cell.text);
      return `${open} style="text-align: ${align(at)}">${content}${close}`;
    }).join("")
  );
  return [
    `<table class="lakeproof-table">`,
    `<caption style="text-align: left">${text(table.caption)}</caption>`,
    `<thead><tr>${head.join("")}</tr></thead>`,
    "<tbody>",
    ...rows.map((row) => `<tr>${row}</tr>`),
    "</tbody></table>",
  ].join("\n");
}

/**
 * Findings as a list, errors first.
 *
 * @param findings in any order
 * @returns HTML of a list; one sentence when there are none
 */
export function findingsHtml(findings: readonly Finding[]): string {
  if (findings.length === 0) return `<p class="lakeproof-findings">No finding in the data.</p>`;
  const items = shortened(inOrder(findings)).map((one) => {
    const { word, where, what, wanted } = findingWords(one);
    const ask = wanted === "" ? "" : ` Wanted: ${escapeHtml(wanted)}`;
    return `<li><strong>${word}:</strong> ${escapeHtml(where)}<br>${escapeHtml(what)}${ask}</li>`;
  });
  return `<ul class="lakeproof-findings" style="max-width: 42em">\n${items.join("\n")}\n</ul>`;
}

/**
 * Text that keeps its columns.
 *
 * @param report plain text of any number of lines
 * @returns HTML of one block
 */
export function reportHtml(report: string): string {
  const lines = report.split(/\r?\n/).map((line) => escapeHtml(printableLine(line)));
  return `<pre class="lakeproof-report">${lines.join("\n")}</pre>`;
}

/**
 * As `printable`, with the spaces at the start kept: they make the columns.
 *
 * @param line of a report
 * @returns one line
 */
export function printableLine(line: string): string {
  const spaces = /^ */.exec(line)![0];
  return spaces + printable(line);
}
