/**
 * What a site carries so that anyone can run it again: notebooks, data, library, reference tables, settings and lock.
 *
 * Of `data/` only the folders are published that a notebook read from: a session that no page speaks of stays at home.
 *
 * @module
 */
import { dirname, join } from "node:path";
import { shortPath } from "./cache-key.ts";
import { PUBLICATION_FILE } from "./publication.ts";
import { sincePath } from "./since/since-file.ts";
import type { NotebookFile } from "./notebook-file.ts";

/** Folder of the site that holds a project which can be run. */
export const SOURCE = "source";

/** A file of the site with its bytes. */
export interface SiteFile {
  /** Path from the site's folder, with forward slashes. */
  readonly file: string;
  readonly bytes: Uint8Array;
}

/** What is published to be run again. */
export interface SourceParts {
  /** Absolute path of the project's folder. */
  readonly root: string;
  /** Notebooks as they shall be published, outputs and filled prose included. */
  readonly notebooks: readonly { readonly file: NotebookFile; readonly text: string }[];
  /** Absolute paths of all files that the notebooks read. */
  readonly filesRead: readonly string[];
}

/** Files at the project's top that a run needs, or that say what may be done with it. */
const TOP = ["deno.json", "deno.lock", "LICENSE"];

function filesUnder(folder: string, wanted: RegExp): string[] {
  try {
    return [...Deno.readDirSync(folder)].flatMap((entry) => {
      const path = join(folder, entry.name);
      if (entry.name.startsWith(".")) return [];
      if (entry.isDirectory) return filesUnder(path, wanted);
      return entry.isFile && wanted.test(entry.name) ? [path] : [];
    });
  } catch (error) {
    if (error instanceof Deno.errors.NotFound) return [];
    throw error;
  }
}

/** Files that lie in a folder itself, hidden ones left out. */
function filesBeside(folder: string): string[] {
  return [...Deno.readDirSync(folder)]
    .filter((entry) => entry.isFile && !entry.name.startsWith("."))
    .map((entry) => join(folder, entry.name));
}

/** What notebooks read, and what lies beside it in the same session folder. */
function dataFiles(root: string, filesRead: readonly string[]): string[] {
  const data = join(root, "data");
  const read = filesRead.filter((path) => shortPath(root, path).startsWith("data/"));
  const folders = new Set(read.map((path) => dirname(path)).filter((path) => path !== data));
  return [...read, ...[...folders].flatMap(filesBeside)];
}

/**
 * Every file that is published to be run again, in order of path.
 *
 * @param parts the project, its notebooks as they shall be, and what they read
 * @returns files under `source/`
 */
export function sourceFiles(parts: SourceParts): SiteFile[] {
  const { root, notebooks, filesRead } = parts;
  const paths = [
    ...TOP.map((name) => join(root, name)).filter((path) => isFile(path)),
    ...filesUnder(join(root, "lib"), /\.(?:ts|json)$/),
    ...[join(root, "notebooks", PUBLICATION_FILE), sincePath(root)].filter(isFile),
    // How invented data were made stands beside them.
    ...filesBesideIfThere(join(root, "data")).filter((path) => path.endsWith(".ts")),
    ...filesUnder(join(root, "shared"), /\.(?!png$)[^.]+$/),
    ...dataFiles(root, filesRead),
  ];
  const encoder = new TextEncoder();
  return [
    ...[...new Set(paths)].map((path) => ({
      file: `${SOURCE}/${shortPath(root, path)}`,
      bytes: Deno.readFileSync(path),
    })),
    ...notebooks.map(({ file, text }) => ({
      file: `${SOURCE}/notebooks/${file.file}`,
      bytes: encoder.encode(text),
    })),
  ].sort((a, b) => (a.file < b.file ? -1 : 1));
}

function isFile(path: string): boolean {
  try {
    return Deno.statSync(path).isFile;
  } catch {
    return false;
  }
}

function filesBesideIfThere(folder: string): string[] {
  try {
    return filesBeside(folder);
  } catch (error) {
    if (error instanceof Deno.errors.NotFound) return [];
    throw error;
  }
}
