import { describe, expect, it } from "vitest";
import { describeDifference, firstDifference } from "lakeproof/publish/first-difference.ts";
import type { Notebook } from "lakeproof/publish/notebook.ts";
import { runNotebook } from "lakeproof/publish/run-notebook.ts";
import { notebookOf, ROOT } from "../publish/notebooks-of-cells.ts";

async function differenceOf(notebook: Notebook) {
  const [first, second] = [
    await runNotebook(notebook, { cwd: ROOT }),
    await runNotebook(notebook, { cwd: ROOT }),
  ];
  if (!first.ok || !second.ok) throw new Error("a run failed");
  return firstDifference(first.notebook, second.notebook);
}

describe.concurrent("two runs in clean kernels", () => {
  it("give the same bytes for what does not depend on chance or the clock", async () => {
    const notebook = notebookOf(
      `console.log("a"); console.error("b"); console.log("c"); [0.1 + 0.2, new Date(0)]`,
      `await Deno.jupyter.display({ "text/html": "<b>x</b>" }, { raw: true });`,
    );
    expect(await differenceOf(notebook)).toBeNull();
  });

  it("name the first cell that differs", async () => {
    const notebook = notebookOf("1;", "console.log(Math.random())", "console.log(Math.random())");
    const found = await differenceOf(notebook);
    expect(found).toMatchObject({ cell: 2, codeCell: 2 });
    expect(describeDifference("a.ipynb", found!)).toMatch(
      /^a.ipynb, code cell 2 \(cell 2 of all\): two clean runs gave different bytes\n.*0\.\d/,
    );
  });
});
