import { describe, expect, it } from "vitest";
import { checkCells, describeFault } from "lakeproof/publish/check-cells.ts";
import { notebookOf, ROOT } from "../publish/notebooks-of-cells.ts";

describe("the types of notebook cells", () => {
  it("are in order when later cells declare or import a name again", async () => {
    const notebook = notebookOf(
      `import { hasErrors } from "lakeproof";\nconst a: number = 1;`,
      `const a: string = "two";\nfunction f(x: string) { return x; }`,
      `import { finding, hasErrors } from "lakeproof";\nhasErrors([]);\nf(a);\nawait Deno.jupyter.display({}, { raw: true });`,
      `export const b = finding({ severity: "note", code: "x", what: "y" });\nb.code`,
    );
    expect(await checkCells([{ file: "a.ipynb", notebook }], ROOT)).toEqual([]);
  });

  it("are told by notebook, cell and the cell's line", async () => {
    const first = notebookOf("const a = 1;");
    const second = notebookOf(
      `import { nothingOfTheKind } from "lakeproof";`,
      `const a = 1;\n\nconst b: string = a;`,
    );
    const faults = await checkCells([
      { file: "a.ipynb", notebook: first },
      { file: "b.ipynb", notebook: second },
    ], ROOT);
    expect(faults.map(({ file, cell, line, code }) => ({ file, cell, line, code }))).toEqual([
      { file: "b.ipynb", cell: 1, line: 1, code: "TS2305" },
      { file: "b.ipynb", cell: 2, line: 3, code: "TS2322" },
    ]);
    expect(describeFault(faults[1]!)).toBe(
      "b.ipynb, code cell 2 (cell 2 of all), line 3:\n    const b: string = a;\n" +
        "TS2322: Type 'number' is not assignable to type 'string'.",
    );
  });

  it("can't be told of a package that is not pinned: its import is told instead", async () => {
    const notebook = notebookOf(
      "1;",
      `// a package\nimport a from "npm:no-such-package-here@1.2.3";\na;`,
    );
    expect(await checkCells([{ file: "a.ipynb", notebook }], ROOT)).toMatchObject([
      { cell: 2, line: 2, code: "Import", message: expect.stringContaining("not pinned") },
    ]);
  });

  it("are told for a cell that can't be read at all", async () => {
    const notebook = notebookOf("1;", "const a = ;");
    expect(await checkCells([{ file: "a.ipynb", notebook }], ROOT)).toMatchObject([
      { cell: 2, line: 1, code: "SyntaxError", message: "Expression expected" },
    ]);
  });
});
