/**
 * Opens a project for one report at a time: finds its folder, takes its lock, and tidies what a stopped report left.
 *
 * @module
 */
import { dirname, join } from "node:path";
import { UsageError } from "../base/errors.ts";
import { recoverSite } from "./swap-site.ts";

/** A project that nobody else publishes while this is open. */
export interface OpenProject {
  /** Absolute path of its folder. */
  readonly root: string;
  /** Raised when the user or the system asks the report to stop. */
  readonly signal: AbortSignal;
  /** Gives the lock back; the end of the process does so too. */
  close(): void;
}

/** The nearest folder with a `deno.json`, from a folder upwards. */
export function projectFolder(from: string): string {
  for (let folder = from;; folder = dirname(folder)) {
    try {
      if (Deno.statSync(join(folder, "deno.json")).isFile) return folder;
    } catch {
      // Not here: one folder up.
    }
    if (dirname(folder) === folder) {
      throw new UsageError(
        `Cannot find the project: no deno.json in ${from} or above. Change to the project's folder first.`,
      );
    }
  }
}

/**
 * Opens the project around the current folder. Waits for a report that runs already.
 *
 * @param say tells the user why it waits
 */
export async function openProject(say: (line: string) => void): Promise<OpenProject> {
  const root = projectFolder(Deno.cwd());
  Deno.mkdirSync(join(root, ".site"), { recursive: true });
  const lock = Deno.openSync(join(root, ".site", "lock"), { create: true, write: true });
  // The system drops this lock when the process ends, however it ends.
  if (!lock.tryLockSync(true)) {
    say("Another report is running in this project: waiting for it to end.");
    await lock.lock(true);
  }
  if (recoverSite(root)) say("A report was stopped while it put the site in place: finished now.");
  const stop = new AbortController();
  const asked = () => stop.abort(new Error("Stopped."));
  for (const name of ["SIGINT", "SIGTERM", "SIGHUP"] as const) {
    try {
      Deno.addSignalListener(name, asked);
    } catch {
      // This system does not know the signal.
    }
  }
  return { root, signal: stop.signal, close: () => lock.close() };
}
