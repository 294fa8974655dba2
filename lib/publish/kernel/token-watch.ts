/**
 * Finds what the kernel prints between two tokens, and gives back whatever else was printed around it.
 *
 * @module
 */
import type { Message } from "./message.ts";

/** Watches the printed text for one token. */
export class TokenWatch {
  /** The text between the tokens. */
  readonly found: Promise<string>;
  readonly #token: string;
  readonly #resolve: (text: string) => void;
  #held: string | null = null;
  #done = false;

  constructor(token: string) {
    this.#token = token;
    const { promise, resolve } = Promise.withResolvers<string>();
    this.found = promise;
    this.#resolve = resolve;
  }

  /** Whether both tokens have been seen. */
  get done(): boolean {
    return this.#done;
  }

  /**
   * Takes one broadcast.
   *
   * @param message any broadcast
   * @returns what of it belongs to the cell: all, the part before the token, or `null`
   */
  take(message: Message): Message | null {
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
    const end = text.indexOf(this.#token);
    this.#held = text;
    if (end < 0) return;
    this.#done = true;
    this.#resolve(text.slice(0, end));
  }
}
