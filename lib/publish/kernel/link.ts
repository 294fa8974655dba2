/**
 * A running kernel with its sockets open: requests find their replies, broadcasts find their listener.
 *
 * @module
 */
import type { JsonObject } from "../notebook.ts";
import { type PermissionBroker, startBroker } from "./broker.ts";
import { type Connection, freeConnection } from "./connection.ts";
import { type KernelExit, type KernelOptions, KernelProcess } from "./kernel-process.ts";
import { type Message, MessageCodec } from "./message.ts";
import { TokenWatch } from "./token-watch.ts";
import { ZmtpSocket } from "./zmtp.ts";

/** Sockets that carry requests and their replies. */
export type Channel = "shell" | "control";

/** Ports may be taken by another program between choosing and using them. */
const STARTS = 5;

/** How long a kernel may take until it listens; on a busy machine far more than the usual 0.2 s. */
const START_SECONDS = 30;

/** The sockets of one kernel and its process. */
export class KernelLink {
  /** Settles when the process is gone and everything it broadcast has been read. */
  readonly drained: Promise<KernelExit>;
  readonly broker: PermissionBroker | null;
  readonly #process: KernelProcess;
  readonly #codec: MessageCodec;
  readonly #sockets: Record<Channel | "iopub", ZmtpSocket>;
  readonly #waiting = new Map<string, (reply: Message) => void>();
  #collected: Message[] = [];
  #watch: TokenWatch | null = null;
  readonly #heard = Promise.withResolvers<"heard">();

  constructor(
    process: KernelProcess,
    codec: MessageCodec,
    sockets: Record<Channel | "iopub", ZmtpSocket>,
    broker: PermissionBroker | null,
  ) {
    this.#process = process;
    this.#codec = codec;
    this.#sockets = sockets;
    this.broker = broker;
    this.#readReplies("shell");
    this.#readReplies("control");
    const read = this.#readBroadcasts();
    this.drained = process.exit.then(async (exit) => {
      await Promise.race([read, new Promise((resolve) => setTimeout(resolve, 1000))]);
      return exit;
    });
  }

  /**
   * Settles when broadcasts arrive. The kernel takes note of a subscription in its own time (2 of 60 starts lost the
   * broadcasts of the first request), so it is asked until one is heard.
   *
   * @returns how the process ended, when it ended before
   */
  async subscribed(): Promise<KernelExit | null> {
    const end = setTimeout(() => this.#process.kill(), START_SECONDS * 1000);
    try {
      for (let pause = 10;; pause *= 2) {
        const asked = this.request("shell", "kernel_info_request", {});
        const quiet = asked.then(() => new Promise<void>((done) => setTimeout(done, pause)));
        const first = await Promise.race([this.#heard.promise, quiet, this.drained]);
        if (first === "heard") return null;
        if (first !== undefined) return first;
      }
    } finally {
      clearTimeout(end);
    }
  }

  /** Sends a request and waits for the reply that names it; for ever, when none comes. */
  async request(channel: Channel, type: string, content: JsonObject): Promise<Message> {
    const message = this.#codec.compose(type, content);
    const reply = new Promise<Message>((resolve) => {
      this.#waiting.set(message.header.msg_id, resolve);
    });
    try {
      await this.#sockets[channel].send(await this.#codec.encode(message));
    } catch {
      // The kernel is gone: whoever waits for the reply also waits for the end of the process.
    }
    return await reply;
  }

  /** From now on broadcasts go to the list given back, until the next call or a token. */
  collect(): readonly Message[] {
    return this.#collected = [];
  }

  /** The text that the kernel will print between two of these tokens; broadcasts after it belong to no one. */
  awaitToken(token: string): Promise<string> {
    const watch = this.#watch = new TokenWatch(token);
    return watch.found;
  }

  /** Ends the kernel: asks first, uses force after a second. */
  async close(): Promise<void> {
    this.request("control", "shutdown_request", { restart: false }).catch(() => {});
    const force = setTimeout(() => this.#process.kill(), 1000);
    await this.#process.exit;
    clearTimeout(force);
    Object.values(this.#sockets).forEach((socket) => socket.close());
    this.broker?.close();
  }

  async #readReplies(channel: Channel): Promise<void> {
    for await (const message of this.#messages(channel)) {
      const resolve = message.parent === null ? undefined : this.#waiting.get(message.parent);
      if (resolve === undefined) continue;
      this.#waiting.delete(message.parent!);
      resolve(message);
    }
  }

  async #readBroadcasts(): Promise<void> {
    for await (const message of this.#messages("iopub")) {
      this.#heard.resolve("heard");
      const kept = this.#watch === null ? message : this.#watch.take(message);
      if (kept !== null) this.#collected.push(kept);
      if (this.#watch?.done) {
        this.#watch = null;
        this.#collected = [];
      }
    }
  }

  async *#messages(channel: Channel | "iopub"): AsyncGenerator<Message> {
    while (true) {
      const frames = await this.#sockets[channel].receive();
      if (frames === null) return;
      const message = await this.#codec.decode(frames);
      if (message !== null) yield message;
    }
  }
}

/**
 * Starts a kernel and opens its sockets, broadcasts first.
 *
 * @throws Error when it ends before it listens, with what it said
 */
export async function openLink(options: KernelOptions): Promise<KernelLink> {
  for (let start = 1;; start++) {
    const folder = await Deno.makeTempDir({ prefix: "lakeproof-kernel-" });
    const broker = startBroker(folder);
    try {
      const connection = freeConnection();
      const process = await KernelProcess.spawn(connection, folder, {
        ...options,
        brokerPath: broker?.path ?? null,
      });
      const sockets = await connectAll(connection, process);
      if (!("exit" in sockets)) {
        const codec = await MessageCodec.create(connection.key);
        const link = new KernelLink(process, codec, sockets, broker);
        const exit = await link.subscribed();
        if (exit === null) return link;
        await link.close();
        throw new Error(failedStart(exit));
      }
      broker?.close();
      if (start === STARTS || !/AddrInUse|address.*in use/i.test(sockets.exit.said)) {
        throw new Error(failedStart(sockets.exit));
      }
    } catch (error) {
      broker?.close();
      throw error;
    } finally {
      // The kernel has read the file and holds the socket by now; nothing is left behind if we are killed later.
      await Deno.remove(folder, { recursive: true });
    }
  }
}

function failedStart(exit: KernelExit): string {
  return `Cannot start the Deno kernel: it ended with code ${exit.code}. ${exit.said}`.trim();
}

/** All sockets, or how the process ended before it listened. */
async function connectAll(
  connection: Connection,
  process: KernelProcess,
): Promise<Record<Channel | "iopub", ZmtpSocket> | { readonly exit: KernelExit }> {
  let exit: KernelExit | null = null;
  process.exit.then((how) => exit = how);
  const deadline = performance.now() + START_SECONDS * 1000;
  const open: ZmtpSocket[] = [];
  const connect = async (port: number, type: "DEALER" | "SUB"): Promise<ZmtpSocket | null> => {
    while (exit === null) {
      try {
        const socket = await ZmtpSocket.connect(port, type);
        open.push(socket);
        return socket;
      } catch (error) {
        if (performance.now() > deadline) {
          process.kill();
          throw new Error(
            `Cannot start the Deno kernel: it does not listen after ${START_SECONDS} s`,
            { cause: error },
          );
        }
        await new Promise((resolve) => setTimeout(resolve, 5));
      }
    }
    return null;
  };
  const iopub = await connect(connection.iopub_port, "SUB");
  const shell = await connect(connection.shell_port, "DEALER");
  const control = await connect(connection.control_port, "DEALER");
  if (iopub !== null && shell !== null && control !== null) return { iopub, shell, control };
  open.forEach((socket) => socket.close());
  return { exit: await process.exit };
}
