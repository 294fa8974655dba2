/**
 * Rows of a table as the library's types: camel-case fields, faulty rows kept out, repeated names found.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import { excerpt } from "../base/printable.ts";
import { type Row } from "../base/session.ts";
import { type TableContract } from "../base/tables.ts";
import { type ReadRow } from "./read-rows.ts";
import { type ReadTable } from "./read-table.ts";

/** `launch_speed` as `launchSpeed`. */
function camelCase(name: string): string {
  return name.replace(/_(\w)/g, (_, letter: string) => letter.toUpperCase());
}

/** Needed columns that may be empty in a row: not measured, so that row answers less. */
const MAY_BE_EMPTY = ["launch_speed", "distance", "speed", "line_tension"];

/** Typed rows and what was found while making them. */
export interface TypedRows<T> {
  readonly rows: readonly T[];
  /** Values of the key column in all rows of the file, good or faulty. */
  readonly allKeys: readonly string[];
  readonly findings: readonly Finding[];
}

/**
 * Whether nothing needed is missing or faulty in a row; reports what is, unless that was reported before.
 *
 * @param contract of the table
 * @param row as read
 * @param findings takes what is missing
 * @returns whether a typed row can be made of it
 */
export function usable(contract: TableContract, row: ReadRow, findings: Finding[]): boolean {
  let good = true;
  for (const column of contract.columns.filter((one) => one.required)) {
    if (row.faults.includes(column.name)) good = false;
    else if (row.values[column.name] === null) {
      const open = MAY_BE_EMPTY.includes(column.name);
      if (open && row.values["leave_out"] !== null) continue;
      if (!open) good = false;
      findings.push(finding({
        severity: open ? "warning" : "error",
        code: open ? "not-measured" : "empty-cell",
        file: contract.file,
        row: row.row,
        column: column.name,
        what: open
          ? `${column.name} is empty, so this row can't be used.`
          : `${column.name} is empty; the row was not used.`,
        wanted: column.means,
      }));
    }
  }
  return good;
}

/** One row with its columns as camel-case fields. */
function typedRow<T extends Row>(row: ReadRow): T {
  const fields: Record<string, unknown> = { row: row.row, own: row.own };
  for (const [name, value] of Object.entries(row.values)) fields[camelCase(name)] = value;
  return fields as unknown as T;
}

/**
 * Typed rows of a table whose columns are the type's fields.
 *
 * @param contract its `key` must not repeat: the first row of a name stays, later ones are kept out with an error; rows with
 *   a filled `series` column may share one
 * @param table as read
 * @returns good rows, every key of the file, and what was found
 */
export function typedRows<T extends Row>(
  contract: TableContract,
  table: Pick<ReadTable, "rows">,
): TypedRows<T> {
  const findings: Finding[] = [];
  const rows: T[] = [];
  const seen = new Map<string, { readonly row: number; readonly sample: boolean }>();
  const { key, file, series } = contract;
  for (const row of table.rows) {
    const good = usable(contract, row, findings);
    const name = key === null ? null : row.values[key];
    if (typeof name === "string") {
      const before = seen.get(name);
      const sample = series !== undefined && row.values[series] !== null;
      if (before !== undefined && !(sample && before.sample)) {
        findings.push(finding({
          severity: "error",
          code: "doubled-row",
          file,
          row: row.row,
          column: key,
          what: `${key} "${
            excerpt(name)
          }" stands in row ${before.row} already; this row was not used.`,
          wanted: `A name of its own for each ${key}.`,
        }));
        continue;
      }
      if (before === undefined) seen.set(name, { row: row.row, sample });
    }
    if (good) rows.push(typedRow<T>(row));
  }
  return { rows, allKeys: [...seen.keys()], findings };
}
