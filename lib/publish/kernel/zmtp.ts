/**
 * The wire of ZeroMQ, as much of it as a Jupyter client needs: one TCP connection, the NULL mechanism, whole messages
 * of one or more frames.
 *
 * Written here because the native package does not wake a reader under Deno; this needs nothing but `Deno.connect`.
 *
 * Source: ZeroMQ RFC 23, ZMTP 3.0 (rfc.zeromq.org/spec/23).
 *
 * @module
 */

/** What our end of the connection says it is. */
export type SocketType = "DEALER" | "SUB";

const MORE = 1;
const LONG = 2;
const COMMAND = 4;

/** Reads exact numbers of bytes from a connection. */
class ByteReader {
  #held: Uint8Array = new Uint8Array(0);
  readonly #connection: Deno.Conn;

  constructor(connection: Deno.Conn) {
    this.#connection = connection;
  }

  /** The next `size` bytes, or `null` when the connection ended before them. */
  async read(size: number): Promise<Uint8Array | null> {
    const whole = new Uint8Array(size);
    let filled = Math.min(size, this.#held.length);
    whole.set(this.#held.subarray(0, filled));
    this.#held = this.#held.subarray(filled);
    while (filled < size) {
      const chunk = new Uint8Array(65_536);
      const count = await this.#connection.read(chunk).catch(() => null);
      if (count === null) return null;
      const taken = Math.min(count, size - filled);
      whole.set(chunk.subarray(0, taken), filled);
      this.#held = chunk.subarray(taken, count);
      filled += taken;
    }
    return whole;
  }
}

/** One ZeroMQ socket with one peer. */
export class ZmtpSocket {
  readonly #connection: Deno.Conn;
  readonly #reader: ByteReader;
  #sent: Promise<void> = Promise.resolve();

  private constructor(connection: Deno.Conn) {
    this.#connection = connection;
    this.#reader = new ByteReader(connection);
  }

  /**
   * Connects to a listening socket on this machine and shakes hands. A `SUB` socket subscribes to everything.
   *
   * @param port TCP port on 127.0.0.1
   * @param type what this end is
   * @returns a socket ready to send and receive
   * @throws Deno.errors.ConnectionRefused when nobody listens yet
   */
  static async connect(port: number, type: SocketType): Promise<ZmtpSocket> {
    const connection = await Deno.connect({ hostname: "127.0.0.1", port });
    const socket = new ZmtpSocket(connection);
    try {
      await socket.#handshake(type);
    } catch (error) {
      socket.close();
      throw error;
    }
    return socket;
  }

  /** Sends one message; messages leave in the order in which they were given. */
  send(frames: readonly Uint8Array[]): Promise<void> {
    const bytes = joinBytes(
      frames.flatMap((
        body,
        index,
      ) => [frameHead(body, index < frames.length - 1 ? MORE : 0), body]),
    );
    this.#sent = this.#sent.then(() => this.#write(bytes));
    return this.#sent;
  }

  /** The next whole message as its frames, or `null` when the peer is gone. */
  async receive(): Promise<Uint8Array[] | null> {
    const frames: Uint8Array[] = [];
    while (true) {
      const frame = await this.#frame();
      if (frame === null) return null;
      if (frame.flags & COMMAND) continue;
      frames.push(frame.body);
      if (!(frame.flags & MORE)) return frames;
    }
  }

  /** Ends the connection; a waiting `receive` gives `null`. */
  close(): void {
    try {
      this.#connection.close();
    } catch {
      // Closed before: nothing left to do.
    }
  }

  async #handshake(type: SocketType): Promise<void> {
    const greeting = new Uint8Array(64);
    greeting.set([0xff, 0, 0, 0, 0, 0, 0, 0, 0, 0x7f, 3, 0]);
    greeting.set(new TextEncoder().encode("NULL"), 12);
    await this.#write(greeting);
    const theirs = await this.#reader.read(64);
    if (theirs === null || theirs[0] !== 0xff || theirs[9] !== 0x7f || (theirs[10] ?? 0) < 3) {
      throw new Error("Cannot talk to the kernel: what listens there speaks no ZMTP 3");
    }
    const ready = joinBytes([
      property("READY"),
      property("Socket-Type"),
      value(type),
      ...(type === "DEALER" ? [property("Identity"), value("")] : []),
    ]);
    await this.#write(joinBytes([frameHead(ready, COMMAND), ready]));
    const answer = await this.#frame();
    if (answer === null || !(answer.flags & COMMAND)) {
      throw new Error("Cannot talk to the kernel: no READY in the handshake");
    }
    if (type === "SUB") await this.send([new Uint8Array([1])]);
  }

  async #frame(): Promise<{ flags: number; body: Uint8Array } | null> {
    const flags = (await this.#reader.read(1))?.[0];
    if (flags === undefined) return null;
    const head = await this.#reader.read(flags & LONG ? 8 : 1);
    if (head === null) return null;
    const size = flags & LONG ? Number(new DataView(head.buffer).getBigUint64(0)) : head[0]!;
    const body = await this.#reader.read(size);
    return body === null ? null : { flags, body };
  }

  async #write(bytes: Uint8Array): Promise<void> {
    let written = 0;
    while (written < bytes.length) {
      written += await this.#connection.write(bytes.subarray(written));
    }
  }
}

/**
 * Bytes one after the other.
 *
 * @param parts in order
 * @returns a copy of all
 */
export function joinBytes(parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

function frameHead(body: Uint8Array, flags: number): Uint8Array {
  if (body.length < 256) return new Uint8Array([flags, body.length]);
  const head = new Uint8Array(9);
  head[0] = flags | LONG;
  new DataView(head.buffer).setBigUint64(1, BigInt(body.length));
  return head;
}

/** A name in a command: its length in one byte, then its letters. */
function property(name: string): Uint8Array {
  const letters = new TextEncoder().encode(name);
  return joinBytes([new Uint8Array([letters.length]), letters]);
}

/** A property's value: its length in four bytes, then its letters. */
function value(text: string): Uint8Array {
  const letters = new TextEncoder().encode(text);
  const size = new Uint8Array(4);
  new DataView(size.buffer).setUint32(0, letters.length);
  return joinBytes([size, letters]);
}
