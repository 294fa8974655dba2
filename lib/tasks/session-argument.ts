/**
 * A session as typed: `deno task` moves to the project's folder, but a path is meant from where it was typed.
 *
 * @module
 */
import { isAbsolute, join } from "node:path";

/**
 * The name or path to open.
 *
 * @param typed a name under `data/`, or a path
 * @param from folder in which the command was typed; `undefined` when it was not run as a task
 * @returns a name as it is, a relative path made absolute
 */
export function sessionArgument(typed: string, from: string | undefined): string {
  const path = /[\\/]/.test(typed) || typed.startsWith(".");
  return path && from !== undefined && !isAbsolute(typed) ? join(from, typed) : typed;
}
