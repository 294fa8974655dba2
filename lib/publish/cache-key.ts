/**
 * What a notebook's outputs rest on, as named checksums, so that one can say which of them moved.
 *
 * @module
 */
import { dirname, relative } from "node:path";
import { sha256 } from "./checksum.ts";
import { reachedModules, type SourceFiles } from "./module-walk.ts";
import { type Publication, readPublication } from "./publication.ts";
import { type CellSources, sourceOf } from "./stamp.ts";

/** Checksums by what a person would call the thing: `data/x/glides.csv`, `deno.lock`, `the code cells`. */
export type Inputs = Readonly<Record<string, string>>;

/** What all notebooks of a project share: read once a report. */
export interface ProjectState {
  /** Absolute path of the project's folder. */
  readonly root: string;
  readonly importMap: Readonly<Record<string, string>>;
  /** The version of Deno that stamps name. */
  readonly deno: string;
  readonly publication: Publication;
  /** Inputs that every run and page shares: Deno, the lock, the settings of `deno.json`. */
  readonly common: Inputs;
  /** Source files read so far. */
  readonly known: SourceFiles;
}

/** Parts of `deno.json` that change nothing about what code computes. */
const IRRELEVANT = ["tasks", "fmt", "lint", "exclude"];

/**
 * Reads what all notebooks share.
 *
 * @param root the project's folder
 * @param deno the version of Deno that stamps name: the running one, but where another's stamps are made anew
 * @returns import map, versions, checksums and an empty store of modules already looked at
 */
export function projectState(root: string, deno: string = Deno.version.deno): ProjectState {
  const settings = JSON.parse(Deno.readTextFileSync(`${root}/deno.json`)) as Record<
    string,
    unknown
  >;
  for (const key of IRRELEVANT) delete settings[key];
  return {
    root,
    importMap: (settings["imports"] ?? {}) as Record<string, string>,
    deno,
    publication: readPublication(root),
    common: {
      Deno: Deno.version.deno,
      "deno.lock": fileChecksum(`${root}/deno.lock`),
      "deno.json": sha256(JSON.stringify(settings)),
    },
    known: new Map(),
  };
}

/**
 * A checksum of a file's bytes, or a word that no checksum equals when it can't be read.
 *
 * @param path of the file
 * @returns SHA-256 in hexadecimal, or "not there"
 */
export function fileChecksum(path: string): string {
  try {
    return sha256(Deno.readFileSync(path));
  } catch {
    return "not there";
  }
}

/**
 * A path as people of this project write it: from the project's folder, with forward slashes.
 *
 * @param root absolute path of the project's folder
 * @param path absolute
 * @returns the path from the folder; one outside it as it was
 */
export function shortPath(root: string, path: string): string {
  const short = relative(root, path).replaceAll("\\", "/");
  return short.startsWith("..") ? path : short;
}

function folderChecksum(path: string): string {
  try {
    return sha256([...Deno.readDirSync(path)].map((entry) => entry.name).sort().join("\n"));
  } catch {
    return "not there";
  }
}

/** Checksums of files by short path. */
function fileInputs(root: string, paths: readonly string[]): Inputs {
  return Object.fromEntries(paths.map((path) => [shortPath(root, path), fileChecksum(path)]));
}

/**
 * Checksums of modules and all that they import, by short path; and the packages at the ends.
 *
 * @param project as it stands
 * @param start texts that import, and paths of modules to begin at
 * @returns checksums by short path; specifiers of packages
 */
export function moduleInputs(
  project: ProjectState,
  start: { readonly sources?: readonly string[]; readonly entries?: readonly string[] },
): { inputs: Inputs; packages: readonly string[] } {
  const { root, importMap: map, known } = project;
  const reached = reachedModules({ ...start, root, map, known });
  const named = [...reached.files].map(([path, checksum]) => [shortPath(root, path), checksum]);
  return { inputs: Object.fromEntries(named), packages: reached.packages };
}

/** The code that a notebook's outputs rest on. */
export interface CodeInputs {
  readonly inputs: Inputs;
  /** Packages that the cells reach, by their keys in the import map. */
  readonly packages: readonly string[];
}

/**
 * What the outputs of a notebook's code cells rest on, the data left out: cells, modules, Deno, lock, settings.
 *
 * @param notebook its cells
 * @param project what all notebooks share
 * @param runner absolute path of the module that runs a notebook
 * @returns checksums by words that `task report --why` can print, and the packages
 */
export function codeInputs(
  notebook: CellSources,
  project: ProjectState,
  runner: string,
): CodeInputs {
  const sources = notebook.cells.filter((cell) => cell.cell_type === "code").map(sourceOf);
  const own = moduleInputs(project, { sources });
  const ours = moduleInputs(project, { entries: [runner] });
  return {
    inputs: {
      "the code cells": sha256(JSON.stringify(sources)),
      ...project.common,
      ...own.inputs,
      ...ours.inputs,
    },
    packages: own.packages,
  };
}

/**
 * What a notebook read: each file by its bytes, and the list of names of each folder that it read from, so that a file
 * that is added or taken away counts too.
 *
 * @param root the project's folder
 * @param filesRead absolute paths
 * @returns a checksum for each file, and one for the list of names in each folder, by words that can be printed
 */
export function dataInputs(root: string, filesRead: readonly string[]): Inputs {
  const folders = [...new Set(filesRead.map((path) => dirname(path)))].sort();
  return {
    ...fileInputs(root, filesRead),
    ...Object.fromEntries(
      folders.map((
        path,
      ) => [`the list of files in ${shortPath(root, path)}/`, folderChecksum(path)]),
    ),
  };
}

/**
 * What moved between two sets of inputs, in words: "data/x/glides.csv changed".
 *
 * @param before checksums of the kept run, by name
 * @param now checksums by name
 * @returns one sentence a thing, changed ones first; empty when nothing moved
 *
 * @example
 * ```ts
 * import { whatMoved } from "lakeproof/publish/cache-key.ts";
 * const moved = whatMoved({ "deno.lock": "a", Deno: "1" }, { "deno.lock": "b", Deno: "1" });
 * console.assert(moved.join() === "deno.lock changed");
 * ```
 */
export function whatMoved(before: Inputs, now: Inputs): string[] {
  const changed: string[] = [];
  const gone: string[] = [];
  const added: string[] = [];
  for (const [name, checksum] of Object.entries(before)) {
    if (!Object.hasOwn(now, name)) gone.push(`${name} is no longer used`);
    else if (now[name] === "not there" && checksum !== "not there") gone.push(`${name} is gone`);
    else if (now[name] !== checksum) changed.push(`${name} changed`);
  }
  for (const name of Object.keys(now)) {
    if (!Object.hasOwn(before, name)) added.push(`${name} is new`);
  }
  return [...changed, ...gone, ...added];
}
