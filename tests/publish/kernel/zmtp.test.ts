import { describe, expect, it } from "vitest";
import { ZmtpSocket } from "lakeproof/publish/kernel/zmtp.ts";

/** The greeting of ZMTP 3.0 with the NULL mechanism, ZeroMQ RFC 23, "Greeting". */
const GREETING = new Uint8Array(64);
GREETING.set([0xff, 0, 0, 0, 0, 0, 0, 0, 0, 0x7f, 3, 0, 0x4e, 0x55, 0x4c, 0x4c]);

/** READY of a ROUTER: command flag, size, name, one property; RFC 23, "The NULL Security Mechanism". */
const READY = new TextEncoder().encode("\x04\x1c\x05READY\x0bSocket-Type\x00\x00\x00\x06ROUTER");

async function readExactly(connection: Deno.Conn, size: number): Promise<Uint8Array> {
  const bytes = new Uint8Array(size);
  for (let at = 0; at < size;) {
    const count = await connection.read(bytes.subarray(at));
    if (count === null) throw new Error("the client ended first");
    at += count;
  }
  return bytes;
}

/** A peer that shakes hands by the book and then does as it is told. */
async function withPeer<T>(
  type: "DEALER" | "SUB",
  peer: (connection: Deno.Conn) => Promise<void>,
  client: (socket: ZmtpSocket) => Promise<T>,
): Promise<{ value: T; greeting: Uint8Array; ready: Uint8Array }> {
  const listener = Deno.listen({ hostname: "127.0.0.1", port: 0 });
  const served = (async () => {
    const connection = await listener.accept();
    const greeting = await readExactly(connection, 64);
    await connection.write(GREETING);
    const head = await readExactly(connection, 2);
    const ready = await readExactly(connection, head[1]!);
    await connection.write(READY);
    await peer(connection);
    connection.close();
    return { greeting, ready };
  })();
  const socket = await ZmtpSocket.connect((listener.addr as Deno.NetAddr).port, type);
  const value = await client(socket);
  socket.close();
  const shown = await served;
  listener.close();
  return { value, ...shown };
}

describe("the wire of ZeroMQ", () => {
  it("begins with the greeting and the READY command of RFC 23", async () => {
    const { greeting, ready } = await withPeer("DEALER", async () => {}, async () => {});
    expect(greeting).toEqual(GREETING);
    expect(new TextDecoder().decode(ready)).toBe(
      "\x05READY\x0bSocket-Type\x00\x00\x00\x06DEALER\x08Identity\x00\x00\x00\x00",
    );
  });

  it("subscribes to everything with a message of one byte", async () => {
    let sent = new Uint8Array();
    await withPeer("SUB", async (connection) => {
      sent = new Uint8Array(await readExactly(connection, 3));
    }, async () => {});
    expect(Array.from(sent)).toEqual([0, 1, 1]);
  });

  it("sends short and long frames with their flags", async () => {
    let sent = new Uint8Array();
    await withPeer("DEALER", async (connection) => {
      sent = new Uint8Array(await readExactly(connection, 2 + 3 + 9 + 300));
    }, (socket) => socket.send([new Uint8Array([7, 8, 9]), new Uint8Array(300).fill(5)]));
    expect(Array.from(sent.subarray(0, 14))).toEqual([1, 3, 7, 8, 9, 2, 0, 0, 0, 0, 0, 0, 1, 44]);
  });

  it("puts a message together from pieces of any size and passes over commands", async () => {
    const bytes = [1, 2, 65, 66, 4, 5, 4, 80, 73, 78, 71, 2, 0, 0, 0, 0, 0, 0, 1, 0];
    const { value } = await withPeer("DEALER", async (connection) => {
      for (const byte of bytes) await connection.write(new Uint8Array([byte]));
      await connection.write(new Uint8Array(256).fill(67));
    }, async (socket) => [await socket.receive(), await socket.receive()]);
    expect(value).toEqual([[new Uint8Array([65, 66]), new Uint8Array(256).fill(67)], null]);
  });

  it("gives up on a peer that speaks something else", async () => {
    const listener = Deno.listen({ hostname: "127.0.0.1", port: 0 });
    const served = listener.accept().then(async (connection) => {
      await connection.write(new TextEncoder().encode("HTTP/1.1 400 Bad Request\r\n".padEnd(64)));
      return connection;
    });
    const port = (listener.addr as Deno.NetAddr).port;
    await expect(ZmtpSocket.connect(port, "DEALER")).rejects.toThrow("speaks no ZMTP 3");
    (await served).close();
    listener.close();
  });
});
