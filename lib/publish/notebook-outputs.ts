/**
 * Outputs of a run put into a notebook.
 *
 * @module
 */
import type { Cell, Notebook, Output } from "./notebook.ts";

/**
 * A notebook with the outputs of a run of the same code cells; its prose stays as it is now.
 *
 * Code cells are counted from 1 in the order run, an empty one too, so that equal code gives equal bytes.
 *
 * @param notebook as it stands on disk
 * @param run the same notebook after a run, perhaps with older prose
 * @returns a new notebook
 * @throws Error when the run has fewer code cells than the notebook
 */
export function withOutputs(
  notebook: Notebook,
  run: readonly { readonly count: number | null; readonly outputs: readonly Output[] }[],
): Notebook {
  let place = 0;
  const cells = notebook.cells.map((cell): Cell => {
    if (cell.cell_type !== "code") return cell;
    const ran = run[place++];
    if (ran === undefined) {
      throw new Error("Cannot put outputs into a notebook that has more code cells");
    }
    return { ...cell, execution_count: ran.count, outputs: ran.outputs };
  });
  return { ...notebook, cells };
}
