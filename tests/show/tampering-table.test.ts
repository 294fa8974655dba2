import { describe, expect, it } from "vitest";
import { tamperingTable } from "lakeproof/show/tampering-table.ts";

const row = (more: Record<string, string>) => ({
  tampering: "a digit",
  tries_left: "4",
  found_left: "4",
  tries_anew: "4",
  named_anew: "2",
  found_anew: "1",
  noted_anew: "0",
  missed_anew: "1",
  why_missed: "Nothing computes it.",
  ...more,
});

describe("the table of tampering", () => {
  it("counts what was found, and gives the reason only where something was missed", () => {
    const table = tamperingTable([row({}), row({ named_anew: "3", missed_anew: "0" })]);
    expect(table.caption).toMatch(/^16 seeded changes/);
    expect(table.rows.map((cells) => cells.map((cell) => cell.text))).toEqual([
      ["a digit", "4 of 4", "3 of 4", "Nothing computes it."],
      ["a digit", "4 of 4", "4 of 4", ""],
    ]);
  });
});
