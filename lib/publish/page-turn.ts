/**
 * Builds one page from a notebook with its outputs, or takes it from the cache.
 *
 * @module
 */
import { type Inputs, moduleInputs, type ProjectState } from "./cache-key.ts";
import type { Cache, KeptPage, KeptRun } from "./cache.ts";
import { sha256 } from "./checksum.ts";
import { type NotebookFile, titleOf } from "./notebook-file.ts";
import { dataRead } from "./notebook-turn.ts";
import { formatNotebook, type Notebook } from "./notebook.ts";
import { publicationSha256 } from "./publication.ts";
import type { PageBuild, PageInput, PageLink } from "./page/page-types.ts";
import type { Makers } from "./report-request.ts";
import { notebookSha256, type Stamp, versionsOf } from "./stamp.ts";

/** Builds a page. */
export type PageBuilder = (input: PageInput) => Promise<PageBuild>;

/** A notebook that is ready for its page: outputs in, prose bound. */
export interface ReadyNotebook {
  readonly file: NotebookFile;
  readonly title: string;
  readonly run: KeptRun;
  /** Checksum of what the prose was checked against and with. */
  readonly bound: string;
  /** `null` when the file on disk already is what was last published. */
  readonly notebook: Notebook | null;
  /** The notebook's file as it shall be, or `null` when it already is. */
  readonly text: string | null;
  /** Checksum of the file as it shall be. */
  readonly sha256: string;
}

/**
 * Name of the cache's record about a notebook's page.
 *
 * @param file of the notebook
 * @returns the record's name
 */
export function pageRecord(file: NotebookFile): string {
  return `${file.slug}.page`;
}

/**
 * A notebook with its title and its file's bytes, from the notebook as it shall be published.
 *
 * @param file as it is on disk
 * @param run whose outputs are in it
 * @param bound checksum of what its prose was checked against
 * @param notebook with outputs and prose
 * @returns with the text and checksum of the file to write
 */
export function readyNotebook(
  file: NotebookFile,
  run: KeptRun,
  bound: string,
  notebook: Notebook,
): ReadyNotebook {
  const text = formatNotebook(notebook);
  return {
    file,
    run,
    bound,
    notebook,
    text,
    sha256: sha256(text),
    title: titleOf(notebook, file.slug),
  };
}

/**
 * What a page rests on.
 *
 * @param ready the notebook
 * @param pages all pages of the site
 * @param project as it stands
 * @param makers paths of the modules that build pages
 * @returns checksums by words that can be printed
 */
export function pageInputs(
  ready: ReadyNotebook,
  pages: readonly PageLink[],
  project: ProjectState,
  makers: Pick<Makers, "builder" | "live">,
): Inputs {
  return {
    "the notebook's text and outputs": ready.sha256,
    "the list of pages": sha256(JSON.stringify(pages)),
    "notebooks/publication.json": publicationSha256(project.publication),
    "the data": sha256(JSON.stringify(ready.run.data)),
    ...project.common,
    ...moduleInputs(project, { entries: [makers.builder, makers.live] }).inputs,
  };
}

/**
 * Builds a page and keeps it.
 *
 * @param ready a notebook that is not `null` inside
 * @param pages all pages of the site
 * @param inputs what the page rests on
 * @param how the project, the cache that takes the page, and its builder
 * @returns the page as kept
 */
export async function buildAndKeep(
  ready: ReadyNotebook & { readonly notebook: Notebook },
  pages: readonly PageLink[],
  inputs: Inputs,
  how: { readonly project: ProjectState; readonly cache: Cache; readonly build: PageBuilder },
): Promise<KeptPage> {
  const { project, cache } = how;
  const stamp: Stamp = {
    notebook: ready.file.file,
    notebookSha256: notebookSha256(ready.notebook),
    versions: versionsOf(project.importMap, new Set(ready.run.packages), project.deno),
    data: dataRead(project.root, ready.run),
  };
  const { slug } = ready.file;
  const { publication } = project;
  const built = await how.build({ slug, notebook: ready.notebook, stamp, pages, publication });
  const files = [
    { path: `${slug}.html`, bytes: new TextEncoder().encode(built.html) },
    ...built.files,
  ].map((one) => ({ file: one.path, sha256: cache.keep(one.bytes) }));
  const kept: KeptPage = {
    notebookFile: ready.sha256,
    bound: ready.bound,
    notebookSha256: stamp.notebookSha256,
    inputs,
    title: ready.title,
    card: built.card,
    files,
  };
  cache.write(pageRecord(ready.file), kept);
  return kept;
}
