/**
 * Finds every module that some code reaches through its imports, and every package at the ends of those.
 *
 * @module
 */
import { dirname, join, resolve } from "node:path";
import { sha256 } from "./checksum.ts";
import { type FoundImport, importsOf } from "./import-scan.ts";

/** A source file, read once a report: its checksum and what it imports at run time. */
export interface SourceFile {
  readonly sha256: string;
  readonly imports: readonly FoundImport[];
}

/** Source files by absolute path; `null` for one that is not there. */
export type SourceFiles = Map<string, SourceFile | null>;

/** What some code rests on. */
export interface ReachedModules {
  /** Checksums of source files by absolute path, sorted by path. */
  readonly files: ReadonlyMap<string, string>;
  /** Keys of the import map that lead out of the project, sorted. */
  readonly packages: readonly string[];
}

/** Where an import leads: to a file of ours, to a package, or nowhere that this room knows. */
function leadsTo(
  specifier: string,
  folder: string,
  root: string,
  map: Readonly<Record<string, string>>,
): { file: string } | { package: string } | null {
  if (/^\.{1,2}\//.test(specifier)) return { file: resolve(folder, specifier) };
  const key = Object.keys(map)
    .filter((one) => specifier === one || specifier.startsWith(one.endsWith("/") ? one : `${one}/`))
    .sort((a, b) => b.length - a.length)[0];
  if (key === undefined) return null;
  const target = map[key]!;
  if (!target.startsWith(".")) return { package: key };
  return { file: join(root, target, specifier.slice(key.length)) };
}

function readSource(path: string): SourceFile | null {
  try {
    const bytes = Deno.readFileSync(path);
    const code = /\.[cm]?[jt]sx?$/.test(path) ? new TextDecoder().decode(bytes) : "";
    return { sha256: sha256(bytes), imports: importsOf(code).filter((one) => !one.typeOnly) };
  } catch {
    return null;
  }
}

/** Where to start, and what the walk needs to know. */
export interface WalkStart {
  /** Code that belongs to no file, such as notebook cells; its relative imports start at the project's folder. */
  readonly sources?: readonly string[];
  /** Absolute paths of modules to start from. */
  readonly entries?: readonly string[];
  /** The project's folder. */
  readonly root: string;
  /** The import map of `deno.json`. */
  readonly map: Readonly<Record<string, string>>;
  /** Files read before; added to. */
  readonly known: SourceFiles;
}

/**
 * Every module that is reached from the given code, `import type` left out since it leaves nothing at run time.
 *
 * @param start where to start
 * @returns files that exist and packages; a file that is missing shows itself when the code runs
 */
export function reachedModules(start: WalkStart): ReachedModules {
  const { root, map, known } = start;
  const files = new Map<string, string>();
  const packages = new Set<string>();
  const open = [...(start.entries ?? [])];
  const follow = (imports: readonly FoundImport[], folder: string) => {
    for (const found of imports) {
      const target = leadsTo(found.specifier, folder, root, map);
      if (target === null) continue;
      if ("file" in target) open.push(target.file);
      else packages.add(target.package);
    }
  };
  for (const source of start.sources ?? []) {
    follow(importsOf(source).filter((one) => !one.typeOnly), root);
  }
  for (let path = open.pop(); path !== undefined; path = open.pop()) {
    if (files.has(path)) continue;
    if (!known.has(path)) known.set(path, readSource(path));
    const file = known.get(path);
    if (!file) continue;
    files.set(path, file.sha256);
    follow(file.imports, dirname(path));
  }
  const sorted = [...files].sort(([a], [b]) => (a < b ? -1 : 1));
  return { files: new Map(sorted), packages: [...packages].sort() };
}
