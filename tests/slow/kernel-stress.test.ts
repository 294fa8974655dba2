import { describe, expect, it } from "vitest";
import { KernelClient } from "lakeproof/publish/kernel/client.ts";
import { ROOT } from "../publish/notebooks-of-cells.ts";

describe("a kernel under a client", () => {
  it("loses and misplaces nothing in 150 cells of printed lines, displays and results", async () => {
    const client = await KernelClient.start({ cwd: ROOT });
    try {
      for (let cell = 1; cell <= 150; cell++) {
        const code = `for (let i = 0; i < 100; i++) console.log("${cell}", i);
          await Deno.jupyter.display({ "text/plain": "shown ${cell}" }, { raw: true });
          "result ${cell}"`;
        const { outputs, end } = await client.execute(code, cell, 20);
        expect(end).toEqual({ how: "done" });
        const lines = outputs.flatMap((one) => one.output_type === "stream" ? [one.text] : []);
        expect(lines.join("")).toBe(
          Array.from({ length: 100 }, (_, i) => `${cell} ${i}\n`).join(""),
        );
        const rest = outputs.filter((one) => one.output_type !== "stream");
        expect(rest).toMatchObject([
          { output_type: "display_data", data: { "text/plain": `shown ${cell}` } },
          { output_type: "execute_result", data: { "text/plain": `"result ${cell}"` } },
        ]);
      }
    } finally {
      await client.close();
    }
  });

  it("hears its first broadcast in 40 of 40 starts", async () => {
    for (let start = 1; start <= 40; start++) {
      const client = await KernelClient.start({ cwd: ROOT });
      const { outputs } = await client.execute(`console.log("first")`, 1, 10);
      await client.close();
      expect(outputs).toMatchObject([{ text: "first\n" }]);
    }
  });

  it("ends by itself when its client was killed", async () => {
    const script = `
      import { KernelClient } from "lakeproof/publish/kernel/client.ts";
      const client = await KernelClient.start({ cwd: Deno.args[0]! });
      const { outputs } = await client.execute("console.log(Deno.pid)", 1, 10);
      console.log(JSON.stringify(outputs));
      await new Promise(() => setInterval(() => {}, 1000));`;
    const child = new Deno.Command(Deno.execPath(), {
      args: ["run", "-A", "--ext=ts", "-", ROOT],
      cwd: ROOT,
      stdin: "piped",
      stdout: "piped",
      stderr: "null",
    }).spawn();
    const writer = child.stdin.getWriter();
    await writer.write(new TextEncoder().encode(script));
    await writer.close();
    const { value } = await child.stdout.getReader().read();
    const pid = Number(/"text":"(\d+)/.exec(new TextDecoder().decode(value))?.[1]);
    expect(alive(pid)).toBe(true);
    child.kill("SIGKILL");
    await child.status;
    for (let wait = 0; wait < 50 && alive(pid); wait++) {
      await new Promise((resolve) => setTimeout(resolve, 200));
    }
    expect(alive(pid)).toBe(false);
  });
});

function alive(pid: number): boolean {
  try {
    Deno.kill(pid, 0 as unknown as Deno.Signal);
    return true;
  } catch {
    return false;
  }
}
