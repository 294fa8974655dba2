/**
 * Opens a project for one report at a time: finds its folder, takes its lock, and tidies what a stopped report left.
 *
 * @module
 */
import { join } from "node:path";
import { UsageError } from "../base/errors.ts";
import { findRoot } from "../read/find-root.ts";
import { recoverSite } from "./swap-site.ts";

/** The user or the system asked the report to stop. */
export class StoppedError extends Error {
  constructor() {
    super("Stopped.");
    this.name = "StoppedError";
  }
}

/** A project that nobody else publishes while this is open. */
export interface OpenProject {
  /** Absolute path of its folder. */
  readonly root: string;
  /** Raised when the user or the system asks the report to stop. */
  readonly signal: AbortSignal;
  /** Gives the lock back; the end of the process does so too. */
  close(): void;
}

/**
 * Opens the project around the current folder. Waits for a report that runs already.
 *
 * @param say tells the user why it waits
 * @returns its folder, a signal to stop by, and what gives the lock back
 * @throws UsageError outside a project
 */
export async function openProject(say: (line: string) => void): Promise<OpenProject> {
  const root = findRoot(Deno.cwd());
  if (root === null) {
    throw new UsageError(
      "Cannot find the project: no deno.json here or above. Change to the project's folder first.",
    );
  }
  Deno.mkdirSync(join(root, ".site"), { recursive: true });
  const lock = Deno.openSync(join(root, ".site", "lock"), { create: true, write: true });
  // The system drops this lock when the process ends, however it ends.
  if (!lock.tryLockSync(true)) {
    say("Another report is running in this project: waiting for it to end.");
    await lock.lock(true);
  }
  if (recoverSite(root)) say("A report was stopped while it put the site in place: finished now.");
  const stop = new AbortController();
  const asked = () => stop.abort(new StoppedError());
  for (const name of ["SIGINT", "SIGTERM", "SIGHUP"] as const) {
    try {
      Deno.addSignalListener(name, asked);
    } catch {
      // This system does not know the signal.
    }
  }
  return { root, signal: stop.signal, close: () => lock.close() };
}
