/**
 * The rows below a header as typed cells in SI, with every problem found on the way.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import { type TableContract } from "../base/tables.ts";
import { type DecimalChoice, decimalChoice } from "./decimal-mark.ts";
import { isExampleRow } from "./example-row.ts";
import { columnLetter, type MatchedHeader } from "./match-header.ts";
import { readCell } from "./read-cell.ts";
import { shapeFault, swallowsRows } from "./row-shape.ts";
import { type SplitTable, type TextRow } from "./split-table.ts";

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

/** Everything about one table that reading its rows needs. */
export interface RowsInput {
  readonly contract: TableContract;
  readonly split: SplitTable;
  readonly header: MatchedHeader;
}

/** The rows and what was found in them. */
export interface ReadRows {
  readonly rows: readonly ReadRow[];
  readonly findings: readonly Finding[];
}

/**
 * Reads every row below the header; rows of another shape are told and left out, example rows passed over.
 *
 * @param input contract, cells and understood header of one table
 * @returns rows by column name in file order, numbers in SI, and what was found
 */
export function readRows(input: RowsInput): ReadRows {
  const { contract, split, header } = input;
  const body = split.rows.slice(1);
  const numeric = header.columns.filter((one) => one.column.kind === "number");
  const choice = decimalChoice(
    body.flatMap(({ cells }) => numeric.map((one) => (cells[one.place] ?? "").trim())),
    split.delimiter,
  );
  const findings: Finding[] = [...unnamedColumns(input, body)];
  const rows: ReadRow[] = [];
  for (const line of body) {
    const fault = shapeFault(line.cells, header, split.delimiter);
    if (fault !== null) {
      findings.push(finding({ severity: "error", file: contract.file, row: line.row, ...fault }));
      continue;
    }
    const read = readRow(line, input, choice);
    if (isExampleRow(read.row.values)) {
      findings.push(finding({
        severity: body.length > 1 ? "warning" : "note",
        code: "example-row",
        file: contract.file,
        row: line.row,
        what: "This is the example that came with the table; it does not count.",
        wanted: body.length > 1
          ? 'Delete it. If it is your own row now, take "example row" out of it.'
          : null,
      }));
      continue;
    }
    rows.push(read.row);
    findings.push(...read.findings);
  }
  return { rows, findings };
}

function unnamedColumns(input: RowsInput, body: readonly TextRow[]): Finding[] {
  return input.header.unnamed.flatMap((place) => {
    const first = body.find(({ cells }) => (cells[place] ?? "").trim() !== "");
    if (first === undefined) return [];
    const letter = columnLetter(place);
    return [finding({
      severity: "warning",
      code: "unnamed-column",
      file: input.contract.file,
      row: first.row,
      column: letter,
      what: `Column ${letter} has values but no name, so it is not used.`,
      wanted: "A name in the first row.",
    })];
  });
}

interface RowAndFindings {
  readonly row: ReadRow;
  readonly findings: readonly Finding[];
}

function readRow(line: TextRow, input: RowsInput, choice: DecimalChoice): RowAndFindings {
  const { contract, split, header } = input;
  const findings: Finding[] = [];
  const values: Record<string, string | number | null> = {};
  const own: Record<string, number> = {};
  const decimals: Record<string, string> = {};
  const faults: string[] = [];
  for (const column of contract.columns) {
    values[column.name] = null;
    const there = header.columns.some((one) => one.column === column && !one.own);
    if (column.required && !there) faults.push(column.name);
  }
  const reason = header.columns.find((one) => one.column.name === "leave_out" && !one.own);
  // What can't be, in a row that is left out, stands in nobody's way.
  const out = reason !== undefined &&
    readCell(line.cells[reason.place] ?? "", reason, choice).value !== null;
  for (const matched of header.columns) {
    const { column } = matched;
    const name = matched.own ? `u_${column.name}` : column.name;
    if (!matched.readable) {
      faults.push(name);
      continue;
    }
    const place = { file: contract.file, row: line.row, column: name };
    const raw = line.cells[matched.place] ?? "";
    if (swallowsRows(raw, split.delimiter)) {
      faults.push(name);
      findings.push(finding({
        ...place,
        severity: "error",
        code: "open-quote",
        what:
          "A quotation mark opens in this cell and closes only some lines later, so rows are lost in it.",
        wanted: 'A second " at the end of that cell, or none at all.',
      }));
      continue;
    }
    const cell = readCell(raw, matched, choice);
    if (cell.fault !== null) {
      const spared = out && cell.fault.code === "impossible-value";
      findings.push(finding({ ...place, ...cell.fault, ...(spared ? { severity: "note" } : {}) }));
      if (cell.fault.severity === "error" && !spared) faults.push(name);
    }
    if (cell.value === null) continue;
    if (matched.own) own[column.name] = cell.value as number;
    else values[column.name] = cell.value;
    if (cell.decimal !== undefined) decimals[name] = cell.decimal;
  }
  return { row: { row: line.row, values, own, decimals, faults }, findings };
}
