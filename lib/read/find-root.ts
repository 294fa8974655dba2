/**
 * The project's top folder, found from wherever the program was started.
 *
 * @module
 */
import { existsSync } from "node:fs";
import { dirname, join } from "node:path";
import process from "node:process";

/**
 * The nearest folder at or above a start that holds a `deno.json`; `null` when there is none.
 *
 * @param from absolute path; the working directory when left out
 * @returns absolute path of the nearest folder at or above it that holds a `deno.json`; `null` when there is none
 */
export function findRoot(from: string = process.cwd()): string | null {
  for (let folder = from;;) {
    if (existsSync(join(folder, "deno.json"))) return folder;
    const above = dirname(folder);
    if (above === folder) return null;
    folder = above;
  }
}
