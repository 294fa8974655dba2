/**
 * A session from a folder on disk.
 *
 * @module
 */
import { existsSync, readdirSync, statSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { basename, join, resolve } from "node:path";
import { didYouMean } from "../base/did-you-mean.ts";
import { DataError } from "../base/errors.ts";
import { excerpt } from "../base/printable.ts";
import { type Session } from "../base/session.ts";
import { TABLES, TRACES } from "../base/tables.ts";
import { filesRead, noteRead } from "./files-read.ts";
import { findRoot } from "./find-root.ts";
import { DESCRIPTOR } from "./read-descriptor.ts";
import { readSession } from "./read-session.ts";
import { isTrace } from "./read-traces.ts";

export { filesRead };

const isFolder = (path: string) => existsSync(path) && statSync(path).isDirectory();

/**
 * The folder that a session's name or path means.
 *
 * A plain name is looked for under `data/` of the project (found by walking up to `deno.json`); anything with a slash, or
 * a folder that is there, is a path.
 *
 * @param nameOrPath name of a folder under `data/`, or a path to any folder
 * @returns absolute path
 * @throws DataError when no such folder is there, with the nearest name that is
 */
export function sessionFolder(nameOrPath: string): string {
  const root = findRoot();
  const plainName = nameOrPath !== "" && !/[\\/]/.test(nameOrPath) && !nameOrPath.startsWith(".");
  if (plainName && root !== null) {
    const inData = join(root, "data", nameOrPath);
    if (isFolder(inData)) return inData;
  }
  const path = resolve(nameOrPath);
  if (nameOrPath !== "" && isFolder(path)) return path;
  const there = sessionNames();
  const meant = didYouMean(basename(nameOrPath), there);
  const help = meant !== null
    ? ` Did you mean ${excerpt(meant)}?`
    : there.length > 0
    ? ` There are: ${there.map((one) => excerpt(one)).join(", ")}.`
    : "";
  throw new DataError(
    `Cannot open the session "${excerpt(nameOrPath)}": there is no such folder.${help}`,
  );
}

/**
 * Names of all session folders under `data/` of the project.
 *
 * @returns in alphabetical order; none outside a project
 */
export function sessionNames(): readonly string[] {
  const root = findRoot();
  const data = root === null ? null : join(root, "data");
  if (data === null || !isFolder(data)) return [];
  return readdirSync(data)
    .filter((one) => !one.startsWith(".") && isFolder(join(data, one)))
    .filter((one) =>
      readdirSync(join(data, one)).some((file) =>
        file === DESCRIPTOR || TABLES.some((two) => two.file === file.toLowerCase())
      )
    )
    .sort();
}

/**
 * Opens a session folder. Of its subfolders only `traces/` is looked at; `raw/` and all others are never touched.
 *
 * @param nameOrPath a name under `data/`, or any path
 * @returns typed rows in SI with every finding; a folder full of faults is opened all the same
 * @throws DataError only when the folder is not there
 */
export async function openSession(nameOrPath: string): Promise<Session> {
  const folder = sessionFolder(nameOrPath);
  return readSession(basename(folder), await sessionFiles(folder));
}

/**
 * The bytes of a session folder's own files by name: descriptor, tables and traces in full, others by name only.
 *
 * @param folder absolute path
 * @returns bytes by path inside the folder; files that are not ours are named, without bytes
 */
export async function sessionFiles(folder: string): Promise<Map<string, Uint8Array>> {
  const files = new Map<string, Uint8Array>();
  const traces = join(folder, TRACES);
  const names = [
    ...filesIn(folder),
    ...(isFolder(traces) ? filesIn(traces).map((name) => `${TRACES}/${name}`) : []),
  ];
  for (const name of names) {
    const ours = name === DESCRIPTOR || isTrace(name) ||
      TABLES.some((one) => one.file === name.toLowerCase());
    if (!ours) {
      files.set(name, new Uint8Array());
      continue;
    }
    const path = join(folder, name);
    files.set(name, new Uint8Array(await readFile(path)));
    noteRead(path);
  }
  return files;
}

/** Names of the files in a folder, hidden ones and lock files of spreadsheets apart. */
function filesIn(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true })
    .filter((one) =>
      one.isFile() || (one.isSymbolicLink() && statSync(join(folder, one.name)).isFile())
    )
    .map((one) => one.name)
    .filter((name) => !/^(?:\.|~\$)/.test(name))
    .sort();
}
