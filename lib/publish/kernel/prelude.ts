/**
 * What runs in the kernel before, between and after a notebook's own cells.
 *
 * @module
 */

/** Where the prelude keeps its one function, out of the notebook's way. */
const BARRIER = 'Symbol.for("lakeproof.barrier")';

/** Type of the message that the barrier sends besides what it prints: displays and printed text take different ways. */
export const BARRIER_MESSAGE = "lakeproof_barrier";

/** Permissions that the prelude takes away for good. Reading stays; native code is left to the broker, since installed packages may load theirs late. */
const REVOKED = ["net", "run", "write", "import"] as const;

/**
 * The first, silent cell: errors that no cell awaits are kept for the barrier, the kernel ends when the publisher is
 * gone, and the notebook may from now on neither write nor reach the network nor start programs.
 */
export const PRELUDE = `(() => {
  const events = [];
  const keep = (event, error) => {
    event.preventDefault();
    const known = error instanceof Error;
    events.push({
      name: known ? error.name : "Error",
      message: known ? error.message : String(error),
      traceback: known ? String(error.stack).split("\\n") : [],
    });
  };
  globalThis.addEventListener("unhandledrejection", (event) => keep(event, event.reason));
  globalThis.addEventListener("error", (event) => keep(event, event.error ?? event.message));
  const { log } = console;
  const { jupyter } = Deno;
  const broadcast = jupyter.broadcast.bind(jupyter);
  const later = globalThis.setTimeout;
  Object.defineProperty(globalThis, ${BARRIER}, {
    value: async (token, note = null) => {
      await new Promise((resolve) => later(resolve, 2));
      await broadcast(${JSON.stringify(BARRIER_MESSAGE)}, { token });
      log(token + JSON.stringify({ events: events.splice(0), note }) + token);
    },
  });
  const publisher = Deno.ppid;
  Deno.unrefTimer(setInterval(() => {
    if (Deno.ppid !== publisher) Deno.exit(1);
  }, 500));
  for (const name of ${JSON.stringify(REVOKED)}) Deno.permissions.revokeSync({ name });
})();`;

/** An error that happened beside a cell and not in it. */
export interface LooseError {
  readonly name: string;
  readonly message: string;
  readonly traceback: readonly string[];
}

/** What a barrier prints between two tokens. */
export interface BarrierReport {
  readonly events: readonly LooseError[];
  readonly note: unknown;
}

/**
 * A cell that prints what lies between two tokens: everything the kernel sent before it belongs to the cell before.
 *
 * @param token a random text that no cell prints
 * @param note an expression whose value is reported along, as JSON
 * @returns one statement to send as a cell
 */
export function barrierCode(token: string, note = "null"): string {
  return `await globalThis[${BARRIER}](${JSON.stringify(token)}, ${note});`;
}

/** The note that tells which data files the notebook's library has read; `null` when it has no such library. */
export const FILES_READ_NOTE =
  `await import("lakeproof/read/open-session.ts").then((reader) => reader.filesRead(), () => null)`;
