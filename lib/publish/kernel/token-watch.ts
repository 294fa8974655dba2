/**
 * Finds what the kernel prints between two tokens, and gives back whatever else was printed around it.
 *
 * @module
 */
import type { Message } from "./message.ts";
import { BARRIER_MESSAGE } from "./prelude.ts";

/** Watches for one token: in a message of its own, and twice in the printed text. */
export class TokenWatch {
  /** The text between the tokens. */
  readonly found: Promise<string>;
  readonly #token: string;
  readonly #resolve: (text: string) => void;
  #held: string | null = null;
  #between: string | null = null;
  #messaged = false;

  constructor(token: string) {
    this.#token = token;
    const { promise, resolve } = Promise.withResolvers<string>();
    this.found = promise;
    this.#resolve = resolve;
  }

  /** Whether all of it has been seen. */
  get done(): boolean {
    return this.#messaged && this.#between !== null;
  }

  /**
   * Takes one broadcast.
   *
   * @param message any broadcast
   * @returns what of it belongs to the cell: all, the part before the token, or `null`
   */
  take(message: Message): Message | null {
    if (message.header.msg_type === BARRIER_MESSAGE && message.content["token"] === this.#token) {
      this.#messaged = true;
      this.#settle();
      return null;
    }
    const printed = message.header.msg_type === "stream" && message.content["name"] === "stdout";
    if (!printed) return message;
    const text = String(message.content["text"]);
    if (this.#held !== null) {
      this.#finish(this.#held + text);
      return null;
    }
    const start = text.indexOf(this.#token);
    if (start < 0) return message;
    this.#finish(text.slice(start + this.#token.length));
    if (start === 0) return null;
    return { ...message, content: { ...message.content, text: text.slice(0, start) } };
  }

  #finish(text: string): void {
    this.#held = text;
    const end = text.indexOf(this.#token);
    if (end < 0 || this.#between !== null) return;
    this.#between = text.slice(0, end);
    this.#settle();
  }

  #settle(): void {
    if (this.#messaged && this.#between !== null) this.#resolve(this.#between);
  }
}
