import { describe, expect, it } from "vitest";
import { describeFailure } from "lakeproof/publish/run-notebook.ts";
import { outputsAt, run } from "./notebooks-of-cells.ts";

/** Runs cells of which one fails. */
async function failing(...sources: string[]) {
  const result = await run(sources, { cellSeconds: 20 });
  if (result.ok) throw new Error("the notebook did not fail");
  return result;
}

describe("a notebook run in the real kernel", () => {
  it("keeps every printed line, display and result, in order", async () => {
    const result = await run([
      `for (let i = 0; i < 1000; i++) console.log("line", i);`,
      `await Deno.jupyter.display({ "text/plain": "shown" }, { raw: true }); "Größe µ 水 🛶"`,
      `console.error("warned"); console.log("then"); console.log("again"); 2`,
    ]);
    expect(result.ok).toBe(true);
    expect(outputsAt(result, 1)).toEqual([{
      output_type: "stream",
      name: "stdout",
      text: Array.from({ length: 1000 }, (_, i) => `line ${i}\n`).join(""),
    }]);
    expect(outputsAt(result, 2)).toEqual([
      { output_type: "display_data", data: { "text/plain": "shown" }, metadata: {} },
      {
        output_type: "execute_result",
        execution_count: 2,
        data: { "text/plain": '"Größe µ 水 🛶"' },
        metadata: {},
      },
    ]);
    expect(outputsAt(result, 3).map((output) => output.output_type)).toEqual([
      "stream",
      "stream",
      "execute_result",
    ]);
  });

  it("shares names between cells, leaves empty cells alone and stops at the first error", async () => {
    const result = await failing("const a: number = 2;", " ", "a * 21", "throw 1", "a");
    expect(result.notebook.cells.map((cell) => cell.cell_type === "code" && cell.execution_count))
      .toEqual([1, null, 2, 3, null]);
    expect(result).toMatchObject({ cell: 4, codeCell: 4 });
    expect(outputsAt(result, 3)).toMatchObject([{ data: { "text/plain": "42" } }]);
    expect(outputsAt(result, 5)).toEqual([]);
  });

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

  it("fails a cell whose promise nobody awaits is rejected", async () => {
    const result = await failing("1", `Promise.reject(new Error("adrift")); 2`, "3");
    expect(result).toMatchObject({ cell: 2, message: "adrift", line: 1 });
    expect(outputsAt(result, 2).at(-1)).toMatchObject({ output_type: "error", evalue: "adrift" });
  });

  it("notices at once that the kernel ended, with its exit code", async () => {
    const before = performance.now();
    const result = await failing(`console.log("last words"); Deno.exit(3)`);
    expect(result).toMatchObject({ cell: 1, name: "Kernel ended" });
    expect(result.message).toContain("exit code 3");
    // A time limit of 20 s would otherwise decide; starting and ending takes a tenth of this.
    expect(performance.now() - before).toBeLessThan(10_000);
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
    const result = await failing(source);
    expect(result.message).toMatch(message);
    expect(result.line).toBe(source.split("\n").length);
  });
});

describe("the place of an error", () => {
  it("is the cell's own line, whatever the kernel made of it", async () => {
    const source = `/* two lines
of comment */
interface Quiet {
  a: number;
}

const list = [1, 2, 3].map((one) => ({ one }));
class Boat { constructor(private x: number, readonly y = 2) {} }

throw new Error("here");`;
    const result = await failing("1", source);
    expect(result).toMatchObject({ cell: 2, line: 10, sourceLine: 'throw new Error("here");' });
    expect(describeFailure("01-glides.ipynb", result)).toBe(
      '01-glides.ipynb, code cell 2 (cell 2 of all), line 10:\n    throw new Error("here");\nError: here',
    );
  });

  it("is the innermost line of the running cell, not of a function of an earlier one", async () => {
    const helper = `function half(x: number) {\n\n  if (x < 0) throw new RangeError("below");\n}`;
    const result = await failing(helper, `const x = -1;\n\nhalf(\n  x,\n);`);
    expect(result).toMatchObject({ cell: 2, line: 3, name: "RangeError" });
    expect(result.traceback.some((line) => line.includes("half (an earlier cell)"))).toBe(true);
    const inside = await failing(`${helper}\nhalf(-1)`);
    expect(inside).toMatchObject({ cell: 1, line: 3 });
  });

  it("is known for what can't be read, for a name used twice and for import.meta", async () => {
    const unread = await failing("const a = 1;\n\nconst b: number = ;");
    expect(unread).toMatchObject({ name: "SyntaxError", line: 3 });
    expect(unread.message).toContain("Expression expected");
    expect(await failing("let b = 1;\n\nlet b = 2;")).toMatchObject({ line: 3 });
    expect(await failing("1;\nimport.meta.url")).toMatchObject({ line: 2 });
  });
});
