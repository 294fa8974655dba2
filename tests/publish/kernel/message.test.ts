import { createHmac } from "node:crypto";
import { describe, expect, it } from "vitest";
import { MessageCodec } from "lakeproof/publish/kernel/message.ts";

const text = (bytes: Uint8Array) => new TextDecoder().decode(bytes);

describe("a message on the wire", () => {
  it("is signed over header, parent, metadata and content, as Node's own HMAC would", async () => {
    const codec = await MessageCodec.create("a key");
    const frames = await codec.encode(codec.compose("execute_request", { code: "1 + 1 // µ" }));
    expect(text(frames[0]!)).toBe("<IDS|MSG>");
    const hmac = createHmac("sha256", "a key");
    frames.slice(2).forEach((frame) => hmac.update(frame));
    expect(text(frames[1]!)).toBe(hmac.digest("hex"));
    expect(JSON.parse(text(frames[2]!))).toMatchObject({
      msg_type: "execute_request",
      version: "5.3",
    });
  });

  it("comes back whole, whatever identities stand before it", async () => {
    const codec = await MessageCodec.create("a key");
    const message = codec.compose("status", { execution_state: "idle" });
    const frames = await codec.encode({ ...message, parent: "p" });
    const back = await codec.decode([new Uint8Array([1, 2]), ...frames]);
    expect(back).toEqual({ header: message.header, parent: "p", content: message.content });
  });

  it("is ignored when its signature is not ours, cut short or no hexadecimal at all", async () => {
    const codec = await MessageCodec.create("a key");
    const other = await MessageCodec.create("another key");
    const frames = await codec.encode(codec.compose("status", {}));
    expect(await other.decode(frames)).toBeNull();
    expect(await codec.decode(frames.with(5, new TextEncoder().encode('{"a":1}')))).toBeNull();
    expect(await codec.decode(frames.with(1, new TextEncoder().encode("no hex")))).toBeNull();
    expect(await codec.decode(frames.slice(0, 4))).toBeNull();
    expect(await codec.decode([])).toBeNull();
  });
});
