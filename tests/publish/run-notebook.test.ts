import { describe, expect, it } from "vitest";
import { describeFailure } from "lakeproof/publish/run-notebook.ts";
import { outputsAt, run } from "./notebooks-of-cells.ts";

/** Runs cells of which one fails. */
async function failing(...sources: string[]) {
  const result = await run(sources, { cellSeconds: 20 });
  if (result.ok) throw new Error("the notebook did not fail");
  return result;
}

describe.concurrent("a notebook run in the real kernel", () => {
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

  it("fails a cell whose promise nobody awaits is rejected", async () => {
    const result = await failing("1", `Promise.reject(new Error("adrift")); 2`, "3");
    expect(result).toMatchObject({ cell: 2, message: "adrift", line: 1 });
    expect(outputsAt(result, 2).at(-1)).toMatchObject({ output_type: "error", evalue: "adrift" });
  });

  it("may not write, and is told so in plain words", async () => {
    const result = await failing(`await Deno.writeTextFile("/x.txt", "x")`);
    expect(result).toMatchObject({ name: "NotCapable", line: 1 });
    expect(result.message).toMatch(
      /^This notebook tried to write \/x.txt; notebooks may only read/,
    );
  });
});

describe.concurrent("the place of an error", () => {
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
  });

  it("is known for what can't be read", async () => {
    const unread = await failing("const a = 1;\n\nconst b: number = ;");
    expect(unread).toMatchObject({ name: "SyntaxError", line: 3 });
    expect(unread.message).toContain("Expression expected");
  });
});
