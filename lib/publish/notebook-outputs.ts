/**
 * Outputs of a run put into a notebook, and two runs compared.
 *
 * @module
 */
import type { Cell, Notebook, Output } from "./notebook.ts";

/** One list of outputs a code cell, in order. */
export function outputsByCell(notebook: Notebook): (readonly Output[])[] {
  return notebook.cells.flatMap((cell) => cell.cell_type === "code" ? [cell.outputs] : []);
}

/**
 * A notebook with the outputs of a run of the same code cells; its prose stays as it is now.
 *
 * Code cells are counted from 1 in the order run, an empty one too, so that equal code gives equal bytes.
 *
 * @param notebook as it stands on disk
 * @param run the same notebook after a run, perhaps with older prose
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

/** Where two runs of a notebook first differ. */
export interface RunDifference {
  /** From 1, code cells only. */
  readonly codeCell: number;
  readonly what: string;
}

/** The place at which two texts part, with a little of what stands around it. */
function excerpt(first: string, second: string): string {
  let at = 0;
  while (at < first.length && first[at] === second[at]) at++;
  const from = Math.max(0, at - 20);
  return `...${first.slice(from, at + 30)}... and then ...${second.slice(from, at + 30)}...`;
}

/**
 * The first code cell whose outputs differ by a byte between two runs.
 *
 * @returns the cell and what differs, or `null` when all are alike
 */
export function firstDifference(first: Notebook, second: Notebook): RunDifference | null {
  const [one, other] = [outputsByCell(first), outputsByCell(second)];
  for (const [index, outputs] of one.entries()) {
    const [before, after] = [JSON.stringify(outputs), JSON.stringify(other[index] ?? null)];
    if (before !== after) return { codeCell: index + 1, what: excerpt(before, after) };
  }
  return null;
}
