/** Small notebooks for tests, as the publisher holds them. */
import { MEDIA } from "lakeproof/base/records.ts";
import type { Cell, CodeCell, MarkdownCell, Notebook } from "lakeproof/publish/notebook.ts";
import { NOTEBOOK_METADATA } from "lakeproof/publish/notebook.ts";

/** A cell of prose. */
export function prose(source: string, id = "prose"): MarkdownCell {
  return { cell_type: "markdown", id, metadata: {}, source };
}

/** A cell of code, not run. */
export function code(source: string, id = "code"): CodeCell {
  return { cell_type: "code", id, metadata: {}, source, execution_count: null, outputs: [] };
}

/** A cell of code that showed an answer. */
export function shown(name: string, answer: unknown, id = "shown"): CodeCell {
  const data = { [MEDIA.answer]: { name, answer } as never, "text/plain": name };
  return {
    ...code("await show(record);", id),
    execution_count: 1,
    outputs: [{ output_type: "display_data", data, metadata: {} }],
  };
}

/** A notebook of these cells. */
export function notebookOf(...cells: Cell[]): Notebook {
  return { cells, metadata: NOTEBOOK_METADATA, nbformat: 4, nbformat_minor: 5 };
}
