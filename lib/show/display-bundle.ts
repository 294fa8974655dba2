/**
 * A record in all the forms that a notebook program may choose from.
 *
 * @module
 */
import type { Finding } from "../base/finding.ts";
import {
  type AnswerRecord,
  type FigureRecord,
  type LiveRecord,
  MEDIA,
  type TableRecord,
} from "../base/records.ts";
import { printable } from "../base/printable.ts";
import { answerTextOf } from "./answer-text.ts";
import { answerHtml, findingsHtml, printableLine, reportHtml, tableHtml } from "./display-html.ts";
import { findingsText } from "./findings-text.ts";
import { textTable, wrapped } from "./text-table.ts";

/** What a cell can show: an answer, a figure, a live figure, a table, findings, or a fit report as text. */
export type Showable =
  | AnswerRecord
  | FigureRecord
  | LiveRecord
  | TableRecord
  | readonly Finding[]
  | string;

/** Forms by media type. */
export type DisplayBundle = Readonly<Record<string, unknown>> & { readonly "text/plain": string };

function isFindings(record: Exclude<Showable, string>): record is readonly Finding[] {
  return Array.isArray(record);
}

function figureText(figure: FigureRecord): string {
  const lines = [figure.title + ".", figure.description, figure.caption];
  return lines.map((line) => wrapped(printable(line))).join("\n") + "\n";
}

/**
 * The forms of a record: our own media type, HTML, plain text, and SVG for figures.
 *
 * A figure has no HTML form: programs then take the SVG, which carries its own ground.
 *
 * @param record what a cell shows
 * @returns forms by media type
 */
export function displayBundle(record: Showable): DisplayBundle {
  if (typeof record === "string") {
    const plain = record.split(/\r?\n/).map(printableLine).join("\n");
    return { "text/html": reportHtml(record), "text/plain": plain };
  }
  if (isFindings(record)) {
    return {
      [MEDIA.findings]: record,
      "text/html": findingsHtml(record),
      "text/plain": findingsText(record),
    };
  }
  if ("headline" in record) {
    return {
      [MEDIA.answer]: record,
      "text/html": answerHtml(record),
      "text/plain": answerTextOf(record),
    };
  }
  if ("wide" in record) {
    return {
      [MEDIA.figure]: record,
      "image/svg+xml": record.wide,
      "text/plain": figureText(record),
    };
  }
  if ("figure" in record) {
    return {
      [MEDIA.live]: record,
      "image/svg+xml": record.figure.wide,
      "text/plain": figureText(record.figure),
    };
  }
  return { [MEDIA.table]: record, "text/html": tableHtml(record), "text/plain": textTable(record) };
}
