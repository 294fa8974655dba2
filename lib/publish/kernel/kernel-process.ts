/**
 * The process of a kernel: the running Deno itself, never through a launcher, so that ending it ends it.
 *
 * @module
 */
import type { Connection } from "./connection.ts";

/** How to start a kernel. */
export interface KernelOptions {
  /** Folder in which the notebook runs; `deno.json` is found from there upwards. */
  readonly cwd: string;
  /** Most memory for JavaScript, in megabytes; the engine's own limit when absent. */
  readonly heapMegabytes?: number;
  /** Unix socket of a permission broker that listens already. */
  readonly brokerPath?: string | null;
  /** Ends the process at once when it is raised. */
  readonly signal?: AbortSignal;
}

/** How a kernel's process ended. */
export interface KernelExit {
  readonly code: number;
  readonly signal: string | null;
  /** What it said on standard error, without Deno's notes on unstable features. */
  readonly said: string;
}

/** A running kernel. */
export class KernelProcess {
  /** Settles when the process is gone. */
  readonly exit: Promise<KernelExit>;
  readonly #child: Deno.ChildProcess;
  #ended = false;

  private constructor(child: Deno.ChildProcess) {
    this.#child = child;
    this.exit = (async () => {
      const [status, said] = await Promise.all([child.status, collectTail(child.stderr)]);
      this.#ended = true;
      return { code: status.code, signal: status.signal, said: withoutNotes(said) };
    })();
  }

  /** Starts `deno jupyter --kernel` on a connection file that is written to `folder`. */
  static async spawn(
    connection: Connection,
    folder: string,
    options: KernelOptions,
  ): Promise<KernelProcess> {
    const file = `${folder}/connection.json`;
    await Deno.writeTextFile(file, JSON.stringify(connection), { mode: 0o600 });
    const child = new Deno.Command(Deno.execPath(), {
      args: ["jupyter", "--kernel", "--conn", file],
      cwd: options.cwd,
      env: {
        NO_COLOR: "1",
        TZ: "UTC",
        LANG: "en_US.UTF-8",
        LC_ALL: "en_US.UTF-8",
        DENO_NO_UPDATE_CHECK: "1",
        // Packages come from what is installed: an import of anything else must not go and ask a registry.
        NPM_CONFIG_REGISTRY: "http://127.0.0.1:9/",
        JSR_URL: "http://127.0.0.1:9/",
        ...(options.heapMegabytes === undefined
          ? {}
          : { DENO_V8_FLAGS: `--max-old-space-size=${options.heapMegabytes}` }),
        ...(options.brokerPath ? { DENO_PERMISSION_BROKER_PATH: options.brokerPath } : {}),
      },
      stdin: "null",
      stdout: "null",
      stderr: "piped",
    }).spawn();
    const process = new KernelProcess(child);
    const stop = () => process.kill();
    if (options.signal?.aborted) stop();
    options.signal?.addEventListener("abort", stop);
    process.exit.then(() => options.signal?.removeEventListener("abort", stop));
    return process;
  }

  /** Ends the process at once, whatever it is doing. */
  kill(): void {
    if (this.#ended) return;
    try {
      this.#child.kill("SIGKILL");
    } catch {
      // Gone in the meantime.
    }
  }
}

/** The last 16,000 characters of a stream. */
async function collectTail(stream: ReadableStream<Uint8Array>): Promise<string> {
  let text = "";
  for await (const chunk of stream.pipeThrough(new TextDecoderStream() as never)) {
    text = (text + chunk).slice(-16_000);
  }
  return text;
}

function withoutNotes(said: string): string {
  // deno-lint-ignore no-control-regex -- colours that a crash report may carry
  const plain = said.replace(/\x1b\[[0-9;]*m/g, "");
  return plain.split("\n").filter((line) => !/unstable|experimental/i.test(line)).join("\n").trim();
}
