import { describe, expect, it } from "vitest";
import { verificationText } from "lakeproof/tasks/verification-text.ts";
import type { CheckedResult, CheckFinding } from "lakeproof/publish/verify/finding-of-check.ts";

const result = (more: Partial<CheckedResult> = {}): CheckedResult => ({
  file: "answers/01-a-glide.json",
  path: "comparisons[birch]/ratio/value",
  published: 1.2,
  fresh: 1.2,
  standardUncertainty: 0.05,
  unit: "1",
  sameness: "same",
  apart: 0,
  ...more,
});

const text = (
  findings: readonly CheckFinding[],
  results: readonly CheckedResult[],
  all = false,
) =>
  verificationText({
    findings,
    results,
    notes: ["Published with Deno 1.0.0, run again with Deno 2.9.6."],
    counts: { files: 9, checksums: 8, notebooks: 1, figures: 2, tables: 2 },
    fingerprint: "abc",
  }, all);

describe("a check in words", () => {
  it("ends with same when nothing differs, after the notes and the fingerprint", () => {
    const lines = text([], [result()]).split("\n");
    expect(lines.at(-1)).toBe("Same: everything in this folder is what its own source gives.");
    expect(lines.at(-2)).toBe("Fingerprint of this folder: abc");
    expect(lines).toContain("Published with Deno 1.0.0, run again with Deno 2.9.6.");
  });

  it("counts results by sameness and tells the one furthest apart", () => {
    const printed = text([], [result(), result({ sameness: "different", apart: -3.21 })]);
    expect(printed).toMatch(/^01-a-glide +2 +1 +0 +1 +3\.2$/m);
    expect(printed).not.toContain("ratio/value");
    expect(text([], [result({ apart: -3.21 })], true)).toMatch(
      /ratio\/value +1\.2 +1\.2 +-3\.2 +same/,
    );
  });

  it("tells the first twelve of each kind, and all when asked", () => {
    const many = Array.from({ length: 15 }, (_, at): CheckFinding => ({
      kind: "page",
      file: `${at}.html`,
      what: "differs\x1b[2J",
    }));
    expect(text(many, [])).toContain("and 3 more (--all tells every one)");
    expect(text(many, [], true)).toContain("14.html");
    expect(text(many, [])).not.toContain("\x1b");
    expect(text(many, [])).toMatch(/DIFFERENT: 15 things/);
  });
});
