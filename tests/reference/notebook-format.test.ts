/**
 * Our notebooks against the published schema of the format.
 *
 * Source: Project Jupyter, nbformat 5.11.1, `nbformat/v4/nbformat.v4.5.schema.json` (BSD 3-clause), kept beside this file.
 */
import { Ajv } from "ajv";
import { describe, expect, it } from "vitest";
import {
  formatNotebook,
  type Notebook,
  NOTEBOOK_METADATA,
  parseNotebook,
} from "lakeproof/publish/notebook.ts";
import { ROOT } from "../publish/notebooks-of-cells.ts";

const schema = JSON.parse(
  await Deno.readTextFile(new URL("./notebook-format-4.5.schema.json", import.meta.url)),
);
// The schema says draft 4 of JSON Schema, but uses nothing in which later drafts differ; this validator knows those.
delete schema["$schema"];
const valid = new Ajv({ strict: false }).compile(schema);

const WHOLE: Notebook = {
  cells: [
    { cell_type: "markdown", id: "title", metadata: {}, source: "# A\nb" },
    { cell_type: "raw", id: "raw", metadata: {}, source: "" },
    {
      cell_type: "code",
      execution_count: 1,
      id: "code",
      metadata: {},
      outputs: [
        { output_type: "stream", name: "stdout", text: "a\nb\n" },
        {
          output_type: "display_data",
          data: { "text/html": "<b>\n</b>", "application/vnd.x+json": { a: [1, null] } },
          metadata: {},
        },
        {
          output_type: "execute_result",
          data: { "text/plain": "1" },
          execution_count: 1,
          metadata: {},
        },
        { output_type: "error", ename: "Error", evalue: "x", traceback: ["Error: x"] },
      ],
      source: "1",
    },
  ],
  metadata: NOTEBOOK_METADATA,
  nbformat: 4,
  nbformat_minor: 5,
};

/** The notebook above as JSON, with one thing changed. */
// deno-lint-ignore no-explicit-any -- the change breaks the form on purpose
function changed(change: (top: any) => void): string {
  const top = JSON.parse(formatNotebook(WHOLE));
  change(top);
  return JSON.stringify(top);
}

describe("the published schema of notebooks", () => {
  it("accepts what we write, with every kind of cell and output", () => {
    expect(valid(JSON.parse(formatNotebook(WHOLE)))).toBe(true);
  });

  it("accepts the project's own notebooks, and so do we, byte for byte", async () => {
    const files = Array.from(Deno.readDirSync(`${ROOT}/notebooks`), (entry) => entry.name)
      .filter((name) => name.endsWith(".ipynb"));
    expect(files.length).toBeGreaterThan(0);
    for (const name of files) {
      const text = await Deno.readTextFile(`${ROOT}/notebooks/${name}`);
      expect(valid(JSON.parse(text)), `${name}: ${JSON.stringify(valid.errors)}`).toBe(true);
      expect(formatNotebook(parseNotebook(text, name)), name).toBe(text);
    }
  });

  it.each([
    ["a cell without an id", (top) => delete top.cells[0].id],
    ["an id with a space", (top) => top.cells[0].id = "a b"],
    ["an id of 65 letters", (top) => top.cells[0].id = "a".repeat(65)],
    ["a cell of an unknown kind", (top) => top.cells[0].cell_type = "heading"],
    ["a cell without metadata", (top) => delete top.cells[0].metadata],
    ["a cell without source", (top) => delete top.cells[0].source],
    ["a source that is a number", (top) => top.cells[0].source = 3],
    ["a code cell without outputs", (top) => delete top.cells[2].outputs],
    ["an execution count that is a text", (top) => top.cells[2].execution_count = "1"],
    ["an output of an unknown kind", (top) => top.cells[2].outputs[0].output_type = "sound"],
    ["a display without data", (top) => delete top.cells[2].outputs[1].data],
    ["an error without a name", (top) => delete top.cells[2].outputs[3].ename],
    ["a notebook without metadata", (top) => delete top.metadata],
    ["a notebook without cells", (top) => delete top.cells],
    ["another format", (top) => top.nbformat = 3],
    // deno-lint-ignore no-explicit-any -- as above
  ] as [string, (top: any) => void][])("refuses %s, and so do we", (_, change) => {
    const text = changed(change);
    expect(valid(JSON.parse(text))).toBe(false);
    expect(() => parseNotebook(text)).toThrow("as a notebook");
  });
});
