import { describe, expect, it } from "vitest";
import { extractCells } from "lakeproof/publish/extract-cells.ts";
import { notebookOf } from "./notebooks-of-cells.ts";

describe("the module made of a notebook's cells", () => {
  it("keeps every line of every cell, with the way back to it", () => {
    const { text, origins } = extractCells(notebookOf("const a = 1;\na;", "const a = 2;"));
    const lines = text.split("\n");
    expect(lines.slice(0, 6)).toEqual(["{", "const a = 1;", "a;", "{", "const a = 2;", "}}"]);
    expect(origins.slice(0, 6)).toEqual([
      null,
      { index: 0, line: 1 },
      { index: 0, line: 2 },
      null,
      { index: 1, line: 1 },
      null,
    ]);
  });

  it("moves imports to the top and leaves out a name imported before", () => {
    const { text, origins } = extractCells(notebookOf(
      `import { a, type B } from "x";\nimport * as all from "y";\nimport "z";\nawait import("w");`,
      `// again\nimport {\n  a,\n  c,\n} from "x";`,
    ));
    const lines = text.split("\n");
    expect(lines.slice(0, 7)).toEqual([
      `import { a, type B } from "x";`,
      `import * as all from "y";`,
      `import "z";`,
      "import {",
      "    ",
      "  c,",
      `} from "x";`,
    ]);
    expect(origins[5]).toEqual({ index: 1, line: 4 });
    expect(lines).toContain(`await import("w");`);
  });
});
