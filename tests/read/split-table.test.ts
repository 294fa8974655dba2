import { describe, expect, it } from "vitest";
import { splitTable } from "lakeproof/read/split-table.ts";

describe("a CSV text in cells", () => {
  it("numbers rows as a spreadsheet does: blank lines count, a cell with line breaks is one row", () => {
    const { rows } = splitTable('a,b\n\n"x\ny",2\n\n\n3,4\n');
    expect(rows).toEqual([
      { row: 1, cells: ["a", "b"] },
      { row: 3, cells: ["x\ny", "2"] },
      { row: 6, cells: ["3", "4"] },
    ]);
  });

  it.each([["a,b\n1,2", ","], ["a;b\n1,5;2", ";"], ["a\tb,c\n1\t2", "\t"], ["a", ","], [
    "\n;;\na;b;c",
    ";",
  ]])(
    "finds the delimiter of %j",
    (text, delimiter) => expect(splitTable(text).delimiter).toBe(delimiter),
  );

  it("is not misled by marks inside quotes or units", () => {
    expect(splitTable('"a;b;c",d\n').delimiter).toBe(",");
    expect(splitTable("a [x;y;z],d\n").delimiter).toBe(",");
  });

  it("swallows a first line that names the delimiter, as spreadsheets do", () => {
    const { rows, delimiter } = splitTable("sep=;\r\na;b,c\r\n1;2\r\n");
    expect(delimiter).toBe(";");
    expect(rows[0]).toEqual({ row: 1, cells: ["a", "b,c"] });
  });

  it("keeps surplus cells and inch marks", () => {
    expect(splitTable('a,b\n5",2,3\n').rows[1]!.cells).toEqual(['5"', "2", "3"]);
  });

  it("says where an unfinished quote opens and keeps the rows before it", () => {
    const { rows, openQuote } = splitTable('a,b\n1,2\n3,"x\n4,5\n');
    expect(rows).toHaveLength(2);
    expect(openQuote).toEqual({ row: 3, place: 1 });
  });

  // RFC 4180, section 2, rules 5 to 7: quotes, line breaks and doubled quotes inside fields.
  it("reads the examples of RFC 4180", () => {
    expect(splitTable('"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx\r\n').rows.map((one) => one.cells))
      .toEqual([
        ["aaa", "b\r\nbb", "ccc"],
        ["zzz", "yyy", "xxx"],
      ]);
    expect(splitTable('"aaa","b""bb","ccc"').rows[0]!.cells).toEqual(["aaa", 'b"bb', "ccc"]);
  });
});
