import { Resvg } from "@resvg/resvg-js";
import { describe, expect, it } from "vitest";
import type { FigureRecord } from "lakeproof/base/records.ts";
import { estimateTakeoff, type TakeoffEvidence } from "lakeproof/decide/estimate-takeoff.ts";
import { NORMAL_95 } from "lakeproof/fit/takeoff-band.ts";
import { figurePredictedParts, predictedLayers } from "lakeproof/show/figure-predicted-parts.ts";
import { figurePower } from "lakeproof/show/figure-power.ts";
import { figureTowForce } from "lakeproof/show/figure-tow-force.ts";
import { figureWaterAir } from "lakeproof/show/figure-water-air.ts";
import { lines, marks, parsed, paths, scaleOf } from "../support/drawn.ts";
import { expectGolden } from "../support/golden.ts";
import { ALDER_ROW, BIRCH_ROW, DESIGNS_HEAD, takeoffSession } from "../support/invented-takeoff.ts";

const PAPER = "var(--paper, #ffffff)";
const ALDER = "var(--design-1, #162684)";
const BIRCH = "var(--design-2, #a8170f)";

const plain = estimateTakeoff(takeoffSession(DESIGNS_HEAD + ALDER_ROW + BIRCH_ROW), { draws: 300 });

/** Two measured drags beside the prediction of birch: what a tow would have told. */
const evidence: TakeoffEvidence = {
  ...plain,
  designs: plain.designs.map((one) => {
    if (one.answer.design !== "birch") return one;
    const lift = one.prepared.craft.mass * one.prepared.craft.gravity - one.answer.buoyancy!;
    const told = (value: number, u: number) => ({
      value,
      standardUncertainty: u,
      degreesOfFreedom: null,
      low: value - 2 * u,
      high: value + 2 * u,
      level: 0.95,
      kind: "interval" as const,
      unit: "N",
    });
    const measured = [[4.2, 57, 52], [5.6, 66, 57]].map(([speed, own, predicted]) => ({
      session: "invented",
      from: "tow" as const,
      speed: speed!,
      lift,
      measured: told(own!, 1.5),
      predicted: told(predicted!, 4),
      excess: told(own! - predicted!, 4.3),
    }));
    return { ...one, answer: { ...one.answer, measured } };
  }),
};

/** A name that would hurt as markup. */
const hostile = estimateTakeoff(
  takeoffSession(
    DESIGNS_HEAD + BIRCH_ROW.replace("birch", '"<script>alert(1)</script>]]>&amp;"'),
  ),
  { draws: 100 },
);

const FIGURES: Readonly<Record<string, (evidence: TakeoffEvidence) => FigureRecord>> = {
  "tow-force": figureTowForce,
  "tow-power": figurePower,
  "predicted-parts": (one) => figurePredictedParts(one, one.answer.designs[1]?.design ?? "birch"),
  "water-air": figureWaterAir,
};

/** Points of a design's curve in the axes' own units, by width and colour of the line. */
function curve(svg: string, stroke: string, width: string): [number, number][] {
  const [x, y] = [scaleOf(svg, "x"), scaleOf(svg, "y")];
  return paths(svg, { stroke, "stroke-width": width })
    .filter((path) => path.length > 2).flat().map(([a, b]) => [x(a), y(b)]);
}

describe("tow force and power over speed", () => {
  it("draw the library's own curve from stall on, dashed for the second design", () => {
    for (const [figure, part] of [[figureTowForce, "tension"], [figurePower, "power"]] as const) {
      const { wide } = figure(evidence);
      for (const [at, stroke] of [ALDER, BIRCH].entries()) {
        const { curve: own } = evidence.designs[at]!.band!;
        const drawn = curve(wide, stroke, "2.25");
        expect(drawn.length).toBe(own.speed.length);
        drawn.forEach(([speed, value], i) => {
          // Coordinates are kept to a hundredth of a unit: 0.0002 m/s, and a ten thousandth of the axis.
          expect(Math.abs(speed - own.speed[i]!)).toBeLessThan(1e-3);
          expect(Math.abs(value / own[part][i]! - 1)).toBeLessThan(2e-3);
        });
      }
      expect(wide).toContain('stroke-dasharray="8 4"');
    }
  });
  it("draw the band at the ends of the prediction's intervals", () => {
    const { wide } = figureTowForce(evidence);
    const y = scaleOf(wide, "y");
    const { curve: own, logUncertainty } = evidence.designs[0]!.band!;
    const band = paths(wide, { fill: ALDER, "fill-opacity": "0.16" })[0]!.map(([, b]) => y(b));
    own.tension.forEach((value, i) => {
      for (const side of [-1, 1]) {
        const want = value * Math.exp(side * NORMAL_95 * logUncertainty[i]!);
        expect(Math.min(...band.map((one) => Math.abs(one - want)))).toBeLessThan(0.02);
      }
    });
  });
  it("mark takeoff at its speed and force, with both intervals", () => {
    const { wide } = figureTowForce(evidence);
    const [x, y] = [scaleOf(wide, "x"), scaleOf(wide, "y")];
    const { takeoffSpeed: speed, towForceAtTakeoff: force } = evidence.answer.designs[1]!;
    const found = marks(wide, { fill: BIRCH, stroke: PAPER });
    expect(
      found.some(([a, b]) =>
        Math.abs(x(a) - speed!.value) < 1e-3 && Math.abs(y(b) - force!.value) < 0.02
      ),
    ).toBe(true);
    const bars = lines(wide, { stroke: BIRCH, "stroke-width": "2" });
    const level = bars.filter((one) => one[1] === one[3]).map((one) => [x(one[0]), x(one[2])]);
    expect(level.some(([a, b]) =>
      Math.abs(Math.min(a!, b!) - speed!.low!) < 1e-3 &&
      Math.abs(Math.max(a!, b!) - speed!.high!) < 1e-3
    )).toBe(true);
  });
});

describe("drag by its parts", () => {
  const birch = evidence.designs[1]!;
  const { wide, caption } = figurePredictedParts(evidence, "birch");

  it("stacks layers that add up to the whole", () => {
    const layers = predictedLayers(birch);
    expect(layers.map((one) => one.label)).toEqual([
      "induced, waves",
      "section, with lift",
      "wing friction",
      "struts, spray",
      "rider in air",
    ]);
    birch.band!.curve.total.forEach((total, i) => {
      expect(layers.at(-1)!.points[i]!.to / total).toBeCloseTo(1, 12);
    });
    const top = curve(wide, BIRCH, "2.25");
    birch.band!.curve.total.forEach((total, i) => {
      expect(Math.abs(top[i]![1] - total)).toBeLessThan(0.03);
    });
  });
  it("puts what was measured where it was measured, and says how it stands", () => {
    const [x, y] = [scaleOf(wide, "x"), scaleOf(wide, "y")];
    const found = marks(wide, { fill: BIRCH, stroke: PAPER }).map(([a, b]) => [x(a), y(b)]);
    for (const one of birch.answer.measured) {
      expect(
        found.some(([a, b]) =>
          Math.abs(a! - one.speed) < 1e-3 && Math.abs(b! - one.measured.value) < 0.03
        ),
      ).toBe(true);
    }
    expect(caption).toContain("drags more than predicted at 1 of 2 speeds");
  });
});

describe("water beside air", () => {
  it("draws each interval on its own axis, and the axes stand as the roots of the densities", () => {
    const { wide } = figureWaterAir(evidence);
    const [alder] = evidence.answer.designs;
    const ratio = Math.sqrt(evidence.answer.setting!.density / alder!.inAir!.density);
    const bottom = [...parsed(wide).querySelectorAll("g")].filter((one) =>
      one.getAttribute("font-variant") === "tabular-nums"
    );
    // Two axes of x: the lower in the water's speeds, the upper in the air's.
    const ticks = bottom.map((group) =>
      [...group.querySelectorAll("text")].map((text) => ({
        unit: Number(/translate\(([-\d.]+)/.exec(text.getAttribute("transform") ?? "")?.[1]),
        value: Number(text.textContent),
      }))
    );
    const scale = (of: { unit: number; value: number }[]) => {
      const [first, last] = [of[0]!, of.at(-1)!];
      return (unit: number) =>
        first.value +
        (unit - first.unit) * (last.value - first.value) / (last.unit - first.unit);
    };
    const [water, air] = ticks.map(scale);
    // Ticks are kept to a hundredth of a unit of 500.
    expect(Math.abs(air!(300) / water!(300) / ratio - 1)).toBeLessThan(1e-3);
    const bars = lines(wide, { stroke: ALDER, "stroke-width": "3" });
    const ends = (one: { low: number | null; high: number | null }, by: number) =>
      bars.some((bar) =>
        Math.abs(water!(bar[0]) - one.low! / by) < 2e-3 &&
        Math.abs(water!(bar[2]) - one.high! / by) < 2e-3
      );
    expect(ends(alder!.takeoffSpeed!, 1)).toBe(true);
    expect(ends(alder!.inAir!.takeoffSpeed!, ratio)).toBe(true);
    expect(ends(alder!.inAir!.leastDragSpeed!, ratio)).toBe(true);
  });
});

describe("every figure of a takeoff", () => {
  for (const [name, figure] of Object.entries(FIGURES)) {
    it(`${name} looks as it did when it was last looked at`, () => {
      const { wide, narrow } = figure(evidence);
      expectGolden(`takeoff-${name}-wide`, wide);
      expectGolden(`takeoff-${name}-narrow`, narrow);
    });
    it(`${name} is named, described, and carries no style`, () => {
      const record = figure(evidence);
      expect(record.title.split(" ").length).toBeGreaterThanOrEqual(4);
      expect(record.title.split(" ").length).toBeLessThanOrEqual(8);
      for (const svg of [record.wide, record.narrow]) {
        const own = svg === record.wide ? "wide" : "narrow";
        const root = parsed(svg);
        expect(root.getAttribute("aria-labelledby")).toBe(`${name}-${own}-title`);
        expect(svg).not.toMatch(/<style|\sstyle=|plot-clip|aria-label=|\.\d{3}/);
        expect(Number(root.getAttribute("width"))).toBe(own === "wide" ? 560 : 344);
      }
      expect(record.table!.rows.length).toBeGreaterThan(0);
    });
    it(`${name} keeps a hostile name as text, in well-formed XML`, () => {
      const record = name === "predicted-parts"
        ? figurePredictedParts(hostile, hostile.answer.designs[0]!.design)
        : figure(hostile);
      for (const svg of [record.wide, record.narrow]) {
        expect(svg).not.toContain("<script");
        expect(() => new Resvg(svg)).not.toThrow();
      }
    });
    it(`${name} is drawn where nothing flies, without NaN`, () => {
      const none = [
        estimateTakeoff(takeoffSession(DESIGNS_HEAD)),
        estimateTakeoff(takeoffSession(DESIGNS_HEAD + ALDER_ROW.replace("2.4", "120"))),
      ];
      for (const one of none) {
        const { wide, narrow, caption } = figure(one);
        expect(wide + narrow + caption).not.toMatch(/NaN|undefined|Infinity|null/);
      }
    });
  }
});
