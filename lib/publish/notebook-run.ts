/**
 * What became of running a notebook: the notebook with its outputs, or the cell and line at which it stopped.
 *
 * @module
 */
import type { Notebook } from "./notebook.ts";

/** Where a code cell stands: counting code cells, as a reader of the code does, and counting all cells. */
export interface CellPlace {
  /** From 1, code cells only. */
  readonly codeCell: number;
  /** From 1, every cell. */
  readonly cell: number;
}

/** Every cell ran to its end. */
export interface RunDone {
  readonly ok: true;
  /** The notebook with its outputs, execution counts from 1. */
  readonly notebook: Notebook;
  /** Absolute paths of the data files that the library read for the notebook, sorted. */
  readonly filesRead: readonly string[];
  /**
   * Every path that the notebook asked to read or look at, as it was asked, sorted; empty where Deno has no permission
   * broker (Windows). Relative ones count from the folder in which the notebook ran.
   */
  readonly pathsAsked: readonly string[];
}

/** A cell failed, ran over its time, or its kernel ended. */
export interface RunFailed extends CellPlace {
  readonly ok: false;
  /** The notebook with the outputs so far. */
  readonly notebook: Notebook;
  /** Line within the cell, from 1; `null` where it can't be told. */
  readonly line: number | null;
  /** The text of that line. */
  readonly sourceLine: string | null;
  /** Class of the error (`TypeError`), or `Time limit`, `Kernel ended`, `Syntax error`. */
  readonly name: string;
  readonly message: string;
  /** The frames, with lines of the cell and not of what the kernel made of it. */
  readonly traceback: readonly string[];
}

/** The outcome of running a notebook in one fresh kernel. */
export type NotebookRun = RunDone | RunFailed;

/**
 * A failed run in words: notebook, cell, line and the line's text.
 *
 * @param file the notebook's name
 * @param run what failed
 * @returns two to four lines without a line end
 */
export function describeFailure(file: string, run: RunFailed): string {
  const line = run.line === null ? "" : `, line ${run.line}`;
  return [
    `${file}, code cell ${run.codeCell} (cell ${run.cell} of all)${line}:`,
    ...(run.sourceLine === null ? [] : [`    ${run.sourceLine.trim()}`]),
    run.message.startsWith(`${run.name}:`) ? run.message : `${run.name}: ${run.message}`,
  ].join("\n");
}
