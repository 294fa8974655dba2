/**
 * Runs cells of the study on tows side by side, one process thread a processor.
 *
 * @module
 */
import type { TowCellResult } from "./run-tow-cell.ts";
import type { TowKind } from "./tow-kind.ts";

/** What a worker is asked for. */
export interface TowCellTask {
  readonly kind: TowKind;
  readonly sessions: number;
}

/**
 * Runs cells. Each has a random stream of its own, so the counts are the same however many run at once.
 *
 * @param kinds of session
 * @param sessions a cell
 * @param finished called with each cell in the order of the kinds, as soon as it and those before it are done
 * @returns counts in the order of the kinds
 */
export async function runTowCells(
  kinds: readonly TowKind[],
  sessions: number,
  finished: (cell: TowCellResult) => void = () => {},
): Promise<TowCellResult[]> {
  const results: TowCellResult[] = [];
  let next = 0, told = 0;
  const one = async () => {
    const worker = new Worker(new URL("./tow-cell-worker.ts", import.meta.url), { type: "module" });
    try {
      while (next < kinds.length) {
        const place = next++;
        results[place] = await ask(worker, { kind: kinds[place]!, sessions });
        while (results[told] !== undefined) finished(results[told++]!);
      }
    } finally {
      worker.terminate();
    }
  };
  await Promise.all(Array.from({ length: Math.max(1, navigator.hardwareConcurrency) }, one));
  return results;
}

function ask(worker: Worker, task: TowCellTask): Promise<TowCellResult> {
  return new Promise((resolve, reject) => {
    worker.onmessage = ({ data }: MessageEvent<TowCellResult>) => resolve(data);
    worker.onerror = (event) => {
      event.preventDefault();
      reject(new Error(event.message));
    };
    worker.postMessage(task);
  });
}
