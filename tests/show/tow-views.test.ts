import { Resvg } from "@resvg/resvg-js";
import { describe, expect, it } from "vitest";
import type { FigureRecord } from "lakeproof/base/records.ts";
import { compareTows, type TowEvidence } from "lakeproof/decide/compare-tows.ts";
import { figureLiftCurve } from "lakeproof/show/figure-lift-curve.ts";
import { figureTowResiduals, towResiduals } from "lakeproof/show/figure-tow-residuals.ts";
import { figureUncertaintyShares, shareRows } from "lakeproof/show/figure-uncertainty-shares.ts";
import { withPlainColours } from "lakeproof/publish/page/figure-png.ts";
import { lines, marks, parsed, paths, scaleOf } from "../support/drawn.ts";
import { expectGolden } from "../support/golden.ts";
import { exampleTow } from "../support/towed-world.ts";

const PAPER = "var(--paper, #ffffff)";
const ALDER = "var(--design-1, #162684)";
const BIRCH = "var(--design-2, #a8170f)";
const DEGREE = Math.PI / 180;

const { session } = exampleTow("two tows");

/** Pitches that go with the lift, a little off by turns; one reading stands out. */
const pitched = {
  ...session,
  tow: session.tow.map((one, at) => ({
    ...one,
    pitch: DEGREE * (150 / one.speed! ** 2 - 2 + 0.4 * Math.sin(7 * at)),
    ...(at === 30 ? { lineTension: one.lineTension! * 1.12 } : {}),
  })),
};
const evidence = compareTows(pitched);

const FIGURES: Record<string, (evidence: TowEvidence) => FigureRecord> = {
  "lift-curve": figureLiftCurve,
  "tow-residuals": figureTowResiduals,
  "uncertainty-shares": figureUncertaintyShares,
};

describe("lift against pitch", () => {
  const { wide, caption } = figureLiftCurve(evidence);
  const [x, y] = [scaleOf(wide, "x"), scaleOf(wide, "y")];
  const curve = evidence.answer.designs[0]!.liftCurve!;

  it("draws every reading with both of its errors, in degrees", () => {
    const drawn = marks(wide, { fill: ALDER, stroke: PAPER }).map(([a, b]) => [x(a), y(b)]);
    expect(drawn.length).toBe(21);
    const bars = lines(wide, { stroke: ALDER, "stroke-opacity": "0.7" });
    const level = bars.filter((one) => one[1] === one[3]);
    const upright = bars.filter((one) => one[0] === one[2]);
    for (const [at, one] of curve.points.entries()) {
      // A hundredth of a unit is 0.0003 degrees and 0.00003 of lift coefficient.
      expect(drawn[at]![0]).toBeCloseTo(one.pitch / DEGREE, 2);
      expect(drawn[at]![1]).toBeCloseTo(one.liftCoefficient, 3);
      expect(x(level[at]![2]) - x(level[at]![0])).toBeCloseTo(2 * one.pitchUncertainty / DEGREE, 2);
      expect(Math.abs(y(upright[at]![3]) - y(upright[at]![1])))
        .toBeCloseTo(2 * one.liftCoefficientUncertainty, 3);
    }
  });

  it("draws the line with the answer's slope, and the planform's dotted through its middle", () => {
    const [line] = paths(wide, { stroke: ALDER, "stroke-width": "2.25" });
    const ends = (path: [number, number][]) =>
      [path[0]!, path.at(-1)!].map(([a, b]) => [x(a), y(b)]);
    const slope = ([one, other]: number[][]) => (other![1]! - one![1]!) / (other![0]! - one![0]!);
    expect(slope(ends(line!))).toBeCloseTo(curve.slopePerDegree.value, 3);
    expect(ends(line!)[0]![0]).toBeCloseTo(curve.from / DEGREE, 2);
    const [dotted] = paths(wide, { stroke: ALDER, "stroke-dasharray": "1.5 4" });
    expect(slope(ends(dotted!))).toBeCloseTo(curve.expectedSlope.value * DEGREE, 3);
  });

  it("says the slope a degree with its interval and that pitch counts from the level", () => {
    expect(caption).toMatch(/Alder gains 0\.\d+ \(0\.\d+ to 0\.\d+\) of lift coefficient a degree/);
    expect(caption).toContain("only the slope says something of the wing");
  });
});

describe("residuals of a tow", () => {
  const { wide, caption } = figureTowResiduals(evidence);
  const [x, y] = [scaleOf(wide, "x"), scaleOf(wide, "y")];
  const all = towResiduals(evidence);

  it("draws the answer's residuals at the speeds read, and rings the one that stands out", () => {
    for (const [at, fill] of [ALDER, BIRCH].entries()) {
      const drawn = marks(wide, { fill, stroke: PAPER }).map(([a, b]) => [x(a), y(b)]);
      const points = evidence.answer.designs[at]!.points.toSorted((a, b) => a.speed! - b.speed!);
      expect(drawn.length).toBe(points.length);
      for (const [i, one] of points.entries()) {
        expect(drawn[i]![0]).toBeCloseTo(one.speed!, 2);
        expect(drawn[i]![1]).toBeCloseTo(one.residual!, 1);
      }
    }
    expect(marks(wide, { "stroke-width": "1.25" }).length).toBe(1);
  });

  it("shades two standard uncertainties, and counts what lies outside", () => {
    const band = paths(wide, { fill: ALDER, "fill-opacity": "0.16" })[0]!.map(([, b]) => y(b));
    const { points } = all[0]!;
    for (const one of points) {
      const gap = Math.min(...band.map((edge) => Math.abs(edge - 2 * one.expected)));
      // A hundredth of a unit is under 0.001 N.
      expect(gap).toBeLessThan(0.002);
    }
    const outside = all.map((one) =>
      one.points.filter((each) => Math.abs(each.residual) > 2 * each.expected).length
    );
    expect(caption).toContain(
      `${outside[0]} of the 21 of alder and ${outside[1] || "none"} of the 21 of birch`,
    );
  });

  it("expects scatter that readings of a true law have: squares add up to their degrees of freedom", () => {
    for (const [at, { points }] of all.entries()) {
      const { fit } = evidence.designs[at]!.series!;
      const squares = points.reduce((sum, one) => sum + (one.residual / one.expected) ** 2, 0);
      // Equal where the scatter itself sets the scale, less where it is floored or set between groups.
      expect(squares).toBeLessThan(points.length - fit.effectiveParameters + 1e-6);
    }
  });
});

describe("shares of the doubt", () => {
  const { wide, caption, table } = figureUncertaintyShares(evidence);

  it("draws bars as long as the answer's shares", () => {
    const bars = (fill: string) =>
      [...parsed(wide).querySelectorAll("g")].filter((one) => one.getAttribute("fill") === fill)
        .flatMap((one) =>
          [...one.querySelectorAll("rect")].map((each) => Number(each.getAttribute("width")))
        );
    const rows = shareRows(evidence);
    for (const [at, fill] of [ALDER, BIRCH].entries()) {
      const drawn = bars(fill);
      const shares = rows.map((row) => row.shares[at]!.share);
      expect(drawn.length).toBe(shares.length);
      const units = drawn.reduce((sum, one) => sum + one, 0);
      for (const [i, share] of shares.entries()) {
        // Kept to a hundredth of a unit of some 700.
        expect(drawn[i]! / units).toBeCloseTo(share, 3);
      }
    }
  });

  it("adds to the whole for each design, own ones above shared ones, each from the largest down", () => {
    const rows = shareRows(evidence);
    for (const at of [0, 1]) {
      expect(rows.reduce((sum, row) => sum + row.shares[at]!.share, 0)).toBeCloseTo(1, 9);
    }
    const first = rows.findIndex((row) => row.shared);
    expect(rows.slice(0, first).every((row) => !row.shared)).toBe(true);
    expect(rows.slice(first).every((row) => row.shared)).toBe(true);
  });

  it("says what would help: known weights for a cell that was not calibrated", () => {
    expect(caption).toContain("calibrate the cell with known weights");
    expect(table!.rows.length).toBe(2 * shareRows(evidence).length);
  });
});

describe("every view of a tow", () => {
  for (const [name, figure] of Object.entries(FIGURES)) {
    it(`${name} looks as it did when it was last looked at`, () => {
      const { wide, narrow } = figure(evidence);
      expectGolden(`tow-views-${name}-wide`, wide);
      expectGolden(`tow-views-${name}-narrow`, narrow);
    });

    it(`${name} has a title of four to eight words and no NaN, for one design, one speed and nothing`, () => {
      const kept = (keep: (one: typeof session.tow[number]) => boolean) =>
        compareTows({ ...pitched, tow: pitched.tow.filter(keep) });
      const awkward = [
        evidence,
        kept(() => false),
        kept((one) => one.design === "birch"),
        kept((one) => one.setSpeed === session.tow[0]!.setSpeed),
        kept((one) => one.row < 5),
      ];
      for (const one of awkward) {
        const { wide, narrow, description, caption, title } = figure(one);
        expect(title.split(" ").length).toBeGreaterThanOrEqual(4);
        expect(title.split(" ").length).toBeLessThanOrEqual(8);
        expect(wide + narrow + description + caption).not.toMatch(/NaN|undefined|Infinity|null/);
        for (const svg of [wide, narrow]) {
          // Coordinates have two decimals; what the drawing is described by may have more.
          expect(svg.replace(/<desc.*?<\/desc>/s, "")).not.toMatch(
            /<style|\sstyle=|plot-clip|aria-label=|\.\d{3}/,
          );
          // The renderer's XML parser is strict.
          expect(() => new Resvg(withPlainColours(svg))).not.toThrow();
        }
      }
    });

    it(`${name} keeps a hostile name as text`, () => {
      const hostile = `<script>alert("1")</script>]]>&amp;`;
      const { wide, description } = figure(compareTows({
        ...pitched,
        designs: pitched.designs.map((one) =>
          one.design === "birch" ? { ...one, design: hostile } : one
        ),
        tow: pitched.tow.map((one) => one.design === "birch" ? { ...one, design: hostile } : one),
      }));
      expect(wide).not.toContain("<script");
      expect(description).not.toBe("");
    });
  }
});
