import { describe, expect, it } from "vitest";
import { outputsAt, run } from "../publish/notebooks-of-cells.ts";

/** Runs cells of which one fails. */
async function failing(sources: readonly string[], cellSeconds = 20) {
  const result = await run(sources, { cellSeconds });
  if (result.ok) throw new Error("the notebook did not fail");
  return result;
}

describe("what a cell shows", () => {
  it("gives no output for a bare NaN and null for one in shown JSON, and goes on", async () => {
    const result = await run([
      "NaN",
      `await Deno.jupyter.display({ "application/vnd.x+json": { a: NaN } }, { raw: true });`,
    ]);
    expect(result.ok).toBe(true);
    expect(outputsAt(result, 1)).toEqual([]);
    expect(outputsAt(result, 2)).toMatchObject([{
      data: { "application/vnd.x+json": { a: null } },
    }]);
  });

  it("keeps a display of 50 kB whole and updates a display where it stands", async () => {
    const result = await run([
      `await Deno.jupyter.display({ "text/html": "é".repeat(50_000) }, { raw: true });`,
      `await Deno.jupyter.display({ "text/plain": "0 %" }, { raw: true, display_id: "p" });
       await Deno.jupyter.display({ "text/plain": "100 %" }, { raw: true, display_id: "p", update: true });`,
    ]);
    expect(outputsAt(result, 1)).toMatchObject([{ data: { "text/html": "é".repeat(50_000) } }]);
    expect(outputsAt(result, 2)).toMatchObject([{ data: { "text/plain": "100 %" } }]);
  });
});

describe("the end of a cell that does not end by itself", () => {
  it("notices at once that the kernel ended, with its exit code", async () => {
    const before = performance.now();
    const result = await failing([`console.log("last words"); Deno.exit(3)`]);
    expect(result).toMatchObject({ cell: 1, name: "Kernel ended" });
    expect(result.message).toContain("exit code 3");
    // A time limit of 20 s would otherwise decide; starting and ending takes a tenth of this.
    expect(performance.now() - before).toBeLessThan(10_000);
  });

  it.each([
    ["a loop without end", `console.log("before"); while (true) {}`],
    ["a promise that is never kept", `console.log("before"); await new Promise(() => {});`],
    [
      "a loop that awaits",
      `console.log("before"); while (true) await new Promise((r) => setTimeout(r, 5));`,
    ],
  ])("comes with its time limit: %s", async (_, source) => {
    const before = performance.now();
    const result = await failing(["1", source, "3"], 2);
    expect(result).toMatchObject({ cell: 2, name: "Time limit" });
    expect(result.message).toContain("2 s");
    expect(outputsAt(result, 2)).toMatchObject([{ text: "before\n" }]);
    // 2 s limit, 1 s for the interrupt, 1 s for the polite end, and a busy machine.
    expect(performance.now() - before).toBeLessThan(12_000);
  });

  it("is told when memory runs out", async () => {
    const result = await run(
      [`const a = []; while (true) a.push(new Array(1e5).fill(a.length));`],
      {
        heapMegabytes: 200,
      },
    );
    expect(result).toMatchObject({ ok: false, name: "Kernel ended" });
    expect(!result.ok && result.message).toContain("out of memory");
  });

  it("is an error when a timer throws while the cell waits", async () => {
    const result = await failing([
      `setTimeout(() => { throw new Error("tick"); }, 1);\nawait new Promise((r) => setTimeout(r, 100));`,
      "2",
    ]);
    expect(result).toMatchObject({ cell: 1, message: "tick", line: 1 });
  });
});

describe("what a notebook may not do", () => {
  it.each([
    [`await Deno.writeTextFile("/x.txt", "x")`, /^This notebook tried to write \/x.txt; notebooks/],
    [`await fetch("https://lake.invalid/")`, /^This notebook tried to reach lake.invalid/],
    [`new Deno.Command("ls").outputSync()`, /^This notebook tried to start ls/],
    [`import "https://lake.invalid/x.ts"`, /^This notebook tried to import from .*lake.invalid/],
    [`const x = 1;\nimport "npm:left-pad-of-nobody@1"`, /^This notebook tried to import npm:left/],
  ])("%s is refused in plain words", async (source, message) => {
    const result = await failing([source]);
    expect(result.message).toMatch(message);
    expect(result.line).toBe(source.split("\n").length);
  });
});

describe("the place of an error", () => {
  it("is known for a name used twice, a garbled import and import.meta", async () => {
    expect(await failing(["let b = 1;\n\nlet b = 2;"])).toMatchObject({ line: 3 });
    expect(await failing(['1;\nimport one two from "node:path";'])).toMatchObject({ line: 2 });
    expect(await failing(["1;\nimport.meta.url"])).toMatchObject({ line: 2 });
  });

  it("is inside a function when the cell itself declares it", async () => {
    const source =
      `function half(x: number) {\n\n  if (x < 0) throw new RangeError("below");\n}\nhalf(-1)`;
    expect(await failing([source])).toMatchObject({ line: 3 });
  });
});
