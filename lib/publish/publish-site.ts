/**
 * Runs what must be run, builds what must be built, and puts the whole site in place: the work behind `task report`.
 *
 * @module
 */
import { join } from "node:path";
import { type ProjectState, projectState } from "./cache-key.ts";
import { type KeptPage, openCache } from "./cache.ts";
import { gitState } from "./git-state.ts";
import { CHANGES_RECORD, makeChanges } from "./make-changes.ts";
import { makeIndex, makePages } from "./make-pages.ts";
import { listNotebooks, selectNotebooks } from "./notebook-file.ts";
import { planTurn, runRecord, type Turn } from "./notebook-turn.ts";
import { pageRecord, type ReadyNotebook } from "./page-turn.ts";
import type { PageLink } from "./page/page-types.ts";
import type { Progress } from "./progress.ts";
import { readyNotebooks } from "./ready-notebooks.ts";
import type { ReportDone, ReportRequest } from "./report-request.ts";
import { holds, writeSite } from "./site.ts";
import { versionsOf } from "./stamp.ts";
import { checkOut, removeOldSites, siteInPlace, swapSite } from "./swap-site.ts";
import { type SiteOrigin, wholeSite, ZIP_RECORD } from "./whole-site.ts";
import { writeAtomically } from "./write-atomically.ts";

/**
 * Why a notebook would run, by file; an empty list where its outputs can be reused.
 *
 * @param request folder, names of notebooks (none means all), and what would run them
 * @returns one entry a notebook, in reading order
 */
export function explainReport(
  request: Pick<ReportRequest, "root" | "names" | "makers">,
): { readonly file: string; readonly why: readonly string[] }[] {
  const { root, makers } = request;
  const cache = openCache(join(root, ".site", "cache"));
  const project = projectState(root);
  const all = listNotebooks(root);
  const chosen = selectNotebooks(all, request.names);
  return all.filter((one) => chosen.has(one.file)).map((one) => {
    const turn = planTurn(one, project, cache, { runner: makers.runner, fresh: false });
    return { file: one.file, why: turn.why };
  });
}

async function siteOrigin(project: ProjectState): Promise<SiteOrigin> {
  const { commit, changed } = await gitState(project.root);
  return {
    commit,
    changedSinceCommit: changed,
    platform: Deno.build.target,
    versions: versionsOf(project.importMap),
  };
}

/** Writes notebooks back, one file at a time; a file that somebody changed in the meantime is left alone. */
function writeBack(ready: readonly ReadyNotebook[], progress: Progress): string[] {
  return ready.filter(({ file, text }) => {
    if (text === null || text === file.text) return false;
    if (Deno.readTextFileSync(file.path) !== file.text) {
      progress.say(
        `${file.file} was changed while the report ran: its outputs were not written back`,
      );
      return false;
    }
    return writeAtomically(file.path, text);
  }).map(({ file }) => file.file);
}

/**
 * Makes the whole site true and puts it in place. Nothing that a reader or the user sees changes before everything has
 * succeeded; then the site is swapped in whole and the notebooks are written back with their outputs.
 *
 * @param request what is asked
 * @returns what was done
 * @throws DataError when a notebook, its data or its prose has a fault; the last site stays in place
 */
export async function publishSite(request: ReportRequest): Promise<ReportDone> {
  const { root, makers, progress } = request;
  checkOut(root);
  const all = listNotebooks(root);
  const chosen = selectNotebooks(all, request.names);
  const cache = openCache(join(root, ".site", "cache"));
  const project = projectState(root);
  const turns = all.map((notebook) => {
    const fresh = (request.fresh || request.twice) && chosen.has(notebook.file);
    return planTurn(notebook, project, cache, { runner: makers.runner, fresh });
  });
  const standing = new Map<Turn, KeptPage>();
  for (const turn of turns) {
    const page = cache.read<KeptPage>(pageRecord(turn.notebook));
    if (chosen.has(turn.notebook.file) || page === null || turn.why.length === 0) continue;
    if (!page.files.every((file) => cache.has(file.sha256))) continue;
    standing.set(turn, page);
    progress.say(`${turn.notebook.file} stays as published before, though ${turn.why[0]}`);
  }
  const active = turns.filter((turn) => !standing.has(turn));
  const { ready, ran } = await readyNotebooks(request, active, project, cache);
  const links = turns.map((turn): PageLink => ({
    slug: turn.notebook.slug,
    title: standing.get(turn)?.title ?? ready[active.indexOf(turn)]!.title,
  }));
  const built = await makePages(request, ready, links, active, project, cache);
  const pages = turns.map((turn) => standing.get(turn) ?? built[active.indexOf(turn)]!);
  const asTheyShallBe = turns.map((turn) => ({
    file: turn.notebook,
    text: ready[active.indexOf(turn)]?.text ?? turn.notebook.text,
  }));
  const filesRead = turns.flatMap((turn) =>
    (ready[active.indexOf(turn)]?.run ?? turn.kept)?.filesRead ?? []
  );
  const sources = { root, notebooks: asTheyShallBe, filesRead };
  const changes = await makeChanges(makers, sources, project, cache);
  const site = wholeSite({
    notebooks: all,
    pages,
    more: [
      await makeIndex(makers, pages, project, cache, changes.length > 0),
      ...changes,
    ],
    sources,
    origin: await siteOrigin(project),
    publication: project.publication,
  }, cache);
  request.signal.throwIfAborted();
  const swapped = !holds(join(root, "out"), site);
  if (swapped) {
    const id = writeSite(root, site, cache);
    swapSite(root, id, request.links === undefined ? {} : { links: request.links });
  }
  // Also where a report was stopped right after its swap.
  removeOldSites(root, siteInPlace(root));
  const written = writeBack(ready, progress);
  const records = all.flatMap((one) => [runRecord(one), pageRecord(one)]);
  const outputs = all.flatMap((one) =>
    cache.read<{ outputs: string }>(runRecord(one))?.outputs ?? []
  );
  cache.forget(
    new Set([...site.map((one) => one.sha256), ...outputs]),
    new Set([...records, "index-page", ZIP_RECORD, CHANGES_RECORD]),
  );
  return { ran, pages: pages.length, swapped, written };
}
