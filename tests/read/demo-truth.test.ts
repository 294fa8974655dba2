import { describe, expect, it } from "vitest";
import { trueRatioAt } from "lakeproof/read/demo-truth.ts";

const rows = [[4, 0.1, 1.2], [4, 0.2, 1.3], [5, 0.1, 1.4], [5, 0.2, 1.5]].map(
  ([launchSpeed, drop, ratio]) => ({
    baseline: "alder",
    candidate: "birch",
    launchSpeed: launchSpeed!,
    drop: drop!,
    ratio: ratio!,
  }),
);
const pair = { baseline: "alder", candidate: "birch" };

describe("the truth of a demo session", () => {
  it("is read off the grid, and between its rows by straight lines", () => {
    expect(trueRatioAt(rows, pair, { speed: 5, drop: 0.2 })).toBe(1.5);
    expect(trueRatioAt(rows, pair, { speed: 4.5, drop: 0.15 })).toBeCloseTo(1.35, 12);
  });

  it("is not known outside the grid or for other designs", () => {
    expect(trueRatioAt(rows, pair, { speed: 5.1, drop: 0.1 })).toBeNull();
    expect(trueRatioAt(rows, { baseline: "alder", candidate: "cedar" }, { speed: 4, drop: 0.1 }))
      .toBeNull();
  });
});
