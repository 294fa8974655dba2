import { describe, expect, it } from "vitest";
import { finding } from "lakeproof/base/finding.ts";
import { gatherFindings } from "lakeproof/read/gather-findings.ts";

const note = (row: number) =>
  finding({ severity: "note", code: "empty-mark", file: "a.csv", row, what: "-" });
const error = (row: number) =>
  finding({ severity: "error", code: "not-a-number", file: "a.csv", row, what: "x" });

describe("findings that say the same", () => {
  it("are one with a count when they are notes, the first row standing for all", () => {
    expect(gatherFindings([note(3), error(4), note(5)])).toEqual([
      { ...note(3), count: 2 },
      error(4),
    ]);
  });

  it("keep every row when they are errors or warnings", () => {
    expect(gatherFindings([error(3), error(4)])).toEqual([error(3), error(4)]);
  });
});
