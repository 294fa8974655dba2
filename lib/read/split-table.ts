/**
 * A CSV text as cells with their row numbers: no meaning yet, nothing dropped.
 *
 * @module
 */
import { CsvError, type InfoRecord, type Options, parse } from "csv-parse/sync";

/** What stands between the cells. */
export type Delimiter = "," | ";" | "\t";

/** One row of text cells. */
export interface TextRow {
  /** Row as a spreadsheet numbers it: the first line is 1, blank lines count, a cell with line breaks is one row. */
  readonly row: number;
  readonly cells: readonly string[];
}

/** A quote that never ends. */
export interface OpenQuote {
  readonly row: number;
  /** Place of the cell in its row, from 0. */
  readonly place: number;
}

/** The cells of a table. */
export interface SplitTable {
  readonly delimiter: Delimiter;
  /** Rows with something in them; wholly blank ones are left out but counted. */
  readonly rows: readonly TextRow[];
  /** Where reading had to stop, if it had to. */
  readonly openQuote: OpenQuote | null;
}

const NAMES: Readonly<Record<string, Delimiter>> = { ",": ",", ";": ";", "\t": "\t" };

/** Delimiter named by a first line `sep=;`, which spreadsheets write and swallow again. */
function declared(text: string): { readonly delimiter: Delimiter; readonly rest: string } | null {
  const match = /^"?sep=(.)"?[ ,;]*(?:\r\n|\n|\r|$)/i.exec(text);
  const delimiter = NAMES[match?.[1] ?? ""];
  return match === null || delimiter === undefined
    ? null
    : { delimiter, rest: text.slice(match[0].length) };
}

/** The delimiter that the first line with something in it uses most, outside quotes; the rarer mark when two tie. */
function guessed(text: string): Delimiter {
  const line = text.split(/\r\n|\n|\r/).find((one) => /[^\s,;"]/.test(one)) ?? "";
  const bare = line.replace(/"[^"]*"/g, "").replace(/\[[^\]]*\]/g, "");
  const count = (mark: string) => bare.split(mark).length - 1;
  const marks: readonly Delimiter[] = ["\t", ";", ","];
  const most = Math.max(...marks.map(count));
  return most === 0 ? "," : marks.find((mark) => count(mark) === most)!;
}

interface InfoRow {
  readonly record: string[];
  readonly info: InfoRecord;
}

/**
 * Splits a CSV text into rows and cells.
 *
 * The delimiter is the one that a `sep=` line names or that the header uses. Quotes inside a cell that does not start with
 * one are plain characters (an inch mark). Cells keep their blanks; trimming is the reader's business.
 *
 * Source: IETF RFC 4180 (2005) for quoting; the `sep=` line is common practice, no source.
 *
 * @param text decoded, without byte order mark
 * @returns every row with content, and where an unfinished quote stopped the reading
 * @example
 * ```ts
 * import { splitTable } from "lakeproof/read/split-table.ts";
 * import { deepEqual } from "node:assert/strict";
 * deepEqual(splitTable("run;distance\n1;12,5\n").rows[1], { row: 2, cells: ["1", "12,5"] });
 * ```
 */
export function splitTable(text: string): SplitTable {
  const named = declared(text);
  const body = named?.rest ?? text;
  const delimiter = named?.delimiter ?? guessed(body);
  const options: Options = {
    delimiter,
    info: true,
    relax_column_count: true,
    relax_quotes: true,
    skip_empty_lines: false,
    record_delimiter: ["\r\n", "\n", "\r"],
  };
  const read = (more: Options) => parse(body, { ...options, ...more }) as unknown as InfoRow[];
  let rows: InfoRow[] = [];
  let openQuote: OpenQuote | null = null;
  try {
    rows = read({});
  } catch (error) {
    if (!(error instanceof CsvError) || error.code !== "CSV_QUOTE_NOT_CLOSED") throw error;
    const whole = Number(error["records"]);
    openQuote = { row: whole + 1, place: Number(error["index"]) };
    if (whole > 0) rows = read({ to: whole });
  }
  return {
    delimiter,
    rows: rows
      .map(({ record }, index) => ({ row: index + 1, cells: record }))
      .filter(({ cells }) => cells.some((cell) => cell.trim() !== "")),
    openQuote,
  };
}
