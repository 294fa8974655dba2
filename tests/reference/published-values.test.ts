import { describe, expect, it } from "vitest";
import { PUBLISHED_CHECKS, runPublishedChecks } from "lakeproof/decide/published-checks.ts";
import { readPublishedValues } from "lakeproof/read/published-values.ts";

const rows = readPublishedValues();
const results = runPublishedChecks(rows);

describe("published values", () => {
  it.each(results.map((one) => [`${one.check}: ${one.quantity} (${one.source})`, one] as const))(
    "%s",
    (_name, one) => {
      expect(one.reason).toBeNull();
      expect(Math.abs(one.difference!)).toBeLessThanOrEqual(one.tolerance);
      expect(one.agrees).toBe(true);
    },
  );

  it("each have a source, a reason for the tolerance and a function, and no function is idle", () => {
    for (const row of rows) {
      expect(row.source, row.quantity).not.toBe("");
      expect(row.toleranceReason, row.quantity).not.toBe("");
      expect(row.tolerance, row.quantity).toBeGreaterThan(0);
    }
    expect([...new Set(rows.map((row) => row.check))].sort())
      .toEqual(Object.keys(PUBLISHED_CHECKS).sort());
  });

  it("are never repeated", () => {
    const keys = rows.map((row) =>
      `${row.check} | ${row.quantity} | ${row.inputs} | ${row.source}`
    );
    expect(new Set(keys).size).toBe(keys.length);
  });

  it("disagree when the value is off, and say why when there is none", () => {
    const row = rows[0]!;
    expect(runPublishedChecks([{ ...row, published: row.published + 1 }])[0]!.agrees).toBe(false);
    const lost = runPublishedChecks([{ ...row, check: "no such check" }])[0]!;
    expect(lost).toMatchObject({ ours: null, agrees: false });
    expect(lost.reason).toMatch(/no check/);
  });
});
