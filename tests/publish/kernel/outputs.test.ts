import { describe, expect, it } from "vitest";
import type { JsonObject } from "lakeproof/publish/notebook.ts";
import type { Message } from "lakeproof/publish/kernel/message.ts";
import { outputsOf } from "lakeproof/publish/kernel/outputs.ts";
import { TokenWatch } from "lakeproof/publish/kernel/token-watch.ts";

function sent(type: string, content: JsonObject): Message {
  return { header: { msg_id: "m", msg_type: type, session: "s" }, parent: null, content };
}

const print = (text: string, name = "stdout") => sent("stream", { name, text });

describe("the outputs of a cell", () => {
  it("join pieces of one stream, keep two streams apart and put errors last", () => {
    const error = { ename: "Error", evalue: "x", traceback: ["\x1b[31mError\x1b[39m: x"] };
    const outputs = outputsOf([
      print("a\n"),
      sent("error", error),
      print("b\n"),
      print("c\n", "stderr"),
      print("d\n"),
    ], 1);
    expect(outputs).toEqual([
      { output_type: "stream", name: "stdout", text: "a\nb\n" },
      { output_type: "stream", name: "stderr", text: "c\n" },
      { output_type: "stream", name: "stdout", text: "d\n" },
      { output_type: "error", ename: "Error", evalue: "x", traceback: ["Error: x"] },
    ]);
  });

  it("carry no terminal colours in texts, and JSON media untouched", () => {
    const data = { "text/plain": "\x1b[33m1\x1b[39m", "application/vnd.x+json": { a: "\x1b[1m" } };
    expect(outputsOf([sent("execute_result", { data, metadata: {}, execution_count: 9 })], 4))
      .toEqual([{
        output_type: "execute_result",
        execution_count: 4,
        data: { "text/plain": "1", "application/vnd.x+json": { a: "\x1b[1m" } },
        metadata: {},
      }]);
  });

  it("are cleared when the cell clears them, at once or with the next", () => {
    const clear = (wait: boolean) => sent("clear_output", { wait });
    expect(outputsOf([print("a"), clear(false)], 1)).toEqual([]);
    expect(outputsOf([print("a"), clear(true)], 1)).toHaveLength(1);
    expect(outputsOf([print("a"), clear(true), print("b")], 1)).toMatchObject([{ text: "b" }]);
  });
});

describe("the watch for a token", () => {
  it("gives back what was printed before it and keeps what stands between two", async () => {
    const watch = new TokenWatch("TOKEN");
    expect(watch.take(print("a"))).toEqual(print("a"));
    expect(watch.take(print("TOKEN", "stderr"))).toEqual(print("TOKEN", "stderr"));
    expect(watch.take(print("bTOKEN{"))).toEqual(print("b"));
    expect(watch.done).toBe(false);
    expect(watch.take(print("}TOKEN\n"))).toBeNull();
    expect(watch.done).toBe(false);
    const late = sent("display_data", { data: {}, metadata: {} });
    expect(watch.take(late)).toEqual(late);
    expect(watch.take(sent("lakeproof_barrier", { token: "OTHER" }))).not.toBeNull();
    expect(watch.take(sent("lakeproof_barrier", { token: "TOKEN" }))).toBeNull();
    expect(watch.done).toBe(true);
    expect(await watch.found).toBe("{}");
  });
});
