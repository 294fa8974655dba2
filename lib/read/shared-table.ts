/**
 * Reads the project's own reference tables in `shared/`, from wherever the program was started.
 *
 * @module
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { parse } from "csv-parse/sync";
import { DataError } from "../base/errors.ts";
import { noteRead } from "./files-read.ts";
import { findRoot } from "./find-root.ts";

/**
 * The bytes of a file of the project, noted as read.
 *
 * @param path from the project's top folder, such as `shared/published-values.csv`
 * @returns the text
 * @throws DataError when the working directory is not inside the project, or the file is not there
 */
export function readProjectFile(path: string): string {
  const root = findRoot();
  if (root === null) {
    throw new DataError(
      `Cannot read ${path} as no folder above the working directory holds deno.json`,
    );
  }
  const whole = join(root, path);
  noteRead(whole);
  try {
    return readFileSync(whole, "utf8");
  } catch {
    throw new DataError(`Cannot read ${path} as it is not there`);
  }
}

/** A row of a table, by column name; an empty cell is an empty text. */
export type TextRow = Readonly<Record<string, string>>;

/**
 * The rows of a table in `shared/`.
 *
 * @param file name of the file, such as `published-values.csv`
 * @returns rows as text, by column name
 * @throws Error when the file is not there or is not a table
 */
export function readSharedTable(file: string): TextRow[] {
  return parse(readProjectFile(`shared/${file}`), {
    columns: true,
    bom: true,
    skip_empty_lines: true,
  });
}

/**
 * A number from a cell.
 *
 * @param row the row
 * @param column name of the column
 * @returns the number
 * @throws Error when the column is not there, or the cell is not a number
 */
export function numberIn(row: TextRow, column: string): number {
  const text = row[column];
  const value = Number(text);
  if (text === undefined || text.trim() === "" || !Number.isFinite(value)) {
    throw new Error(`Cannot read the shared table as ${column} must be a number: ${text}`);
  }
  return value;
}

/**
 * A text from a cell.
 *
 * @param row the row
 * @param column name of the column
 * @returns the text, maybe empty
 * @throws Error when the column is not there
 */
export function textIn(row: TextRow, column: string): string {
  const text = row[column];
  if (text === undefined) throw new Error(`Cannot read the shared table: no column ${column}`);
  return text;
}
