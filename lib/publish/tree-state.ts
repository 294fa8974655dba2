/**
 * The state of the files that a notebook may read but never write: compared before and after a kernel ran.
 *
 * @module
 */
import { join } from "node:path";
import { fileChecksum, type Inputs, shortPath } from "./cache-key.ts";

/** Folders that hold the project's own files. */
const FOLDERS = ["data", "lib", "notebooks", "shared"];

/** Files above this size count by size and time of change alone, so that recordings of gigabytes cost no time. */
const HASHED_UP_TO = 8e6;

function look(path: string, root: string, state: Record<string, string>): void {
  for (const entry of Deno.readDirSync(path)) {
    const inside = join(path, entry.name);
    if (entry.isDirectory) {
      if (entry.name !== "node_modules" && entry.name !== ".ipynb_checkpoints") {
        look(inside, root, state);
      }
    } else if (entry.isSymlink) {
      state[shortPath(root, inside)] = `link to ${Deno.readLinkSync(inside)}`;
    } else {
      const { size, mtime } = Deno.statSync(inside);
      state[shortPath(root, inside)] = size > HASHED_UP_TO
        ? `${size} bytes of ${mtime?.getTime()}`
        : fileChecksum(inside);
    }
  }
}

/**
 * Checksums of the project's own files by path. Links inside the folders are noted, not followed.
 *
 * @param root the project's folder
 * @returns SHA-256 by short path; size and time in its place for a large file
 */
export function treeState(root: string): Inputs {
  const state: Record<string, string> = {};
  for (const folder of FOLDERS) {
    try {
      if (Deno.statSync(join(root, folder)).isDirectory) look(join(root, folder), root, state);
    } catch (error) {
      if (!(error instanceof Deno.errors.NotFound)) throw error;
    }
  }
  for (const name of ["deno.json", "deno.lock"]) state[name] = fileChecksum(join(root, name));
  return state;
}
