/**
 * Reads the project's own reference tables in `shared/`, from wherever the program was started.
 *
 * @module
 */
import { parse } from "csv-parse/sync";

/**
 * The folder that holds `deno.json`, found by walking up from the working directory.
 *
 * @param from where to start; the working directory by default
 * @returns absolute path without a trailing slash
 * @throws Error when no folder on the way up holds `deno.json` beside a `shared` folder
 */
function projectFolder(from: string = Deno.cwd()): string {
  for (let folder = from; folder !== "";) {
    try {
      if (
        Deno.statSync(`${folder}/deno.json`).isFile && Deno.statSync(`${folder}/shared`).isDirectory
      ) return folder;
    } catch (error) {
      if (!(error instanceof Deno.errors.NotFound)) throw error;
    }
    const up = folder.slice(0, Math.max(folder.lastIndexOf("/"), folder.lastIndexOf("\\")));
    if (up === folder) break;
    folder = up;
  }
  throw new Error(`Cannot find the shared tables as no folder above ${from} holds deno.json`);
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
  return parse(Deno.readTextFileSync(`${projectFolder()}/shared/${file}`), {
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
