/**
 * A Jupyter client for one Deno kernel: cells go in one at a time, and each comes back with all of its outputs.
 *
 * Two habits of this kernel shape it. Its `idle` is not the end of a cell: results and printed lines come after it, even
 * under the name of the next request; so each cell is followed by a barrier, a silent cell that prints a random token,
 * and all that was broadcast before the token belongs to the cell. And it ends without a word when a cell makes it; so
 * every wait races with the end of the process and with the cell's time limit.
 *
 * @module
 */
import type { Output } from "../notebook.ts";
import type { KernelLink } from "./link.ts";
import { openLink } from "./open-link.ts";
import { errorOutput, outputsOf } from "./outputs.ts";
import type { KernelExit, KernelOptions } from "./kernel-process.ts";
import { barrierCode, type BarrierReport, PRELUDE } from "./prelude.ts";

/** How a cell came to its end. */
export type CellEnd =
  | { readonly how: "done" }
  | {
    readonly how: "error";
    readonly name: string;
    readonly message: string;
    /** Empty when the kernel refused the cell without saying why. */
    readonly traceback: readonly string[];
  }
  | { readonly how: "time limit"; readonly seconds: number }
  | { readonly how: "kernel ended"; readonly exit: KernelExit };

/** What a cell gave. */
export interface CellResult {
  readonly outputs: readonly Output[];
  readonly end: CellEnd;
}

/** Ways in which waiting can end without what was waited for. */
type Missed = { readonly missed: "time" } | { readonly missed: "exit"; readonly exit: KernelExit };

/** How long an interrupted cell gets to stop. */
const INTERRUPT_SECONDS = 1;

/** One fresh kernel that has run nothing but the prelude. */
export class KernelClient {
  readonly #link: KernelLink;

  private constructor(link: KernelLink) {
    this.#link = link;
  }

  /**
   * Starts a kernel, runs the prelude and takes its permissions away.
   *
   * @param options folder and limits
   * @throws Error when no kernel could be started, with what it said
   */
  static async start(options: KernelOptions): Promise<KernelClient> {
    const client = new KernelClient(await openLink(options));
    const prelude = { ...EXECUTE, code: PRELUDE, store_history: false };
    const reply = await client.#within(
      30,
      client.#link.request("shell", "execute_request", prelude),
    );
    if ("missed" in reply || reply.content["status"] !== "ok") {
      await client.close();
      throw new Error(
        "Cannot start the Deno kernel: the cell that takes its permissions away did not run",
      );
    }
    client.#link.broker?.lock();
    await client.#link.settle();
    return client;
  }

  /** Paths that the notebook asked to read, as asked; empty where there is no broker. */
  get readsAsked(): ReadonlySet<string> {
    return this.#link.broker?.readsAsked ?? new Set();
  }

  /**
   * Runs one cell to its end and gathers everything that it showed.
   *
   * After an end that is not `done`, nothing more should be run here: the state of the kernel is unknown.
   *
   * @param code the cell's TypeScript
   * @param executionCount the cell's number, for its result
   * @param seconds time limit
   */
  async execute(code: string, executionCount: number, seconds: number): Promise<CellResult> {
    const broadcasts = this.#link.collect();
    const give = (end: CellEnd): CellResult => ({
      outputs: outputsOf(broadcasts, executionCount),
      end,
    });
    const answer = this.#link.request("shell", "execute_request", {
      ...EXECUTE,
      code,
      store_history: true,
    });
    const reply = await this.#within(seconds, answer);
    if ("missed" in reply) {
      if (reply.missed === "exit") return give({ how: "kernel ended", exit: reply.exit });
      this.#link.request("control", "interrupt_request", {});
      const stopped = await this.#within(INTERRUPT_SECONDS, answer);
      if (!("missed" in stopped)) await this.#barrier(INTERRUPT_SECONDS);
      return give({ how: "time limit", seconds });
    }
    const report = await this.#barrier(seconds);
    if ("missed" in report) {
      return give(
        report.missed === "exit"
          ? { how: "kernel ended", exit: report.exit }
          : { how: "time limit", seconds },
      );
    }
    if (reply.content["status"] === "error") {
      const { ename, evalue, traceback } = errorOutput(reply.content);
      return give({ how: "error", name: ename, message: evalue, traceback });
    }
    const loose = report.events[0];
    if (loose === undefined) return give({ how: "done" });
    const { name, message, traceback } = loose;
    const shown = errorOutput({ ename: name, evalue: message, traceback: [...traceback] });
    return {
      outputs: [...outputsOf(broadcasts, executionCount), shown],
      end: { how: "error", name, message, traceback },
    };
  }

  /**
   * The value of an expression in the kernel, as JSON; `null` when it can't be had.
   *
   * @param expression TypeScript
   * @param seconds time limit
   */
  async ask(expression: string, seconds: number): Promise<unknown> {
    const report = await this.#barrier(seconds, expression);
    return "missed" in report ? null : report.note;
  }

  /** Ends the kernel: politely first, then by force. */
  async close(): Promise<void> {
    await this.#link.close();
  }

  /** Waits until the kernel has sent all that the cell made it send. */
  async #barrier(seconds: number, note?: string): Promise<BarrierReport | Missed> {
    const token = crypto.randomUUID();
    const printed = this.#link.awaitToken(token);
    const reply = this.#link.request("shell", "execute_request", {
      ...EXECUTE,
      code: barrierCode(token, note),
      store_history: false,
    });
    // A barrier that fails prints nothing: its reply says so.
    const failed = reply.then((message) => message.content["status"] === "ok" ? printed : null);
    const text = await this.#within(seconds, Promise.race([printed, failed]));
    if (text === null) return { events: [], note: null };
    if (typeof text !== "string") return text;
    const ended = await this.#within(seconds, reply);
    return "missed" in ended ? ended : JSON.parse(text) as BarrierReport;
  }

  /** The value, or why it did not come: the time was over or the process ended first. */
  async #within<T>(seconds: number, value: Promise<T>): Promise<T | Missed> {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const late = new Promise<Missed>((resolve) => {
      timer = setTimeout(() => resolve({ missed: "time" }), seconds * 1000);
    });
    const gone = this.#link.drained.then((exit): Missed => ({ missed: "exit", exit }));
    try {
      return await Promise.race([value, gone, late]);
    } finally {
      clearTimeout(timer);
    }
  }
}

const EXECUTE = {
  silent: false,
  user_expressions: {},
  allow_stdin: false,
  stop_on_error: true,
} as const;
