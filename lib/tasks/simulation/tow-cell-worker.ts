/**
 * A worker that runs the cells it is sent.
 *
 * @module
 */
import { runTowCell } from "./run-tow-cell.ts";
import type { TowCellTask } from "./run-tow-cells.ts";

/** What a worker's own scope offers. */
const scope = globalThis as unknown as {
  onmessage: (event: MessageEvent<TowCellTask>) => void;
  postMessage: (message: unknown) => void;
};

scope.onmessage = ({ data: { kind, sessions } }) => {
  scope.postMessage(runTowCell(kind, sessions));
};
