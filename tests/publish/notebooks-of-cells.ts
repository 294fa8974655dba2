import type { CodeCell, Notebook } from "lakeproof/publish/notebook.ts";
import { type NotebookRun, runNotebook, type RunOptions } from "lakeproof/publish/run-notebook.ts";

/** The project's folder, where notebooks run. */
export const ROOT = decodeURIComponent(new URL("../..", import.meta.url).pathname);

/** A notebook of code cells. */
export function notebookOf(...sources: readonly string[]): Notebook {
  const cells = sources.map((source, index): CodeCell => ({
    cell_type: "code",
    execution_count: null,
    id: `c${index + 1}`,
    metadata: {},
    outputs: [],
    source,
  }));
  return { cells, metadata: {}, nbformat: 4, nbformat_minor: 5 };
}

/** Runs code cells in a fresh kernel. */
export function run(
  sources: readonly string[],
  options: Partial<RunOptions> = {},
): Promise<NotebookRun> {
  return runNotebook(notebookOf(...sources), { cwd: ROOT, ...options });
}

/** The outputs of a code cell, counting from 1. */
export function outputsAt(result: NotebookRun, cell: number): CodeCell["outputs"] {
  return (result.notebook.cells[cell - 1] as CodeCell).outputs;
}
