/**
 * Brings every notebook to the state in which it is published: outputs of a run that is still true, prose bound to them.
 *
 * @module
 */
import { join } from "node:path";
import { DataError } from "../base/errors.ts";
import { moduleInputs, type ProjectState, whatMoved } from "./cache-key.ts";
import type { Cache, KeptPage, KeptRun } from "./cache.ts";
import { sha256 } from "./checksum.ts";
import type { Notebook } from "./notebook.ts";
import { notebookAfter, takeTurn, type Turn } from "./notebook-turn.ts";
import { pageRecord, type ReadyNotebook, readyNotebook } from "./page-turn.ts";
import type { ReportRequest } from "./report-request.ts";

/** A notebook that needs no word: run, prose and file are as they were published last. */
function asPublished(turn: Turn, run: KeptRun, bound: string, cache: Cache): ReadyNotebook | null {
  const page = cache.read<KeptPage>(pageRecord(turn.notebook));
  if (page?.notebookFile !== turn.notebook.sha256 || page.bound !== bound) return null;
  if (!cache.has(run.outputs)) return null;
  const { notebook: file } = turn;
  return { file, run, bound, notebook: null, text: null, sha256: file.sha256, title: page.title };
}

/**
 * What the type checker has against the cells of each notebook that will run with other code than before, in words.
 * Works beside the kernels. A kept run has passed it, so other data alone need no check.
 */
async function checkTypes(
  { makers }: ReportRequest,
  turns: readonly Turn[],
): Promise<Map<string, string[]>> {
  const said = new Map<string, string[]>();
  const toRun = turns.filter(({ kept, code, why }) =>
    why.length > 0 && (kept === null || whatMoved(kept.code, code).length > 0)
  );
  if (toRun.length === 0) return said;
  const check = await makers.check();
  const named = toRun.map((turn) => ({ file: turn.notebook.file, notebook: turn.parsed }));
  for (const { file, words } of await check(named)) {
    said.set(file, [...said.get(file) ?? [], words]);
  }
  return said;
}

/**
 * Runs or reuses every notebook and binds its prose; gathers what is wrong with prose over all notebooks.
 *
 * @param request of the report
 * @param turns as planned, in reading order
 * @param project as it stands
 * @param cache where runs and pages are kept
 * @returns all notebooks in the same order, and how many of them ran
 * @throws DataError with every fault in the prose of every notebook
 */
export async function readyNotebooks(
  request: ReportRequest,
  turns: readonly Turn[],
  project: ProjectState,
  cache: Cache,
): Promise<{ ready: ReadyNotebook[]; ran: number }> {
  const { progress, makers, signal } = request;
  const checked = checkTypes(request, turns);
  // Told by the turn that waits for it; a turn that fails before must not make this fail too.
  checked.catch(() => {});
  const ready: ReadyNotebook[] = [];
  const faults: string[] = [];
  // Prose was checked against these outputs by these modules.
  const binder = JSON.stringify(
    moduleInputs(project, {
      entries: ["prose-values.ts", "prose-numbers.ts"]
        .map((name) => join(project.root, "lib", "publish", name)),
    }).inputs,
  );
  const boundBy = (run: KeptRun) => sha256(binder + run.outputs);
  let ran = 0;
  for (const [index, turn] of turns.entries()) {
    signal.throwIfAborted();
    const { file } = turn.notebook;
    let run = turn.kept;
    let after: Notebook | null = null;
    if (run !== null && turn.why.length === 0) {
      const same = asPublished(turn, run, boundBy(run), cache);
      if (same !== null) {
        ready.push(same);
        continue;
      }
      after = notebookAfter(turn, run, cache);
    }
    if (after === null || run === null) {
      const more = turn.why.length > 1 ? ` and ${turn.why.length - 1} more` : "";
      progress.begin(file, index + 1, turns.length, `${turn.why[0] ?? "outputs lost"}${more}`);
      const start = performance.now();
      try {
        run = await takeTurn(turn, {
          project,
          cache,
          run: await makers.run(),
          signal,
          onCell: progress.cell,
          twice: request.twice,
          faults: checked.then((all) => all.get(file) ?? []),
        });
      } catch (error) {
        progress.end("stopped");
        throw error;
      }
      progress.end(`ran in ${((performance.now() - start) / 1000).toFixed(1)} s`);
      after = notebookAfter(turn, run, cache)!;
      ran++;
    }
    const { bindProse, describeFaults } = await import("./prose-values.ts");
    const bound = bindProse(after, { refill: request.refill });
    const { bareNumbers } = await import("./prose-numbers.ts");
    const found = [...bound.faults, ...bareNumbers(bound.notebook)];
    if (found.length > 0) faults.push(describeFaults(file, found));
    ready.push(readyNotebook(turn.notebook, run, boundBy(run), bound.notebook));
  }
  if (faults.length > 0) throw new DataError(faults.join("\n\n"));
  return { ready, ran };
}
