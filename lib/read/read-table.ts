/**
 * The bytes of one table as rows of typed cells in SI, with every problem found on the way.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import { excerpt } from "../base/printable.ts";
import { type TableContract } from "../base/tables.ts";
import { decodeText } from "./decode-text.ts";
import { matchHeader } from "./match-header.ts";
import { type ReadRow, readRows } from "./read-rows.ts";
import { splitTable, type TextRow } from "./split-table.ts";

/** A table, read; without rows where nothing could be. */
export interface ReadTable {
  readonly rows: readonly ReadRow[];
  /** The header as it stands, without what trails empty behind it. */
  readonly headings: readonly string[];
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
    headings: [],
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
  if (head === undefined) return { rows: [], headings: [], findings };
  const header = matchHeader({ contract, cells: head.cells, row: head.row, units });
  findings.push(...header.findings);
  const body = readRows({ contract, split, header });
  findings.push(...body.findings);
  const headings = head.cells.slice(0, header.width).map((cell) => cell.trim());
  return { rows: body.rows, headings, findings };
}

function splitHeaderName(head: TextRow | undefined, place: number): string | null {
  const cell = head?.cells[place]?.trim() ?? "";
  return cell === "" ? null : excerpt(cell.replace(/\s*[[(].*$/, ""));
}
