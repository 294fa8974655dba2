import { describe, expect, it } from "vitest";
import type { Instrument } from "lakeproof/base/session.ts";
import { columnUncertainty, standardUncertaintyOf } from "lakeproof/check/column-uncertainty.ts";

function row(parts: Partial<Instrument>): Instrument {
  return {
    row: 2,
    own: {},
    quantity: "distance",
    instrument: "tape",
    uncertainty: 0.1,
    relative: false,
    statedAs: "standard",
    kind: "independent",
    how: null,
    ...parts,
  };
}

describe("how well a column is known", () => {
  it("adds several rows in quadrature, fixed parts and shares apart", () => {
    const rows = [
      row({ uncertainty: 0.03 }),
      row({ uncertainty: 0.04 }),
      row({ uncertainty: 0.01, relative: true }),
    ];
    const tape = columnUncertainty(rows, "distance");
    expect(tape.fixed).toBeCloseTo(0.05, 12);
    expect(tape.share).toBeCloseTo(0.01, 12);
    expect(standardUncertaintyOf(tape, 12, null)).toBeCloseTo(0.13, 12);
  });

  it("falls back to a usual instrument and says so", () => {
    expect(columnUncertainty([], "launch_speed")).toMatchObject({ fixed: 0.08, origin: "usual" });
    expect(columnUncertainty([row({})], "launch_speed").origin).toBe("usual");
  });

  it("lets a row's own uncertainty stand in for the column's", () => {
    expect(standardUncertaintyOf(columnUncertainty([], "distance"), 10, 0.5)).toBe(0.5);
  });

  it("keeps shared errors one by one, out of the scatter", () => {
    const shared = row({ kind: "common", uncertainty: 0.005, relative: true });
    const both = columnUncertainty([row({}), shared], "distance");
    expect(both.fixed).toBe(0.1);
    expect(both.common).toHaveLength(1);
    // A tape's shared stretch says nothing about how well a single reading was taken.
    expect(columnUncertainty([shared], "distance").origin).toBe("usual");
  });

  it("takes a scale's stated shared error in place of the usual one", () => {
    const scale = row({ quantity: "carried_mass", kind: "common", uncertainty: 0.2 });
    expect(columnUncertainty([], "carried_mass").fixed).toBe(0.5);
    expect(columnUncertainty([scale], "carried_mass").fixed).toBe(0);
  });

  it("counts a column without usual instrument as exact", () => {
    expect(standardUncertaintyOf(columnUncertainty([], "note"), 1, null)).toBe(0);
  });
});
