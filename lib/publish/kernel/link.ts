/**
 * A running kernel with its sockets open: requests find their replies, broadcasts find their listener.
 *
 * @module
 */
import type { JsonObject } from "../notebook.ts";
import type { PermissionBroker } from "./broker.ts";
import type { KernelExit, KernelProcess } from "./kernel-process.ts";
import type { Message, MessageCodec } from "./message.ts";
import { TokenWatch } from "./token-watch.ts";
import type { ZmtpSocket } from "./zmtp.ts";

/** Sockets that carry requests and their replies. */
export type Channel = "shell" | "control";

/** One socket each. */
export type Sockets = Readonly<Record<Channel | "iopub", ZmtpSocket>>;

/** What a link is made of. */
export interface LinkParts {
  readonly process: KernelProcess;
  readonly codec: MessageCodec;
  readonly sockets: Sockets;
  readonly broker: PermissionBroker | null;
  /** Folder of the connection file. */
  readonly folder: string;
}

/** The sockets of one kernel and its process. */
export class KernelLink {
  /** Settles when the process is gone and everything it broadcast has been read. */
  readonly drained: Promise<KernelExit>;
  readonly broker: PermissionBroker | null;
  readonly #parts: LinkParts;
  readonly #waiting = new Map<string, (reply: Message) => void>();
  #collected: Message[] = [];
  #watch: TokenWatch | null = null;
  readonly #heard = Promise.withResolvers<"heard">();

  constructor(parts: LinkParts) {
    this.#parts = parts;
    this.broker = parts.broker;
    this.#readReplies("shell");
    this.#readReplies("control");
    const read = this.#readBroadcasts();
    this.drained = parts.process.exit.then(async (exit) => {
      await Promise.race([read, new Promise((resolve) => setTimeout(resolve, 1000))]);
      return exit;
    });
  }

  /**
   * Settles when broadcasts arrive. The kernel takes note of a subscription in its own time (2 of 60 starts lost the
   * broadcasts of the first request), so it is asked until one is heard.
   *
   * @param seconds how long to ask before the kernel is given up and ended
   * @returns how the process ended, when it ended before
   */
  async subscribed(seconds: number): Promise<KernelExit | null> {
    const end = setTimeout(() => this.#parts.process.kill(), seconds * 1000);
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
    const message = this.#parts.codec.compose(type, content);
    const reply = new Promise<Message>((resolve) => {
      this.#waiting.set(message.header.msg_id, resolve);
    });
    try {
      await this.#parts.sockets[channel].send(await this.#parts.codec.encode(message));
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

  /** Takes the connection file away: from here on the kernel ends by itself when we are killed. */
  async settle(): Promise<void> {
    await Deno.remove(this.#parts.folder, { recursive: true }).catch(() => {});
  }

  /** Ends the kernel: asks first, uses force after a second. */
  async close(): Promise<void> {
    this.request("control", "shutdown_request", { restart: false }).catch(() => {});
    const force = setTimeout(() => this.#parts.process.kill(), 1000);
    await this.#parts.process.exit;
    clearTimeout(force);
    Object.values(this.#parts.sockets).forEach((socket) => socket.close());
    this.broker?.close();
    await this.settle();
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
      const frames = await this.#parts.sockets[channel].receive();
      if (frames === null) return;
      const message = await this.#parts.codec.decode(frames);
      if (message !== null) yield message;
    }
  }
}
