/**
 * Lists the notebooks of a project in reading order: the order of their file names.
 *
 * @module
 */
import { join } from "node:path";
import { DataError, UsageError } from "../base/errors.ts";
import { didYouMean } from "../base/did-you-mean.ts";
import { sha256 } from "./checksum.ts";
import type { Notebook } from "./notebook.ts";

/** A notebook on disk. */
export interface NotebookFile {
  /** File name with its ending. */
  readonly file: string;
  readonly path: string;
  /** Names the page: lower case, digits and hyphens. */
  readonly slug: string;
  readonly text: string;
  readonly sha256: string;
}

/** A page's name from a file's name: lower case letters, digits and hyphens. */
function slugOf(file: string): string {
  const plain = file.replace(/\.ipynb$/, "").normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase();
  return plain.replace(/[^a-z0-9]+/g, "-").replace(/^-+|-+$/g, "") || "notebook";
}

/**
 * The first heading of a notebook, or its page's name when it has none.
 *
 * @param notebook parsed
 * @param slug name of its page, without ending
 * @returns the heading without its mark
 */
export function titleOf(notebook: Notebook, slug: string): string {
  for (const cell of notebook.cells) {
    const heading = cell.cell_type === "markdown" ? /^# +(.+?)[ #]*$/m.exec(cell.source) : null;
    if (heading !== null) return heading[1]!;
  }
  return slug;
}

/**
 * Every notebook of a project, in order of file name.
 *
 * @param root the project's folder
 * @returns by name, each with text and checksum
 * @throws DataError when there is none, or when two would make the same page
 */
export function listNotebooks(root: string): NotebookFile[] {
  const folder = join(root, "notebooks");
  let names: string[] = [];
  try {
    names = [...Deno.readDirSync(folder)]
      .filter((entry) => !entry.isDirectory && /^[^.].*\.ipynb$/.test(entry.name))
      .map((entry) => entry.name)
      .sort();
  } catch (error) {
    if (!(error instanceof Deno.errors.NotFound)) throw error;
  }
  if (names.length === 0) {
    throw new DataError(`Cannot make a site: there is no notebook in ${folder}.`);
  }
  const slugs = new Map<string, string>();
  return names.map((file) => {
    const slug = slugOf(file);
    const other = slugs.get(slug);
    if (other !== undefined || slug === "index") {
      throw new DataError(
        `Cannot make a page of ${file}: ${other ?? "the list of pages"} already is ${slug}.html. ` +
          "Give the notebook another name.",
      );
    }
    slugs.set(slug, file);
    const path = join(folder, file);
    const text = Deno.readTextFileSync(path);
    return { file, path, slug, text, sha256: sha256(text) };
  });
}

/**
 * The notebooks that were asked for by name.
 *
 * @param all every notebook
 * @param names file names, with or without ending or folder; empty means all
 * @returns file names; all of them where no name was given
 * @throws UsageError for a name that no notebook has
 */
export function selectNotebooks(
  all: readonly NotebookFile[],
  names: readonly string[],
): ReadonlySet<string> {
  if (names.length === 0) return new Set(all.map((one) => one.file));
  const plain = all.map((one) => one.file.replace(/\.ipynb$/, ""));
  return new Set(names.map((name) => {
    const wanted = name.replace(/^.*[\\/]/, "").replace(/\.ipynb$/, "");
    const at = plain.indexOf(wanted);
    if (at >= 0) return all[at]!.file;
    const guess = didYouMean(wanted, plain);
    throw new UsageError(
      `There is no notebook "${wanted}" in notebooks/.` +
        (guess === null ? ` There are: ${plain.join(", ")}.` : ` Did you mean "${guess}"?`),
    );
  }));
}
