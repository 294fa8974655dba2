import { describe, expect, it } from "vitest";
import { describeDifference, runTwice } from "lakeproof/publish/run-twice.ts";
import { notebookOf, ROOT } from "../publish/notebooks-of-cells.ts";

describe.concurrent("two runs in clean kernels", () => {
  it("give the same bytes for what does not depend on chance or the clock", async () => {
    const notebook = notebookOf(
      `console.log("a"); console.error("b"); console.log("c"); [0.1 + 0.2, new Date(0)]`,
      `await Deno.jupyter.display({ "text/html": "<b>x</b>" }, { raw: true });`,
    );
    expect(await runTwice(notebook, { cwd: ROOT })).toMatchObject({ ok: true });
  });

  it("name the first cell that differs", async () => {
    const notebook = notebookOf("1;", "console.log(Math.random())", "console.log(Math.random())");
    const result = await runTwice(notebook, { cwd: ROOT });
    expect(result).toMatchObject({ ok: false, cell: 2, codeCell: 2 });
    if (result.ok || !("second" in result)) throw new Error("no difference found");
    expect(describeDifference("a.ipynb", result)).toMatch(
      /^a.ipynb, code cell 2 \(cell 2 of all\): two clean runs gave different bytes\n.*0\.\d/,
    );
  });
});
