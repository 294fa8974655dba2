/**
 * Runs a notebook from its first cell to its last in one fresh kernel.
 *
 * @module
 */
import type { Cell, CodeCell, Notebook } from "./notebook.ts";
import type { CellPlace, NotebookRun, RunFailed } from "./notebook-run.ts";
import { type CellEnd, KernelClient } from "./kernel/client.ts";
import { FILES_READ_NOTE } from "./kernel/prelude.ts";
import { placeError } from "./place-error.ts";

export type { CellPlace, NotebookRun, RunDone, RunFailed } from "./notebook-run.ts";
export { describeFailure } from "./notebook-run.ts";

/** How to run a notebook. */
export interface RunOptions {
  /** Folder in which the kernel starts; imports and session names are found from there upwards. */
  readonly cwd: string;
  /** Time limit for each cell, s. */
  readonly cellSeconds?: number;
  /** Most memory for the notebook's own objects, in megabytes. */
  readonly heapMegabytes?: number;
  /** Ends the kernel at once when it is raised; the run then comes back as failed. */
  readonly signal?: AbortSignal;
  /** Called before each code cell, for a progress display. */
  readonly onCell?: (place: CellPlace, codeCells: number) => void;
}

/** Long for a cell that reads and fits, short for one that hangs. */
const CELL_SECONDS = 120;

/**
 * Runs every code cell in order and stops at the first that fails.
 *
 * The same notebook, library and data give the same bytes: numbers of cells count from 1, nothing of the clock is kept.
 * The notebook can neither write nor reach the network nor start programs.
 *
 * @param notebook what to run; its old outputs do not matter
 * @param options folder, limits and progress
 * @returns the notebook with its outputs, or where it stopped and why
 * @throws Error when no kernel could be started
 */
export async function runNotebook(notebook: Notebook, options: RunOptions): Promise<NotebookRun> {
  const seconds = options.cellSeconds ?? CELL_SECONDS;
  const cells: Cell[] = notebook.cells.map((cell) =>
    cell.cell_type === "code" ? { ...cell, execution_count: null, outputs: [] } : cell
  );
  const toRun = cells.flatMap((cell, index) =>
    cell.cell_type === "code" && cell.source.trim() !== "" ? [{ cell, index }] : []
  );
  const client = await KernelClient.start(options);
  try {
    for (const [order, { cell, index }] of toRun.entries()) {
      const place = { codeCell: codeCellNumber(cells, index), cell: index + 1 };
      options.onCell?.(place, cells.filter((one) => one.cell_type === "code").length);
      const result = await client.execute(cell.source, order + 1, seconds);
      cells[index] = { ...cell, execution_count: order + 1, outputs: result.outputs };
      if (result.end.how === "done") continue;
      const failure = await explain(cell, result.end, place);
      if (result.end.how === "error") cells[index] = withError(cells[index] as CodeCell, failure);
      return { ok: false, notebook: { ...notebook, cells }, ...place, ...failure };
    }
    const read = await client.ask(FILES_READ_NOTE, seconds);
    return {
      ok: true,
      notebook: { ...notebook, cells },
      filesRead: Array.isArray(read) ? read.map(String).sort() : [],
      pathsAsked: [...client.readsAsked].sort(),
    };
  } finally {
    await client.close();
  }
}

type Failure = Pick<RunFailed, "line" | "sourceLine" | "name" | "message" | "traceback">;

/** What went wrong, in words for the person who wrote the cell. */
async function explain(
  cell: CodeCell,
  end: Exclude<CellEnd, { how: "done" }>,
  place: CellPlace,
): Promise<Failure> {
  const nowhere = { line: null, sourceLine: null, traceback: [] };
  switch (end.how) {
    case "error":
      return await placeError(cell.source, end, place.codeCell);
    case "time limit":
      return {
        ...nowhere,
        name: "Time limit",
        message: `the cell was still running after ${end.seconds} s and was stopped`,
      };
    case "kernel ended": {
      const { code, signal, said } = end.exit;
      const how = signal === null ? `exit code ${code}` : `signal ${signal}`;
      const memory = /out of memory|heap limit/i.test(said) ? "it ran out of memory; " : "";
      return {
        ...nowhere,
        name: "Kernel ended",
        message: `the kernel ended while this cell ran: ${memory}${how}`,
        traceback: said === "" ? [] : said.split("\n").slice(-20),
      };
    }
  }
}

/** The error output told by the cell's own lines. */
function withError(cell: CodeCell, failure: Failure): CodeCell {
  const error = {
    output_type: "error",
    ename: failure.name,
    evalue: failure.message,
    traceback: failure.traceback,
  } as const;
  return {
    ...cell,
    outputs: [...cell.outputs.filter((output) => output.output_type !== "error"), error],
  };
}

function codeCellNumber(cells: readonly Cell[], index: number): number {
  return cells.slice(0, index + 1).filter((cell) => cell.cell_type === "code").length;
}
