import { describe, expect, it } from "vitest";
import { checkCells, describeFault } from "lakeproof/publish/check-cells.ts";
import { parseNotebook } from "lakeproof/publish/notebook.ts";
import { ROOT } from "../publish/notebooks-of-cells.ts";

describe("the project's own notebooks", () => {
  it("pass the type checker in every code cell", async () => {
    const files = Array.from(Deno.readDirSync(`${ROOT}/notebooks`), (entry) => entry.name)
      .filter((name) => name.endsWith(".ipynb")).sort();
    expect(files.length).toBeGreaterThan(0);
    const notebooks = files.map((file) => ({
      file,
      notebook: parseNotebook(Deno.readTextFileSync(`${ROOT}/notebooks/${file}`), file),
    }));
    expect((await checkCells(notebooks, ROOT)).map(describeFault)).toEqual([]);
  });
});
