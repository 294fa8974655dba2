/**
 * Messages of the Jupyter protocol: signed going out, verified coming in.
 *
 * Source: Messaging in Jupyter, protocol 5.3, "The wire protocol" (jupyter-client.readthedocs.io).
 *
 * @module
 */
import type { JsonObject } from "../notebook.ts";
import { joinBytes } from "./zmtp.ts";

/** What stands at the head of a message. */
export interface MessageHeader extends JsonObject {
  readonly msg_id: string;
  readonly msg_type: string;
  readonly session: string;
}

/** One message, as far as a client needs it. */
export interface Message {
  readonly header: MessageHeader;
  /** `msg_id` of the request that this answers; `null` when there is none. */
  readonly parent: string | null;
  readonly content: JsonObject;
}

const DELIMITER = "<IDS|MSG>";

/** Signs, writes, verifies and reads messages of one connection. */
export class MessageCodec {
  readonly #key: CryptoKey;
  readonly #session = crypto.randomUUID();

  private constructor(key: CryptoKey) {
    this.#key = key;
  }

  /** A codec for the key of a connection file. */
  static async create(key: string): Promise<MessageCodec> {
    const bytes = new TextEncoder().encode(key);
    const algorithm = { name: "HMAC", hash: "SHA-256" };
    return new MessageCodec(
      await crypto.subtle.importKey("raw", bytes, algorithm, false, ["sign", "verify"]),
    );
  }

  /** A new message of ours. */
  compose(type: string, content: JsonObject): Message {
    return {
      header: {
        msg_id: crypto.randomUUID(),
        msg_type: type,
        session: this.#session,
        username: "lakeproof",
        date: new Date().toISOString(),
        version: "5.3",
      },
      parent: null,
      content,
    };
  }

  /** The frames of a message, signed. */
  async encode(message: Message): Promise<Uint8Array[]> {
    const encoder = new TextEncoder();
    const parent = message.parent === null ? {} : { msg_id: message.parent };
    const parts = [message.header, parent, {}, message.content]
      .map((part) => encoder.encode(JSON.stringify(part)));
    const signature = await crypto.subtle.sign("HMAC", this.#key, joinBytes(parts));
    return [
      encoder.encode(DELIMITER),
      encoder.encode(toHex(new Uint8Array(signature))),
      ...parts,
    ];
  }

  /** The message in these frames; `null` when it is not signed with our key or is no message at all. */
  async decode(frames: readonly Uint8Array[]): Promise<Message | null> {
    const decoder = new TextDecoder();
    const start = frames.findIndex((frame) =>
      frame.length === DELIMITER.length && decoder.decode(frame) === DELIMITER
    );
    const signature = frames[start + 1];
    const parts = frames.slice(start + 2, start + 6);
    if (start < 0 || signature === undefined || parts.length < 4) return null;
    const given = fromHex(decoder.decode(signature));
    if (given === null) return null;
    if (!await crypto.subtle.verify("HMAC", this.#key, given, joinBytes(parts))) return null;
    try {
      const [header, parent, , content] = parts.map((part) => JSON.parse(decoder.decode(part)));
      return { header, parent: parent?.msg_id ?? null, content };
    } catch {
      return null;
    }
  }
}

function toHex(bytes: Uint8Array): string {
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

function fromHex(text: string): Uint8Array<ArrayBuffer> | null {
  if (!/^(?:[0-9a-fA-F]{2})+$/.test(text)) return null;
  return Uint8Array.from(text.match(/../g)!, (pair) => parseInt(pair, 16));
}
