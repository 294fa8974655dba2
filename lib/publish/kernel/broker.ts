/**
 * A second lock on the notebook's permissions: Deno asks this broker, which lives in the publisher, before each access.
 *
 * It exists where unix sockets do; elsewhere the revocation in the prelude stands alone. Its refusals carry words of ours
 * to the notebook's error message.
 *
 * Source: Deno's permission broker (docs.deno.com, `DENO_PERMISSION_BROKER_PATH`; called experimental there).
 *
 * @module
 */

/** One question of the kernel. */
interface Question {
  readonly id: number;
  readonly permission: string;
  readonly value: string | null;
}

/** Decides on permissions: open until `lock`, strict after it. */
export interface PermissionBroker {
  readonly path: string;
  /** From here on: no writing, no network, no programs, no native code but that of installed packages. */
  lock(): void;
  /** Paths that were asked for reading since the lock, as asked. */
  readonly readsAsked: ReadonlySet<string>;
  close(): void;
}

/**
 * Starts a broker on a unix socket.
 *
 * @param folder an existing folder for the socket, which only this user can enter
 * @returns the broker, or `null` where there are no unix sockets
 */
export function startBroker(folder: string): PermissionBroker | null {
  if (Deno.build.os === "windows") return null;
  const path = `${folder}/broker.sock`;
  const listener = Deno.listen({ transport: "unix", path });
  const connections = new Set<Deno.Conn>();
  const readsAsked = new Set<string>();
  let locked = false;
  (async () => {
    for await (const connection of listener) {
      connections.add(connection);
      serve(connection, (question) => {
        if (!locked) return null;
        if (question.permission === "read" && question.value !== null) {
          readsAsked.add(question.value);
        }
        return refusal(question);
      }).finally(() => connections.delete(connection));
    }
  })().catch(() => {});
  return {
    path,
    lock: () => locked = true,
    readsAsked,
    close: () => {
      listener.close();
      for (const connection of connections) connection.close();
    },
  };
}

/**
 * Why a locked kernel may not do this; `null` when it may.
 *
 * @param question the permission (read, write, net, ...) and what it is wanted for
 * @returns a sentence for the reader
 */
export function refusal(question: Pick<Question, "permission" | "value">): string | null {
  const value = question.value ?? "";
  switch (question.permission) {
    case "read":
    case "env":
    case "sys":
      return null;
    case "ffi":
      return /[\\/]node_modules[\\/].*\.node$/.test(value) && !value.includes("..")
        ? null
        : refusalWords("ffi", value);
    default:
      return refusalWords(question.permission, value);
  }
}

/**
 * A refusal in plain words, by the permission that was asked for.
 *
 * @param permission by the runtime's name, such as `net`
 * @param value the path, host or program asked for; may be empty
 * @returns one sentence
 */
export function refusalWords(permission: string, value: string): string {
  const rule = "notebooks may only read; the publisher writes everything";
  switch (permission) {
    case "write":
      return `This notebook tried to write ${value || "a link"}; ${rule}`;
    case "net":
      return `This notebook tried to reach ${
        value || "the network"
      }; notebooks may only read files, so that a report comes out the same without a network`;
    case "import":
      return `This notebook tried to import from ${
        value === "" || value.startsWith("127.0.0.1") ? "the network" : value
      }; notebooks may only import what the project has installed`;
    case "run":
      return `This notebook tried to start ${
        value || "a program"
      }; notebooks may only read files and compute`;
    case "ffi":
      return `This notebook tried to load native code ${value}; notebooks may only use that of installed packages`;
    default:
      return `This notebook asked for ${permission} ${value}; ${rule}`.replace(" ;", ";");
  }
}

async function serve(
  connection: Deno.Conn,
  decide: (question: Question) => string | null,
): Promise<void> {
  const encoder = new TextEncoder();
  let held = "";
  try {
    for await (const chunk of connection.readable.pipeThrough(new TextDecoderStream() as never)) {
      const lines = (held + chunk).split("\n");
      held = lines.pop() ?? "";
      for (const line of lines) {
        const question: Question = JSON.parse(line);
        const reason = decide(question);
        const answer = reason === null
          ? { id: question.id, result: "allow" }
          : { id: question.id, result: "deny", reason };
        await connection.write(encoder.encode(`${JSON.stringify(answer)}\n`));
      }
    }
  } catch {
    // The kernel went away, or we closed: it can ask no more.
  }
}
