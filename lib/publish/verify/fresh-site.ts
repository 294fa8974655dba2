/**
 * The site that a published folder's source gives today: every notebook run in a clean kernel, its prose filled anew, its
 * pages built.
 *
 * Where a report stops at the first fault, this goes on: a check has to name all of them.
 *
 * @module
 */
import { join } from "node:path";
import { DataError } from "../../base/errors.ts";
import type { FileChecksum } from "../../base/session.ts";
import { projectState } from "../cache-key.ts";
import { type Cache, type KeptPage, type KeptRun, openCache } from "../cache.ts";
import { makeChanges } from "../make-changes.ts";
import { makeIndex, makePages } from "../make-pages.ts";
import { listNotebooks, titleOf } from "../notebook-file.ts";
import { notebookAfter, planTurn, takeTurn, type Turn } from "../notebook-turn.ts";
import { type ReadyNotebook, readyNotebook } from "../page-turn.ts";
import type { Progress } from "../progress.ts";
import { bareNumbers } from "../prose-numbers.ts";
import { bindProse, describeFaults } from "../prose-values.ts";
import type { Makers } from "../report-request.ts";
import { SOURCE } from "../source-files.ts";
import { versionsOf } from "../stamp.ts";
import { type SiteOrigin, wholeSite } from "../whole-site.ts";
import type { CheckFinding } from "./finding-of-check.ts";

/** How to run the source. */
export interface FreshRequest {
  /** Absolute path of the laid out source. */
  readonly root: string;
  readonly makers: Makers;
  /** What the folder says of its place and time, which no run can find out again. */
  readonly origin: Omit<SiteOrigin, "versions">;
  /** The version of Deno to name in stamps. */
  readonly deno: string;
  /** Check one page only, by its name without ending; `null` for all. */
  readonly slug: string | null;
  readonly signal: AbortSignal;
  readonly progress: Progress;
}

/** A fresh site, as far as it could be made. */
export interface FreshSite {
  /** Every file; only what belongs to pages that could be built. */
  readonly files: readonly FileChecksum[];
  /** Whether every page of the site was built anew, so that the files above are all that there may be. */
  readonly whole: boolean;
  readonly cache: Cache;
  /** Notebooks that stop, prose that is not what the fresh answers say. */
  readonly findings: readonly CheckFinding[];
  /** Names of the pages that were built. */
  readonly pages: readonly string[];
  /** Notebooks that had to be started a second time. */
  readonly notes: readonly string[];
}

interface Done {
  readonly turn: Turn;
  readonly ready: ReadyNotebook;
}

/**
 * Runs the source and builds its site.
 *
 * @param request project, what makes its parts, and whom to tell
 * @returns the site's files, and what could not be made
 */
export async function freshSite(request: FreshRequest): Promise<FreshSite> {
  const { root, makers, slug, progress, signal } = request;
  const cache = openCache(join(root, ".site", "cache"));
  const project = projectState(root, request.deno);
  const findings: CheckFinding[] = [];
  const notes: string[] = [];
  const all = listNotebooks(root);
  const turns = all.map((notebook) =>
    attempt(
      `${SOURCE}/notebooks/${notebook.file}`,
      findings,
      () => planTurn(notebook, project, cache, { runner: makers.runner, fresh: false }),
    )
  );
  const links = turns.map((turn, index) => ({
    slug: all[index]!.slug,
    title: turn === null ? all[index]!.slug : titleOf(turn.parsed, all[index]!.slug),
  }));
  const done: Done[] = [];
  const pages: KeptPage[] = [];
  for (const [index, turn] of turns.entries()) {
    if (turn === null || (slug !== null && turn.notebook.slug !== slug)) continue;
    const file = `${SOURCE}/notebooks/${turn.notebook.file}`;
    progress.begin(turn.notebook.file, index + 1, turns.length, "");
    const start = performance.now();
    const take = async () =>
      await takeTurn(turn, {
        project,
        cache,
        run: await makers.run(),
        signal,
        onCell: progress.cell,
        twice: false,
        faults: Promise.resolve([]),
      });
    const run = turn.why.length === 0 ? turn.kept : await runTwice(file, take, findings, notes);
    progress.end(
      run === null ? "stopped" : `ran in ${((performance.now() - start) / 1000).toFixed(1)} s`,
    );
    const after = run === null ? null : notebookAfter(turn, run, cache);
    if (run === null || after === null) continue;
    const faults = [...bindProse(after).faults, ...bareNumbers(after)];
    if (faults.length > 0) {
      findings.push({ kind: "prose", file, what: describeFaults(turn.notebook.file, faults) });
    }
    const { notebook } = bindProse(after, { refill: true });
    const ready = readyNotebook(turn.notebook, run, "", notebook);
    const built = await running(
      file,
      findings,
      async () => await makePages({ makers, signal }, [ready], links, [turn], project, cache),
    );
    if (built === null) continue;
    done.push({ turn, ready });
    pages.push(...built);
  }
  const runs = new Map(done.map(({ turn, ready }) => [turn.notebook.file, ready]));
  const sources = {
    root,
    notebooks: all.map((file) => ({ file, text: runs.get(file.file)?.text ?? file.text })),
    filesRead: filesRead(done.map(({ ready }) => ready.run)),
  };
  const changes = await makeChanges(makers, sources, project, cache);
  const site = wholeSite({
    notebooks: done.map(({ turn }) => turn.notebook),
    pages,
    more: [
      await makeIndex(makers, pages, project, cache, changes.length > 0),
      ...changes,
    ],
    sources,
    publication: project.publication,
    origin: { ...request.origin, versions: versionsOf(project.importMap, undefined, project.deno) },
  }, cache);
  const whole = done.length === all.length;
  const built = done.map(({ turn }) => turn.notebook.slug);
  return { files: site, whole, cache, findings, pages: built, notes };
}

/**
 * A run, started once more where it stops: on a machine that is short of something a kernel may fail for reasons that are
 * not the notebook's. One that stops of itself stops both times, and is told.
 */
async function runTwice(
  file: string,
  take: () => Promise<KeptRun>,
  findings: CheckFinding[],
  notes: string[],
): Promise<KeptRun | null> {
  const first: CheckFinding[] = [];
  const run = await running(file, first, take);
  if (run !== null) return run;
  const again = await running(file, findings, take);
  if (again !== null) {
    notes.push(`${file} stopped once, and ran to its end when started again: ${first[0]?.what}`);
  }
  return again;
}

function filesRead(runs: readonly KeptRun[]): string[] {
  return [...new Set(runs.flatMap((run) => run.filesRead))];
}

function attempt<T>(file: string, findings: CheckFinding[], what: () => T): T | null {
  try {
    return what();
  } catch (error) {
    if (!(error instanceof Error)) throw error;
    findings.push({ kind: "run", file, what: error.message });
    return null;
  }
}

async function running<T>(
  file: string,
  findings: CheckFinding[],
  what: () => Promise<T>,
): Promise<T | null> {
  try {
    return await what();
  } catch (error) {
    if (!(error instanceof Error) || error.name === "StoppedError") throw error;
    const what = error instanceof DataError
      ? error.message
      : `cannot be published: ${error.message}`;
    findings.push({ kind: "run", file, what });
    return null;
  }
}
