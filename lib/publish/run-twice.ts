/**
 * Runs a notebook in two clean kernels and tells whether it gives the same bytes.
 *
 * @module
 */
import { formatNotebook, type Notebook } from "./notebook.ts";
import type { CellPlace, RunDone, RunFailed } from "./notebook-run.ts";
import { runNotebook, type RunOptions } from "./run-notebook.ts";

/** The first cell whose outputs were not the same twice. */
export interface Difference extends CellPlace {
  readonly ok: false;
  /** The first line of the notebook's text that differs, both times. */
  readonly first: string;
  readonly second: string;
}

/** Same bytes twice; or a difference; or a run that failed. */
export type TwiceRun = RunDone | Difference | RunFailed;

/**
 * Runs a notebook twice, one run after the other.
 *
 * @param notebook what to run
 * @param options as for one run
 * @returns the run when both gave the same bytes
 */
export async function runTwice(notebook: Notebook, options: RunOptions): Promise<TwiceRun> {
  const first = await runNotebook(notebook, options);
  if (!first.ok) return first;
  const second = await runNotebook(notebook, options);
  if (!second.ok) return second;
  return firstDifference(first.notebook, second.notebook) ?? first;
}

/**
 * The first cell that is not the same in two runs of one notebook; `null` when all are.
 *
 * @example
 * ```ts
 * import { firstDifference } from "lakeproof/publish/run-twice.ts";
 *
 * const same = { cells: [], metadata: {}, nbformat: 4, nbformat_minor: 5 } as const;
 * if (firstDifference(same, same) !== null) throw new Error("not the same");
 * ```
 */
export function firstDifference(one: Notebook, two: Notebook): Difference | null {
  for (const index of one.cells.keys()) {
    const [left, right] = [one, two].map((notebook) =>
      formatNotebook({ ...notebook, cells: notebook.cells.slice(index, index + 1) }).split("\n")
    ) as [string[], string[]];
    const line = Array.from({ length: Math.max(left.length, right.length) }, (_, at) => at)
      .find((at) => left[at] !== right[at]);
    if (line === undefined) continue;
    const before = one.cells.slice(0, index + 1);
    return {
      ok: false,
      codeCell: before.filter((cell) => cell.cell_type === "code").length,
      cell: index + 1,
      first: left[line]?.trim() ?? "",
      second: right[line]?.trim() ?? "",
    };
  }
  return null;
}

/** A difference in words. */
export function describeDifference(file: string, difference: Difference): string {
  return `${file}, code cell ${difference.codeCell} (cell ${difference.cell} of all): ` +
    `two clean runs gave different bytes\n    first:  ${difference.first}\n    second: ${difference.second}`;
}
