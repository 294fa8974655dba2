/**
 * Runs a task and ends the process with the exit code that its outcome has.
 *
 * @module
 */
import { CommanderError } from "commander";
import { DataError, UsageError } from "../base/errors.ts";
import { excerpt } from "../base/printable.ts";

/** Outcomes of a task: done; the data have a fault or the answer is refused; wrong usage. */
export const EXIT = { done: 0, fault: 1, usage: 2 } as const;

/**
 * The exit code of an error, with its message on standard error where the command line has not told it yet.
 *
 * An error of neither kind is a fault of ours: it is printed whole and counts as a fault.
 */
function exitCodeOf(error: unknown): number {
  if (error instanceof CommanderError) {
    if (error.exitCode === 0) return EXIT.done;
    console.error("The same command with --help instead tells what goes where.");
    return EXIT.usage;
  }
  if (error instanceof UsageError || error instanceof DataError) {
    console.error(excerpt(error.message, 2000));
    return error instanceof UsageError ? EXIT.usage : EXIT.fault;
  }
  console.error(error);
  return EXIT.fault;
}

/**
 * Runs a task to its end and exits.
 *
 * @param task gives the exit code; what it throws is told on standard error
 * @returns never: the process ends with 0, 1 for faulty data, 2 for wrong usage
 */
export async function runTask(task: () => number | Promise<number>): Promise<never> {
  let code: number;
  try {
    code = await task();
  } catch (error) {
    code = exitCodeOf(error);
  }
  Deno.exit(code);
}
