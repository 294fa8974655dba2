import { describe, expect, it } from "vitest";
import { compareGlides } from "lakeproof/decide/compare-glides.ts";
import { allFinite, change, codes } from "./changed-session.ts";
import { session } from "./invented-session.ts";

describe("awkward launches and ends", () => {
  it("follows both designs to a common end where the board only ever touched", () => {
    const touched = compareGlides([change(() => ({ ended: "touched" }))]);
    const comparison = touched.answer.comparisons[0]!;
    expect(comparison.end).toBe("common");
    expect(codes(touched)).toContain("common-end");
    // Launch, drop and end are the same; only what moves with each wing is not: 1 % of the mass at most.
    expect(Math.abs(comparison.raw!.energyEffect - 1)).toBeLessThan(0.01);
  });

  it("refuses a launch below the ends where the board only ever touched", () => {
    const touched = change(() => ({ ended: "touched" }));
    const slow = compareGlides([touched], { launchSpeed: 2.5 });
    expect(slow.answer.comparisons[0]!.verdict).toBe("refused");
    expect(codes(slow)).toContain("launch-too-slow");
  });

  it("never lets a run without drop into the level, and says so", () => {
    const missing = compareGlides([change((one) => one.run === "3" ? { drop: null } : {})]);
    const use = missing.answer.runs.find((one) => one.run === "3")!;
    expect(use.reason).toContain("no drop");
    expect(use.glideRatio).toBeNull();
  });

  it("leaves out a run without end speed or mass, with the reason", () => {
    const missing = compareGlides([
      change((one) =>
        one.run === "13" ? { endSpeed: null } : one.run === "4" ? { carriedMass: null } : {}
      ),
    ]);
    expect(missing.answer.runs.find((one) => one.run === "13")!.reason).toContain("end speed");
    expect(missing.answer.runs.find((one) => one.run === "4")!.reason).toContain("mass");
  });

  it("refuses a launch that hardly leaves a glide", () => {
    const slow = compareGlides([session()], { launchSpeed: 3.2 });
    expect(slow.answer.comparisons[0]!.verdict).toBe("refused");
    expect(codes(slow)).toContain("launch-too-slow");
    const slower = compareGlides([session()], { launchSpeed: 2 });
    expect(slower.answer.comparisons[0]!.verdict).toBe("refused");
    expect(allFinite(slower)).toBe(true);
  });

  it("says when the launch lies beyond those flown, and widens for it", () => {
    const far = compareGlides([session()], { launchSpeed: 5.2 });
    expect(codes(far)).toContain("launch-beyond-runs");
    expect(codes(compareGlides([session()]))).not.toContain("launch-beyond-runs");
    const width = (one: typeof far) => {
      const { low, high } = one.answer.comparisons[0]!.ratio!;
      return Math.log(high! / low!);
    };
    expect(width(far)).toBeGreaterThan(width(compareGlides([session()])));
  });

  it("widens the interval for an error that all runs share, as far as launches differ", () => {
    const share = (columns: readonly string[]) => {
      const shared = session({
        instruments: columns.map((quantity, i) => ({
          row: 2 + i,
          own: {},
          quantity,
          instrument: "camera",
          uncertainty: 0.15,
          relative: false,
          statedAs: "standard",
          kind: "common",
          how: null,
        })),
      });
      return compareGlides([shared]).answer.comparisons[0]!.varianceShares!.commonErrors;
    };
    expect(share(["launch_speed"])).toBeGreaterThan(0.01);
    // One camera for both speeds shifts both alike, and most of it cancels.
    expect(share(["launch_speed", "end_speed"])).toBeLessThan(share(["launch_speed"]));
    // A spring balance's half kilogram hardly matters to a ratio.
    expect(share([])).toBeLessThan(0.001);
  });

  it("says that alike launches did not test the shape of drag, and nothing of it where they differ", () => {
    const alike = compareGlides([change((_, i) => ({ launchSpeed: 4.2 + 0.03 * (i % 8) }))]);
    const note = alike.answer.findings.find((one) => one.code === "launched-alike")!;
    expect(note.severity).toBe("note");
    expect(note.what).toContain("shape of drag over speed was not tested");
    expect(alike.answer.comparisons[0]!.varianceShares!.launchDifference).toBeLessThan(0.01);
    expect(codes(compareGlides([session()]))).not.toContain("launched-alike");
  });

  it("warns where the designs were flown at other depths, and counts the surface to the design", () => {
    const deep = (depth: number) =>
      compareGlides([change((one) => one.design === "birch" ? { depth } : {})]);
    expect(codes(deep(0.45))).not.toContain("depths-differ");
    const [same, other] = [deep(0.4), deep(0.6)];
    expect(other.answer.findings.find((one) => one.code === "depths-differ")!.what).toContain(
      "0.60 and 0.40 m",
    );
    // Level and prediction are taken at the same depth, so that the ratio itself hardly moves: it says what was flown.
    const ratio = (one: typeof same) => one.answer.comparisons[0]!.ratio!.value;
    expect(Math.abs(ratio(other) / ratio(same) - 1)).toBeLessThan(0.03);
  });
});
