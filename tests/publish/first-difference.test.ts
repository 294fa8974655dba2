import { describe, expect, it } from "vitest";
import type { CodeCell, Notebook } from "lakeproof/publish/notebook.ts";
import { describeDifference, firstDifference } from "lakeproof/publish/first-difference.ts";
import { notebookOf } from "./notebooks-of-cells.ts";

/** A notebook whose cells printed these texts. */
function printed(...texts: readonly string[]): Notebook {
  const notebook = notebookOf(...texts.map(() => "print()"));
  const cells = notebook.cells.map((cell, index): CodeCell => ({
    ...cell as CodeCell,
    outputs: [{ output_type: "stream", name: "stdout", text: texts[index]! }],
  }));
  return { ...notebook, cells };
}

describe("the difference between two runs", () => {
  it("is none for the same bytes", () => {
    expect(firstDifference(printed("a", "b"), printed("a", "b"))).toBeNull();
  });

  it("names the first cell and its first line that differ", () => {
    const found = firstDifference(printed("a", "b\nc\n", "d"), printed("a", "b\nC\n", "D"))!;
    expect(found).toMatchObject({ cell: 2, first: '"c\\n"', second: '"C\\n"' });
    expect(describeDifference("a.ipynb", found)).toBe(
      "a.ipynb, code cell 2 (cell 2 of all): two clean runs gave different bytes\n" +
        '    first:  "c\\n"\n    second: "C\\n"',
    );
  });
});
