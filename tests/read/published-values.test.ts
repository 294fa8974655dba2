import { describe, expect, it } from "vitest";
import {
  readLinearCertifiedSets,
  readNonlinearCertifiedSets,
} from "lakeproof/read/certified-sets.ts";
import { readPublishedValues } from "lakeproof/read/published-values.ts";
import { numberIn, readSharedTable } from "lakeproof/read/shared-table.ts";

describe("the project's own reference tables", () => {
  it("are found from a folder deep inside the project", () => {
    const before = Deno.cwd();
    try {
      Deno.chdir(new URL("../../lib/decide", import.meta.url));
      expect(readPublishedValues().length).toBeGreaterThan(50);
    } finally {
      Deno.chdir(before);
    }
  });

  it("hold the sets whole: as many rows and coefficients as NIST states", () => {
    const stated = new Map(
      [...readSharedTable("nist-linear-sets.csv"), ...readSharedTable("nist-nonlinear-sets.csv")]
        .map((row) => [row.set, [numberIn(row, "observations"), numberIn(row, "parameters")]]),
    );
    const sets = [...readLinearCertifiedSets(), ...readNonlinearCertifiedSets()];
    expect(sets).toHaveLength(38);
    for (const one of sets) {
      expect([one.observed.length, one.parameters.length], one.set).toEqual(stated.get(one.set));
      expect(one.predictors, one.set).toHaveLength(one.observed.length);
    }
  });

  it("say what is wrong with a cell that should hold a number", () => {
    expect(() => numberIn({ value: "" }, "value")).toThrow(/value must be a number/);
    expect(() => numberIn({}, "value")).toThrow(/value/);
    expect(() => readSharedTable("no-such-table.csv")).toThrow();
  });
});
