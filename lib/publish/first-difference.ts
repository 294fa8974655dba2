/**
 * Whether two runs of one notebook in clean kernels gave the same bytes, and where not.
 *
 * @module
 */
import { formatNotebook, type Notebook } from "./notebook.ts";
import type { CellPlace } from "./notebook-run.ts";

/** The first cell whose outputs were not the same twice. */
export interface Difference extends CellPlace {
  /** The first line of the notebook's text that differs, both times. */
  readonly first: string;
  readonly second: string;
}

/**
 * The first cell that is not the same in two runs of one notebook.
 *
 * @param one the notebook as the first run left it
 * @param two as the second did; as many cells
 * @returns the cell and its first line that differs; `null` when all are the same
 *
 * @example
 * ```ts
 * import { firstDifference } from "lakeproof/publish/first-difference.ts";
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
      codeCell: before.filter((cell) => cell.cell_type === "code").length,
      cell: index + 1,
      first: left[line]?.trim() ?? "",
      second: right[line]?.trim() ?? "",
    };
  }
  return null;
}

/**
 * A difference in words.
 *
 * @param file of the notebook
 * @param difference what {@link firstDifference} found
 * @returns three lines without a line feed at the end
 */
export function describeDifference(file: string, difference: Difference): string {
  return `${file}, code cell ${difference.codeCell} (cell ${difference.cell} of all): ` +
    `two clean runs gave different bytes\n    first:  ${difference.first}\n    second: ${difference.second}`;
}
