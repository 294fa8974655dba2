/**
 * Runs one notebook, or takes its outputs from the cache where all that they rest on is as it was.
 *
 * @module
 */
import { join, resolve } from "node:path";
import { DataError } from "../base/errors.ts";
import {
  codeInputs,
  dataInputs,
  type Inputs,
  type ProjectState,
  shortPath,
  whatMoved,
} from "./cache-key.ts";
import type { Cache, KeptOutputs, KeptRun } from "./cache.ts";
import type { NotebookFile } from "./notebook-file.ts";
import { withOutputs } from "./notebook-outputs.ts";
import { describeFailure, type NotebookRun, type RunDone } from "./notebook-run.ts";
import { type Notebook, parseNotebook } from "./notebook.ts";
import { treeState } from "./tree-state.ts";

/** Runs a notebook in one fresh kernel. */
export type Runner = (
  notebook: Notebook,
  options: {
    readonly signal: AbortSignal;
    readonly onCell: (place: number, count: number) => void;
  },
) => Promise<NotebookRun>;

/** A notebook, what its outputs rest on now, and why they must be made anew. */
export interface Turn {
  readonly notebook: NotebookFile;
  readonly parsed: Notebook;
  readonly code: Inputs;
  readonly packages: readonly string[];
  readonly kept: KeptRun | null;
  /** What moved since the kept run; empty when it may be reused. */
  readonly why: readonly string[];
}

/**
 * Name of the cache's record about a notebook's run.
 *
 * @param notebook file
 * @returns the record's name
 */
export function runRecord(notebook: NotebookFile): string {
  return `${notebook.slug}.run`;
}

/**
 * Looks whether a notebook must run, and why.
 *
 * @param notebook file
 * @param project as it stands
 * @param cache where earlier runs are kept
 * @param options path of the module that runs notebooks; `fresh` to run whatever is kept
 * @returns the kept run, if any, and why it will not do
 */
export function planTurn(
  notebook: NotebookFile,
  project: ProjectState,
  cache: Cache,
  options: { readonly runner: string; readonly fresh: boolean },
): Turn {
  const parsed = parseNotebook(notebook.text, notebook.file);
  const { inputs: code, packages } = codeInputs(parsed, project, options.runner);
  const kept = cache.read<KeptRun>(runRecord(notebook));
  const why = kept === null ? ["not run here before"] : options.fresh ? ["run afresh"] : [
    ...whatMoved(kept.code, code),
    ...whatMoved(kept.data, dataInputs(project.root, kept.filesRead)),
  ];
  return { notebook, parsed, code, packages, kept, why };
}

/** Fails when files of the project changed while a notebook ran. */
function checkTree(root: string, file: string, before: Inputs): void {
  const moved = whatMoved(before, treeState(root));
  if (moved.length === 0) return;
  throw new DataError(
    `While ${file} ran, files of the project changed:\n    ${moved.join("\n    ")}\n` +
      "A notebook reads and never writes. If you saved one of these yourself just now, run the report again.",
  );
}

/** Files under a folder, at any depth. */
function filesUnder(folder: string): string[] {
  try {
    return [...Deno.readDirSync(folder)].flatMap((entry) => {
      const path = join(folder, entry.name);
      return entry.isDirectory ? filesUnder(path) : [path];
    });
  } catch {
    return [];
  }
}

/**
 * The data that a run rests on: what the library read, and what the cells themselves asked for under `data/` and
 * `shared/`. Where nobody could watch the asking, all of `shared/` counts.
 */
function filesBehind(root: string, done: RunDone): string[] {
  const asked = done.pathsAsked.map((path) => resolve(root, path)).filter((path) => {
    const [folder] = shortPath(root, path).split("/");
    if (folder !== "data" && folder !== "shared") return false;
    try {
      return Deno.statSync(path).isFile;
    } catch {
      return false;
    }
  });
  const shared = done.pathsAsked.length === 0 ? filesUnder(join(root, "shared")) : [];
  return [...new Set([...done.filesRead, ...asked, ...shared])].sort();
}

async function runOnce(
  turn: Turn,
  { run, signal, onCell, faults }: TurnOptions,
): Promise<RunDone> {
  const stopped = Promise.withResolvers<never>();
  const stop = () => stopped.reject(signal.reason);
  signal.addEventListener("abort", stop);
  const done = await Promise.race([run(turn.parsed, { signal, onCell }), stopped.promise])
    .finally(() => signal.removeEventListener("abort", stop));
  signal.throwIfAborted();
  if (done.ok) return done;
  // What the type checker says often explains the error, so both are told.
  const failure = describeFailure(turn.notebook.file, done);
  throw new DataError([...new Set([failure, ...await faults])].join("\n\n"));
}

/** How to run. */
export interface TurnOptions {
  readonly project: ProjectState;
  readonly cache: Cache;
  readonly run: Runner;
  readonly signal: AbortSignal;
  readonly onCell: (place: number, count: number) => void;
  /** Run in two clean kernels and compare. */
  readonly twice: boolean;
  /** What the type checker has against the notebook's cells, in words. */
  readonly faults: Promise<readonly string[]>;
}

/**
 * Runs a notebook, checks that it wrote nothing, and keeps what it gave.
 *
 * @param turn as planned
 * @param options what runs it, and whether to run it twice and compare
 * @returns the run as it is kept
 * @throws DataError naming notebook, cell and line where it fails
 */
export async function takeTurn(turn: Turn, options: TurnOptions): Promise<KeptRun> {
  const { project, cache } = options;
  const { file } = turn.notebook;
  const before = treeState(project.root);
  const done = await runOnce(turn, options);
  const filesRead = filesBehind(project.root, done);
  const data = dataInputs(project.root, filesRead);
  checkTree(project.root, file, before);
  if (options.twice) {
    const again = await runOnce(turn, options);
    checkTree(project.root, file, before);
    const { describeDifference, firstDifference } = await import("./first-difference.ts");
    const difference = firstDifference(done.notebook, again.notebook);
    if (difference !== null) {
      throw new DataError(
        `${describeDifference(file, difference)}\n` +
          "Look for a clock, unseeded chance, or an order that is not fixed.",
      );
    }
  }
  const faults = await options.faults;
  if (faults.length > 0) throw new DataError(faults.join("\n\n"));
  const outputs: KeptOutputs = done.notebook.cells.flatMap((cell) =>
    cell.cell_type === "code" ? [{ count: cell.execution_count, outputs: cell.outputs }] : []
  );
  const kept: KeptRun = {
    code: turn.code,
    data,
    filesRead,
    packages: turn.packages,
    outputs: cache.keep(new TextEncoder().encode(JSON.stringify(outputs))),
  };
  cache.write(runRecord(turn.notebook), kept);
  return kept;
}

/**
 * The notebook with a kept run's outputs; `null` when those are lost.
 *
 * @param turn as planned
 * @param kept the run whose outputs are wanted
 * @param cache that holds them
 * @returns a new notebook
 */
export function notebookAfter(turn: Turn, kept: KeptRun, cache: Cache): Notebook | null {
  const bytes = cache.kept(kept.outputs);
  if (bytes === null) return null;
  return withOutputs(turn.parsed, JSON.parse(new TextDecoder().decode(bytes)) as KeptOutputs);
}

/**
 * Files that a run read, with checksums, as a stamp names them.
 *
 * @param root absolute path of the project's folder
 * @param kept the run
 * @returns paths from the project's folder with SHA-256
 */
export function dataRead(root: string, kept: KeptRun): { file: string; sha256: string }[] {
  return kept.filesRead.map((path) => {
    const file = shortPath(root, path);
    return { file, sha256: kept.data[file]! };
  });
}
