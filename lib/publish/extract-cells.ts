/**
 * Puts the code cells of a notebook into one module that the type checker can read.
 *
 * The kernel lets a later cell declare a name again; a module does not. So each cell stands in a block inside the block
 * of the cell before: it sees all earlier names and may declare them anew. Imports can't stand in a block and move to
 * the top; a name imported again from the same module is left out the second time.
 *
 * @module
 */
import type { Notebook } from "./notebook.ts";

/** Where a line of the module came from. */
export interface LineOrigin {
  /** Index of the cell among all cells, from 0. */
  readonly index: number;
  /** Line within the cell, from 1. */
  readonly line: number;
}

/** A module made of cells. */
export interface ExtractedCells {
  readonly text: string;
  /** For each line of the text, from 0; `null` for lines that no cell holds. */
  readonly origins: readonly (LineOrigin | null)[];
}

/** An import statement that begins a line; the first group is what it imports from. */
export const IMPORT =
  /^import\b(?!\s*[(.])(?:[^"';]*?\bfrom\b)?\s*["']([^"'\n]+)["'](?:\s*with\s*\{[^}]*\})?[^\S\n]*;?/gm;

/**
 * The module of a notebook's code cells; a column in it is the column in the cell.
 *
 * @param notebook any notebook
 * @returns one module's text, and for each of its lines the cell and line that it comes from
 */
export function extractCells(notebook: Notebook): ExtractedCells {
  const top: [string, LineOrigin | null][] = [];
  const body: [string, LineOrigin | null][] = [];
  const imported = new Set<string>();
  let open = 0;
  notebook.cells.forEach((cell, index) => {
    if (cell.cell_type !== "code") return;
    const rest = cell.source.replace(IMPORT, (statement, specifier: string, at: number) => {
      const first = cell.source.slice(0, at).split("\n").length;
      withoutKnown(statement, specifier, imported).split("\n").forEach((line, offset) => {
        top.push([line, { index, line: first + offset }]);
      });
      return blank(statement);
    }).replace(
      /^export(?=\s+(?:const|let|var|function|async|class|type|interface|enum)\b)/gm,
      blank,
    );
    body.push(["{", null]);
    open++;
    rest.split("\n").forEach((line, offset) => body.push([line, { index, line: offset + 1 }]));
  });
  // Without an import or export the checker would take the file for a script, in which `await` can't stand alone.
  const lines = [...top, ...body, ["}".repeat(open), null] as const, ["export {};", null] as const];
  return {
    text: `${lines.map(([line]) => line).join("\n")}\n`,
    origins: lines.map(([, origin]) => origin),
  };
}

/** The import with names blanked that an earlier import from the same module has given. */
function withoutKnown(statement: string, specifier: string, imported: Set<string>): string {
  return statement.replace(
    /\{[^}]*\}/,
    (list) =>
      list.replace(/(?:type\s+)?([\w$]+)(?:\s+as\s+([\w$]+))?\s*,?/g, (entry, name, alias) => {
        const key = `${alias ?? name} from ${specifier}`;
        if (imported.has(key)) return blank(entry);
        imported.add(key);
        return entry;
      }),
  );
}

/**
 * As many spaces; line ends stay.
 *
 * @param text of a cell
 * @returns text of the same length, so that places in it still hold
 */
export function blank(text: string): string {
  return text.replace(/[^\n]/g, " ");
}
