import { describe, expect, it } from "vitest";
import { DataError } from "lakeproof/base/errors.ts";
import { formatNotebook, type Notebook, parseNotebook } from "lakeproof/publish/notebook.ts";

const notebook: Notebook = {
  cells: [
    {
      cell_type: "markdown",
      id: "title",
      metadata: {},
      source: "# Glides\n\nÜber den See, 5 µm, 🛶",
    },
    {
      cell_type: "code",
      execution_count: 1,
      id: "answer",
      metadata: {},
      outputs: [
        { name: "stdout", output_type: "stream", text: "one\ntwo\n" },
        {
          data: {
            "application/vnd.x+json": { lines: ["kept", "apart"], "10": 1, "9": 2 },
            "image/png": "aGk=\n",
            "image/svg+xml": "<svg>\n</svg>",
            "text/plain": "a\nb",
          },
          metadata: {},
          output_type: "display_data",
        },
      ],
      source: "console.log('one')\nshow()",
    },
  ],
  metadata: {},
  nbformat: 4,
  nbformat_minor: 5,
};

describe("a notebook's text", () => {
  it("comes back from its own text byte for byte", () => {
    const text = formatNotebook(notebook);
    expect(formatNotebook(parseNotebook(text))).toBe(text);
    expect(parseNotebook(text)).toEqual(notebook);
  });

  it("has sorted keys, one space a level, other alphabets as they are and a newline at the end", () => {
    const text = formatNotebook(notebook);
    expect(text.startsWith('{\n "cells": [\n  {\n   "cell_type": "markdown",\n   "id": ')).toBe(
      true,
    );
    expect(text).toContain("Über den See, 5 µm, 🛶");
    expect(text.indexOf('"10": 1')).toBeLessThan(text.indexOf('"9": 2'));
    expect(text.endsWith("}\n")).toBe(true);
  });

  it("splits texts into lines but keeps JSON media and pictures whole", () => {
    const text = formatNotebook(notebook);
    expect(text).toContain('"source": [\n    "console.log(\'one\')\\n",\n    "show()"\n   ]');
    expect(text).toContain('"image/png": "aGk=\\n"');
    expect(parseNotebook(text).cells[1]).toEqual(notebook.cells[1]);
  });

  it("refuses a number that JSON can't hold", () => {
    const bad = { ...notebook, metadata: { x: NaN } };
    expect(() => formatNotebook(bad)).toThrow("NaN");
  });
});

describe("reading a notebook", () => {
  const broken = (change: (top: { cells: Record<string, unknown>[] }) => void) => {
    const top = JSON.parse(formatNotebook(notebook));
    change(top);
    return () => parseNotebook(JSON.stringify(top), "01-glides.ipynb");
  };

  it("names the file and the cell of each fault, all at once", () => {
    const read = broken((top) => {
      delete top.cells[0]!["id"];
      top.cells[1]!["outputs"] = [{ output_type: "surprise" }];
    });
    expect(read).toThrow(DataError);
    try {
      read();
    } catch (error) {
      const found = (error as DataError).findings;
      expect(found.map((one) => [one.file, one.what])).toEqual([
        ["01-glides.ipynb", "cell 1: it has no id of 1 to 64 letters, digits, - or _"],
        ["01-glides.ipynb", "cell 2: its output 1 is not of a known form"],
      ]);
    }
  });

  it("refuses text that is no JSON, no object, or an older format", () => {
    expect(() => parseNotebook("# hello", "a.ipynb")).toThrow("a.ipynb");
    expect(() => parseNotebook("[]", "a.ipynb")).toThrow("no JSON object");
    expect(broken((top) => Object.assign(top, { nbformat_minor: 2 }))).toThrow("4.2");
  });

  it("refuses an id used twice", () => {
    expect(broken((top) => top.cells[1]!["id"] = "title")).toThrow("used before");
  });
});
