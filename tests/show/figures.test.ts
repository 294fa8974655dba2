import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { FigureRecord } from "lakeproof/base/records.ts";
import type { GlideEvidence } from "lakeproof/decide/glide-evidence.ts";
import { curveLabelPlaces } from "lakeproof/show/curve-labels.ts";
import { decompositions } from "lakeproof/show/decomposition-rows.ts";
import { figureDecomposition } from "lakeproof/show/figure-decomposition.ts";
import { distanceSeries } from "lakeproof/show/distance-series.ts";
import { figureDistance } from "lakeproof/show/figure-distance.ts";
import { figureGlideRatio, glideRatioRows } from "lakeproof/show/figure-glide-ratio.ts";
import { figureRatios, ratioGroups } from "lakeproof/show/figure-ratios.ts";
import {
  expectNoHoles,
  expectTextOnly,
  expectWellMade,
  HOSTILE,
} from "../support/figure-claims.ts";
import { expectGolden } from "../support/golden.ts";
import { lines, marks, scaleOf } from "../support/drawn.ts";
import {
  inventedCannotTell,
  inventedEvidence,
  inventedRefusal,
  quantity,
  withRun,
} from "../support/invented-evidence.ts";

const PAPER = "var(--paper, #ffffff)";
const ALDER = "var(--design-1, #162684)";
const BIRCH = "var(--design-2, #a8170f)";

/** One run left out, one that stands out: every kind of mark is drawn. */
const evidence = withRun(
  withRun(inventedEvidence(), "alder", 2, { used: false, reason: "fell off the dock" }),
  "birch",
  1,
  { flag: "looks pumped" },
);

const FIGURES: Record<string, (evidence: GlideEvidence) => FigureRecord> = {
  distance: figureDistance,
  "glide-ratio": figureGlideRatio,
  decomposition: figureDecomposition,
  ratios: figureRatios,
};

/** Names changed to one that would hurt as markup. */
function renamed(whole: GlideEvidence, name: string): GlideEvidence {
  return {
    ...whole,
    answer: {
      ...whole.answer,
      comparisons: whole.answer.comparisons.map((one) => ({ ...one, candidate: name })),
      designs: whole.answer.designs.map((one) =>
        one.design === "birch" ? { ...one, design: name } : one
      ),
    },
    designs: whole.designs.map((one) => one.design === "birch" ? { ...one, design: name } : one),
  };
}

describe("distance against launch speed", () => {
  const { wide, narrow } = figureDistance(evidence);

  it("draws every run where it was flown, by the drawing's own axes", () => {
    for (const svg of [wide, narrow]) {
      const [x, y] = [scaleOf(svg, "x"), scaleOf(svg, "y")];
      const alder = distanceSeries(evidence)[0]!.points;
      const used = marks(svg, { fill: ALDER, stroke: PAPER }).map(([a, b]) => [x(a), y(b)]);
      const want = alder.filter((one) => one.used).map((one) => [one.launchSpeed, one.distance]);
      expect(used.length).toBe(6);
      // Coordinates are kept to a hundredth of a unit: 0.0001 m/s and 0.001 m here; ten times that is allowed.
      for (const [at, [speed, distance]] of used.entries()) {
        expect(Math.abs(speed! - want[at]![0]!)).toBeLessThan(1e-3);
        expect(Math.abs(distance! - want[at]![1]!)).toBeLessThan(1e-2);
      }
      const out = marks(svg, { fill: PAPER, stroke: ALDER }).map(([a, b]) => [x(a), y(b)]);
      expect(out.length).toBe(1);
      expect(out[0]![0]).toBeCloseTo(4.47, 2);
      expect(out[0]![1]).toBeCloseTo(9.05, 1);
    }
  });

  it("rings the run that stands out, and draws the common launch where it is", () => {
    const ring = marks(wide, { "stroke-width": "1.25" });
    expect(ring.map(([a]) => Number(scaleOf(wide, "x")(a).toFixed(2)))).toEqual([4.19]);
    const [launch] = lines(wide, { "stroke-width": "1.5" });
    expect(scaleOf(wide, "x")(launch![0])).toBeCloseTo(4.1, 3);
  });

  it("draws each curve with its own dash, solid for the first design", () => {
    expect(wide).toContain('stroke-dasharray="8 4"');
    expect([...wide.matchAll(/stroke-dasharray/g)].length).toBe(1);
  });
});

describe("glide ratios", () => {
  it("draws each run and its interval at its value", () => {
    const { wide } = figureGlideRatio(evidence);
    const x = scaleOf(wide, "x");
    const rows = glideRatioRows(evidence).filter((row) => row.place === 2 && row.run !== null);
    const runs = marks(wide, { fill: BIRCH, stroke: PAPER }).map(([a]) => x(a));
    for (const [at, row] of rows.entries()) expect(runs[at]).toBeCloseTo(row.value, 2);
    const bars = lines(wide, { stroke: BIRCH, "stroke-width": "3" });
    expect(bars.length).toBe(1);
    const own = evidence.answer.designs[1]!.glideRatio!;
    expect(x(Math.min(bars[0]![0], bars[0]![2]))).toBeCloseTo(own.low!, 2);
    expect(x(Math.max(bars[0]![0], bars[0]![2]))).toBeCloseTo(own.high!, 2);
  });
});

describe("a run that spent hardly any height", () => {
  it("stands at the edge with its number and squeezes nobody", () => {
    const wild = withRun(evidence, "birch", 1, { glideRatio: quantity(287, 400, "1") });
    const { wide, caption } = figureGlideRatio(wild);
    // 287 with a standard uncertainty of 400 is 290 to its two digits.
    expect(wide).toContain("290 →");
    expect(caption).toContain("stands at the edge with its number");
    const x = scaleOf(wide, "x");
    expect(x(560)).toBeLessThan(25);
    const minus = withRun(evidence, "birch", 1, { glideRatio: quantity(-60, 400, "1") });
    expect(figureGlideRatio(minus).narrow).toContain("← \u221260");
  });
});

describe("designs that can't be compared", () => {
  it("show their runs as flown, but no curve and no result that the eye could compare", () => {
    const refused = inventedRefusal();
    const { wide, caption } = figureDistance(refused);
    expect(marks(wide, { fill: BIRCH, stroke: PAPER }).length).toBe(7);
    expect(wide).not.toContain("stroke-dasharray");
    expect(wide).toContain(">birch</text>");
    expect(caption).toContain("No curve is drawn for birch: these runs can't be compared.");
    expect(glideRatioRows(refused).filter((row) => row.run === null).map((row) => row.design))
      .toEqual(["alder"]);
  });
});

describe("labels beside the curves", () => {
  it("stand in the order of the distances from the same launch, apart from each other", () => {
    const point = (launchSpeed: number, distance: number) => ({
      launchSpeed,
      distance,
      low: distance,
      high: distance,
    });
    const series = [
      { curve: [point(4, 5), point(5, 12)], points: [] },
      { curve: [point(3.5, 5), point(4.2, 9)], points: [] },
      { curve: [], points: [] },
      { curve: [], points: [point(4, 60), point(4.3, 70)] },
    ];
    const places = curveLabelPlaces(series, 4.2, (distance) => 100 - distance, {
      gap: 16,
      low: 0,
      high: 200,
    });
    expect(places.get(1)!).toBeLessThan(places.get(0)!);
    expect(places.get(0)! - places.get(1)!).toBeGreaterThanOrEqual(16);
    expect(places.has(2)).toBe(false);
    expect(places.get(3)!).toBeLessThan(places.get(1)!);
  });
});

describe("decomposition", () => {
  it("multiplies up: drag x speed = same launch, x launches = as flown", () => {
    const [part] = decompositions(evidence);
    const [drag, speed, same, launch, flown] = part!.rows;
    // Rounding of the seven digits of the invented example.
    expect(drag!.factor * speed!.factor).toBeCloseTo(same!.to, 6);
    expect(same!.to * launch!.factor).toBeCloseTo(flown!.to, 6);
    expect(launch!.from).toBeCloseTo(speed!.to, 6);
  });

  it("draws both sums where they belong, the one as flown hollow", () => {
    const { wide } = figureDecomposition(evidence);
    const x = scaleOf(wide, "x", "log");
    expect(x(marks(wide, { fill: BIRCH, stroke: PAPER })[0]![0])).toBeCloseTo(1.182, 3);
    expect(x(marks(wide, { fill: PAPER, stroke: BIRCH })[0]![0])).toBeCloseTo(0.71, 3);
    const [bar] = lines(wide, { stroke: BIRCH, "stroke-width": "3" });
    expect(x(Math.min(bar![0], bar![2]))).toBeCloseTo(1.0434, 3);
    expect(x(Math.max(bar![0], bar![2]))).toBeCloseTo(1.339, 3);
  });
});

describe("ratios", () => {
  it("draws the interval, and every used run moved to the same launch", () => {
    const { wide } = figureRatios(evidence);
    const x = scaleOf(wide, "x", "log");
    const [group] = ratioGroups(evidence);
    const drawn = marks(wide, { fill: BIRCH, stroke: PAPER }).map(([a]) => x(a));
    expect(drawn.length).toBe(group!.runs.length + 1);
    for (const [at, run] of group!.runs.entries()) {
      expect(drawn[at]).toBeCloseTo(run.ratio, 3);
    }
    expect(drawn.at(-1)).toBeCloseTo(1.182, 3);
    expect(group!.baselineRuns.length).toBe(6);
  });
});

describe("every figure", () => {
  for (const [name, figure] of Object.entries(FIGURES)) {
    it(`${name} looks as it did when it was last looked at`, () => {
      const { wide, narrow } = figure(evidence);
      expectGolden(`${name}-wide`, wide);
      expectGolden(`${name}-narrow`, narrow);
    });

    it(`${name} is named, described, on its own paper, and carries no style`, () => {
      expectWellMade(figure(evidence));
    });

    it(`${name} has the same bytes whatever was drawn before it`, () => {
      const first = figure(evidence);
      figureDistance(inventedCannotTell());
      expect(figure(evidence)).toEqual(first);
    });

    it(`${name} keeps a hostile name as text, in well-formed XML`, () => {
      expectTextOnly(figure(renamed(evidence, HOSTILE)));
    });

    it(`${name} is drawn for a refusal, one run, and none at all, without NaN`, () => {
      const none: GlideEvidence = {
        ...inventedRefusal(),
        designs: [],
        answer: { ...inventedRefusal().answer, designs: [], comparisons: [], launch: null },
      };
      const single = {
        ...inventedEvidence(),
        designs: inventedEvidence().designs.map((one) => ({ ...one, runs: one.runs.slice(0, 1) })),
      };
      for (const one of [inventedRefusal(), none, single]) expectNoHoles(figure(one));
    });
  }

  it("holds any ratio and interval on its axis", () => {
    const ratios = fc.double({ min: 0.001, max: 1000, noNaN: true });
    fc.assert(
      fc.property(
        ratios,
        ratios,
        fc.double({ min: 1.0001, max: 50, noNaN: true }),
        (value, launch, spread) => {
          const raw = {
            ratio: value * launch,
            launchEffect: launch,
            designEffect: value,
            dragEffect: value,
            energyEffect: 1,
          };
          const base = inventedEvidence();
          const ratio = {
            ...base.answer.comparisons[0]!.ratio!,
            value,
            low: value / spread,
            high: value * spread,
          };
          const whole = inventedEvidence({ raw, ratio });
          for (const figure of [figureRatios, figureDecomposition]) {
            expect(figure(whole).narrow).not.toMatch(/NaN|undefined|Infinity/);
          }
        },
      ),
      { numRuns: 25 },
    );
  });
});
