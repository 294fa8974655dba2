/**
 * The bytes of one table as rows of typed cells in SI, with every problem found on the way.
 *
 * @module
 */
import { type Finding, finding, type Severity } from "../base/finding.ts";
import { printable } from "../base/printable.ts";
import { type TableContract } from "../base/tables.ts";
import { decimalChoice } from "./decimal-mark.ts";
import { decodeText } from "./decode-text.ts";
import { columnLetter, type MatchedHeader, matchHeader } from "./match-header.ts";
import { readCell } from "./read-cell.ts";
import { type SplitTable, splitTable, type TextRow } from "./split-table.ts";

/** One row, its cells by column name. */
export interface ReadRow {
  readonly row: number;
  /** Text, SI number or `null` for every column of the contract. */
  readonly values: Readonly<Record<string, string | number | null>>;
  readonly own: Readonly<Record<string, number>>;
  /** Number cells as decimal text, for tables whose unit stands in the row. */
  readonly decimals: Readonly<Record<string, string>>;
  /** Columns whose cell has a fault. */
  readonly faults: readonly string[];
}

/** A table, read; without rows where nothing could be. */
export interface ReadTable {
  readonly rows: readonly ReadRow[];
  /** Columns of the contract that stand in the file and can be read. */
  readonly present: readonly string[];
  readonly findings: readonly Finding[];
}

/**
 * Reads one table.
 *
 * @param contract what the table may hold
 * @param bytes the whole file
 * @param units units of the descriptor by column name
 * @returns every row with something in it, also those with faults, and all findings
 */
export function readTable(
  contract: TableContract,
  bytes: Uint8Array,
  units: Readonly<Record<string, string>> = {},
): ReadTable {
  const { file } = contract;
  const findings: Finding[] = [];
  const nothing = (code: string, what: string, wanted: string): ReadTable => ({
    rows: [],
    present: [],
    findings: [finding({ severity: "error", code, file, what, wanted })],
  });
  const decoded = decodeText(bytes);
  if (!decoded.ok) {
    return nothing(
      "not-text",
      `The file can't be read: ${decoded.reason}.`,
      "The sheet saved as CSV.",
    );
  }
  if (decoded.encoding === "windows-1252") {
    findings.push(finding({
      severity: "note",
      code: "old-encoding",
      file,
      what:
        "The file is not UTF-8; it was read as Windows-1252. Look whether accented letters are right.",
      wanted: "CSV saved as UTF-8.",
    }));
  }
  const split = splitTable(decoded.text);
  const head = split.rows[0];
  if (head === undefined && split.openQuote === null) {
    return nothing(
      "empty-file",
      "The file is empty.",
      "A first row with the names of the columns.",
    );
  }
  if (split.openQuote !== null) {
    const { row, place } = split.openQuote;
    findings.push(finding({
      severity: "error",
      code: "open-quote",
      file,
      row,
      column: splitHeaderName(head, place),
      what:
        `A quotation mark opens in row ${row} and never closes; nothing from there on was read.`,
      wanted: 'A second " at the end of that cell, or none at all.',
    }));
  }
  if (head === undefined) return { rows: [], present: [], findings };
  const header = matchHeader({ contract, cells: head.cells, row: head.row, units });
  findings.push(...header.findings);
  const rows = readRows(contract, split, header, findings);
  const present = header.columns.filter((one) => !one.own && one.readable).map((one) =>
    one.column.name
  );
  return { rows, present, findings };
}

function splitHeaderName(head: TextRow | undefined, place: number): string | null {
  const cell = head?.cells[place]?.trim() ?? "";
  return cell === "" ? null : printable(cell.replace(/\s*[[(].*$/, ""));
}

function readRows(
  contract: TableContract,
  split: SplitTable,
  header: MatchedHeader,
  findings: Finding[],
): ReadRow[] {
  const { file } = contract;
  const numeric = header.columns.filter((one) => one.column.kind === "number");
  const body = split.rows.slice(1);
  const choice = decimalChoice(
    body.flatMap(({ cells }) => numeric.map((one) => (cells[one.place] ?? "").trim())),
    split.delimiter,
  );
  const unnamedUsed = new Set<number>();
  const rows: ReadRow[] = [];
  for (const { row, cells } of body) {
    const report = (
      severity: Severity,
      code: string,
      column: string | null,
      what: string,
      wanted: string | null,
    ) => findings.push(finding({ severity, code, file, row, column, what, wanted }));
    const stranger = otherDelimiter(cells, header, split.delimiter);
    if (stranger !== null) {
      report(
        "error",
        "other-delimiter",
        null,
        `This row has ${stranger} between its cells, the header has ${spoken(split.delimiter)}.`,
        `${spoken(split.delimiter)} between the cells, as in the rest of the file.`,
      );
      continue;
    }
    const surplus = cells.findIndex((cell, place) => place >= header.width && cell.trim() !== "");
    if (surplus >= 0) {
      const comma = split.delimiter === ",";
      report(
        "error",
        "surplus-cell",
        columnLetter(surplus),
        `The row has more cells than the header: "${printable(cells[surplus]!)}" stands in column ${
          columnLetter(surplus)
        }, which has no name. The row was not used.`,
        comma
          ? 'Quotation marks around text that holds a comma ("wind, left"), and a point before decimals.'
          : "One cell for each name in the header.",
      );
      continue;
    }
    for (const place of header.unnamed) {
      if ((cells[place] ?? "").trim() === "" || unnamedUsed.has(place)) continue;
      unnamedUsed.add(place);
      report(
        "warning",
        "unnamed-column",
        columnLetter(place),
        `Column ${columnLetter(place)} has values but no name, so it is not used.`,
        "A name in the first row.",
      );
    }
    const values: Record<string, string | number | null> = {};
    const own: Record<string, number> = {};
    const decimals: Record<string, string> = {};
    const faults: string[] = [];
    for (const column of contract.columns) values[column.name] = null;
    for (const matched of header.columns) {
      const { column } = matched;
      const name = matched.own ? `u_${column.name}` : column.name;
      if (!matched.readable) {
        faults.push(name);
        continue;
      }
      const raw = cells[matched.place] ?? "";
      if (/[\r\n]/.test(raw.trim()) && swallowed(raw, split.delimiter)) {
        report(
          "error",
          "open-quote",
          name,
          `A quotation mark opens in row ${row} and closes only some lines later, so rows are lost in it.`,
          'A second " at the end of that cell, or none at all.',
        );
        faults.push(name);
        continue;
      }
      const cell = readCell(raw, matched, choice);
      if (cell.fault !== null) {
        report(cell.fault.severity, cell.fault.code, name, cell.fault.what, cell.fault.wanted);
        if (cell.fault.severity === "error") faults.push(name);
      }
      if (cell.value === null) continue;
      if (matched.own) own[column.name] = cell.value as number;
      else values[column.name] = cell.value;
      if (cell.decimal !== undefined) decimals[name] = cell.decimal;
    }
    for (const column of contract.columns) {
      const there = header.columns.some((one) => one.column === column && !one.own);
      if (column.required && !there) faults.push(column.name);
    }
    rows.push({ row, values, own, decimals, faults });
  }
  return rows;
}

const spoken = (mark: string) => ({ ",": "commas", ";": "semicolons", "\t": "tabs" })[mark] ?? mark;

/** Whether a row was written with another delimiter than its file: one cell, or too few, that another mark cuts right. */
function otherDelimiter(
  cells: readonly string[],
  header: MatchedHeader,
  mark: string,
): string | null {
  if (header.columns.length < 2) return null;
  const filled = cells.filter((cell) => cell.trim() !== "").length;
  for (const other of [";", "\t", ","].filter((one) => one !== mark)) {
    const cuts = cells[0]!.split(other).length - 1;
    const all = cells.join("").split(other).length - 1;
    const enough = Math.max(1, Math.floor((header.width - 1) / 2));
    if (filled === 1 && cuts >= 1 && cuts >= enough) return spoken(other);
    if (cuts >= 1 && all >= header.width - 1 && filled < header.width) return spoken(other);
  }
  return null;
}

/** Whether a cell with line breaks holds what looks like whole rows. */
function swallowed(cell: string, mark: string): boolean {
  return cell.split(/\r\n|\n|\r/).slice(1).some((line) => line.split(mark).length > 3);
}
