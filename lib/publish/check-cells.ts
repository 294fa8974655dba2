/**
 * Checks the types of notebooks' code cells, which the kernel itself never does.
 *
 * @module
 */
import { mapCell } from "./cell-lines.ts";
import { extractCells, type ExtractedCells } from "./extract-cells.ts";
import { importsOf } from "./import-scan.ts";
import type { Notebook } from "./notebook.ts";
import type { CellPlace } from "./notebook-run.ts";

/** A notebook with its name. */
export interface NamedNotebook {
  readonly file: string;
  readonly notebook: Notebook;
}

/** What the type checker has against a cell. */
export interface CellFault extends CellPlace {
  readonly file: string;
  /** From 1, within the cell. */
  readonly line: number;
  readonly sourceLine: string;
  /** The checker's own number (`TS2322`), `SyntaxError` or `Import`. */
  readonly code: string;
  readonly message: string;
}

/**
 * Every fault that the type checker finds in the code cells of some notebooks.
 *
 * @param notebooks what to check, all in one go
 * @param root the project's folder, whose `deno.json` gives imports and strictness
 * @returns faults in the order of notebooks, cells and lines; none when all is well
 * @throws Error when the checker fails for another reason than the cells
 */
export async function checkCells(
  notebooks: readonly NamedNotebook[],
  root: string,
): Promise<CellFault[]> {
  if (notebooks.length === 0) return [];
  const extracted = notebooks.map(({ notebook }) => extractCells(notebook));
  const folder = await Deno.makeTempDir({ prefix: "lakeproof-check-" });
  try {
    const names = extracted.map((_, order) => `notebook-${order + 1}.ts`);
    await Promise.all(
      extracted.map(({ text }, order) => Deno.writeTextFile(`${folder}/${names[order]}`, text)),
    );
    const output = await new Deno.Command(Deno.execPath(), {
      args: ["check", "--quiet", "--config", `${root}/deno.json`, ...names],
      cwd: folder,
      env: { NO_COLOR: "1" },
      stdin: "null",
      stdout: "null",
      stderr: "piped",
    }).output();
    if (output.success) return [];
    const said = new TextDecoder().decode(output.stderr);
    const faults = [
      ...readFaults(said, notebooks, extracted),
      // One cell that can't be read hides all others from the checker: then each is read alone.
      ...(/error: SyntaxError|could not be parsed/.test(said) ? await unreadable(notebooks) : []),
    ];
    if (faults.length === 0) faults.push(...foreignImports(notebooks));
    if (faults.length === 0) throw new Error(`Cannot check the notebooks' cells: ${said}`);
    return faults.sort((left, right) =>
      order(notebooks, left) - order(notebooks, right) || left.cell - right.cell ||
      left.line - right.line
    );
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
}

/**
 * A fault in words: notebook, cell, line, the line's text, and what is wrong with it.
 *
 * @param fault with its place
 * @returns three lines
 */
export function describeFault(fault: CellFault): string {
  return `${fault.file}, code cell ${fault.codeCell} (cell ${fault.cell} of all), line ${fault.line}:\n` +
    `    ${fault.sourceLine.trim()}\n${fault.code}: ${fault.message}`;
}

function order(notebooks: readonly NamedNotebook[], fault: CellFault): number {
  return notebooks.findIndex(({ file }) => file === fault.file);
}

function readFaults(
  said: string,
  notebooks: readonly NamedNotebook[],
  extracted: readonly ExtractedCells[],
): CellFault[] {
  return said.split(/^(?=TS\d+ \[ERROR\])/m).flatMap((block) => {
    const [, code, message] = /^(TS\d+) \[ERROR\]: (.*(?:\n {2}.*)*)/.exec(block) ?? [];
    const [, number, line] = /at file:\/\/\S*\/notebook-(\d+)\.ts:(\d+):\d+/.exec(block) ?? [];
    const named = notebooks[Number(number) - 1];
    const origin = extracted[Number(number) - 1]?.origins[Number(line) - 1];
    if (code === undefined || message === undefined || named === undefined || !origin) return [];
    return [faultAt(named, origin.index, origin.line, code, message.trim())];
  });
}

async function unreadable(notebooks: readonly NamedNotebook[]): Promise<CellFault[]> {
  const faults: CellFault[] = [];
  for (const named of notebooks) {
    for (const [index, cell] of named.notebook.cells.entries()) {
      if (cell.cell_type !== "code") continue;
      const map = await mapCell(cell.source, cell.source);
      if (!map.ok) faults.push(faultAt(named, index, map.line ?? 1, "SyntaxError", map.message));
    }
  }
  return faults;
}

/** Imports that name a package or an address outright: only what `deno.json` pins comes out the same everywhere. */
function foreignImports(notebooks: readonly NamedNotebook[]): CellFault[] {
  return notebooks.flatMap((named) =>
    named.notebook.cells.flatMap((cell, index) =>
      cell.cell_type !== "code" ? [] : importsOf(cell.source)
        .filter(({ specifier }) => /^(?:npm|jsr|https?):/.test(specifier))
        .map(({ specifier }) => {
          const line = cell.source.split("\n").findIndex((one) => one.includes(specifier)) + 1;
          const message =
            `${specifier} is not pinned: a notebook may import what deno.json names, by that name.`;
          return faultAt(named, index, line, "Import", message);
        })
    )
  );
}

function faultAt(
  { file, notebook }: NamedNotebook,
  index: number,
  line: number,
  code: string,
  message: string,
): CellFault {
  const before = notebook.cells.slice(0, index + 1);
  return {
    file,
    codeCell: before.filter((cell) => cell.cell_type === "code").length,
    cell: index + 1,
    line,
    sourceLine: notebook.cells[index]?.source.split("\n")[line - 1] ?? "",
    code,
    message,
  };
}
