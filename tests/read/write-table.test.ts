import { describe, expect, it } from "vitest";
import { splitTable } from "lakeproof/read/split-table.ts";
import { writeTable } from "lakeproof/read/write-table.ts";

describe("tables written for people", () => {
  it("keep numbers numbers, minus signs too, and guard text that would be a formula", () => {
    const text = writeTable(["a", "b", "c"], [[-2.5, "=1+1", "-x"], [0, "@a", null]]);
    expect(text).toBe("a,b,c\n-2.5,'=1+1,'-x\n0,'@a,\n");
  });

  it("read back as they were written", () => {
    const rows = [["a,b", 'say "x"', "two\nlines"]];
    const [, row] = splitTable(writeTable(["x", "y", "z"], rows)).rows;
    expect(row!.cells).toEqual(rows[0]);
  });
});
