/**
 * Builds the pages of a site and its index, or takes them from the cache.
 *
 * @module
 */
import type { FileChecksum } from "../base/session.ts";
import { moduleInputs, type ProjectState, whatMoved } from "./cache-key.ts";
import type { Cache, KeptPage } from "./cache.ts";
import { notebookAfter, type Turn } from "./notebook-turn.ts";
import { buildAndKeep, pageInputs, pageRecord, type ReadyNotebook } from "./page-turn.ts";
import type { PageLink } from "./page/page-types.ts";
import { publicationSha256 } from "./publication.ts";
import type { Makers, ReportRequest } from "./report-request.ts";

/**
 * Builds or reuses the page of each notebook.
 *
 * @param request what builds pages, and the signal to stop
 * @param ready notebooks with outputs, in reading order
 * @param links titles and addresses of all pages
 * @param turns what each notebook rests on, in the same order
 * @param project as it stands
 * @param cache where pages are kept
 * @returns one page a notebook, in order
 * @throws Error when outputs of a notebook are no longer in the cache
 */
export async function makePages(
  request: Pick<ReportRequest, "makers" | "signal">,
  ready: readonly ReadyNotebook[],
  links: readonly PageLink[],
  turns: readonly Turn[],
  project: ProjectState,
  cache: Cache,
): Promise<KeptPage[]> {
  const { makers } = request;
  const pages: KeptPage[] = [];
  for (const [index, one] of ready.entries()) {
    request.signal.throwIfAborted();
    const inputs = pageInputs(one, links, project, makers);
    const kept = cache.read<KeptPage>(pageRecord(one.file));
    const whole = kept !== null && whatMoved(kept.inputs, inputs).length === 0 &&
      kept.files.every((file) => cache.has(file.sha256));
    if (whole) {
      pages.push(kept);
      continue;
    }
    const notebook = one.notebook ?? notebookAfter(turns[index]!, one.run, cache);
    if (notebook === null) throw new Error(`Cannot build ${one.file.slug}.html: outputs are lost`);
    const how = { project, cache, build: await makers.build() };
    pages.push(await buildAndKeep({ ...one, notebook }, links, inputs, how));
  }
  return pages;
}

/**
 * The index, built anew only when a card or the builder changed.
 *
 * @param makers what builds the index
 * @param pages in reading order
 * @param project as it stands
 * @param cache where the index is kept
 * @param changes whether the site has a page of changes to link to
 * @returns name and checksum of `index.html`
 */
export async function makeIndex(
  makers: Makers,
  pages: readonly KeptPage[],
  project: ProjectState,
  cache: Cache,
  changes: boolean,
): Promise<FileChecksum> {
  const inputs = {
    cards: JSON.stringify(pages.map((page) => page.card)),
    changes: String(changes),
    "notebooks/publication.json": publicationSha256(project.publication),
    ...project.common,
    ...moduleInputs(project, { entries: [makers.builder] }).inputs,
  };
  const kept = cache.read<{ inputs: Record<string, string>; file: FileChecksum }>("index-page");
  if (kept !== null && whatMoved(kept.inputs, inputs).length === 0 && cache.has(kept.file.sha256)) {
    return kept.file;
  }
  const html = await (await makers.buildIndex())(
    pages.map((page) => page.card),
    project.publication,
    changes,
  );
  const file = { file: "index.html", sha256: cache.keep(new TextEncoder().encode(html)) };
  cache.write("index-page", { inputs, file });
  return file;
}
