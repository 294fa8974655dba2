import { describe, expect, it } from "vitest";
import type { FigureRecord } from "lakeproof/base/records.ts";
import { compareTows, type TowEvidence } from "lakeproof/decide/compare-tows.ts";
import { ELLIPSE_95 } from "lakeproof/numeric/error-ellipse.ts";
import { dragStacks } from "lakeproof/show/drag-stack.ts";
import { figureDragParts } from "lakeproof/show/figure-drag-parts.ts";
import { figurePolar } from "lakeproof/show/figure-polar.ts";
import { towPolars } from "lakeproof/show/tow-polar.ts";
import { marks, parsed, paths, scaleOf } from "../support/drawn.ts";
import {
  expectNoHoles,
  expectTextOnly,
  expectWellMade,
  HOSTILE,
} from "../support/figure-claims.ts";
import { expectGolden } from "../support/golden.ts";
import { taredWorld, untared } from "../support/tared-world.ts";
import { exampleTow } from "../support/towed-world.ts";

const PAPER = "var(--paper, #ffffff)", INK = "var(--ink, #1a1e23)";
const ALDER = "var(--design-1, #162684)", BIRCH = "var(--design-2, #a8170f)";
const DENSITY = 999.1026;

const { session } = exampleTow("two tows");
/** One reading left out, so that a hollow mark is drawn. */
const evidence = compareTows({
  ...session,
  tow: session.tow.map((one, at) => at === 4 ? { ...one, leaveOut: "hit a wake" } : one),
});
const tared = taredWorld("struts alone").session;
const split = compareTows(tared);

type Points = readonly (readonly [number, number])[];

const inAxes = (svg: string, points: Points): [number, number][] => {
  const [x, y] = [scaleOf(svg, "x"), scaleOf(svg, "y")];
  return points.map(([a, b]) => [x(a), y(b)]);
};

/** Straight between the two points on either side. */
function between(points: Points, at: number): number {
  const sorted = [...points].sort((a, b) => a[0] - b[0]);
  const found = sorted.findIndex((one) => one[0] >= at);
  // An end may be rounded to just short of where it is asked for.
  const next = found < 0 ? sorted.length - 1 : Math.max(1, found);
  const [[x0, y0], [x1, y1]] = [sorted[next - 1]!, sorted[next]!];
  return y0 + (y1 - y0) * (at - x0) / (x1 - x0);
}

describe("polar", () => {
  const { wide, narrow, caption } = figurePolar(evidence);
  const alder = evidence.answer.designs[0]!;

  it("draws every used reading at its coefficients, and the one left out hollow, without an ellipse", () => {
    for (const svg of [wide, narrow]) {
      const used = inAxes(svg, marks(svg, { fill: ALDER, stroke: PAPER }));
      const want = alder.points.filter((one) => one.used);
      expect(used.length).toBe(want.length);
      for (const [at, [lift, drag]] of used.entries()) {
        // Coordinates are kept to a hundredth of a unit: below 3e-5 of the lift and 4e-6 of the drag coefficient.
        expect(lift).toBeCloseTo(want[at]!.liftCoefficient!, 3);
        expect(drag).toBeCloseTo(want[at]!.dragCoefficient!, 4);
      }
      expect(marks(svg, { fill: PAPER, stroke: ALDER }).length).toBe(1);
      expect(paths(svg, { stroke: ALDER, "fill-opacity": "0.05" }).length).toBe(want.length);
    }
  });

  it("draws ellipses whose points lie at the 95 % Mahalanobis distance of the reading's covariance", () => {
    const ellipses = paths(wide, { stroke: ALDER, "fill-opacity": "0.05" });
    alder.points.filter((one) => one.used).forEach((one, at) => {
      const [[a, b], [, d]] = one.coefficientCovariance as [[number, number], [number, number]];
      for (const [lift, drag] of inAxes(wide, ellipses[at]!)) {
        const [p, q] = [lift - one.liftCoefficient!, drag - one.dragCoefficient!];
        const distance = Math.sqrt((d * p * p - 2 * b * p * q + a * q * q) / (a * d - b * b));
        // A hundredth of a unit is up to 4e-6 of the drag coefficient, of which the short half axis of the least ellipse has 2e-4.
        expect(Math.abs(distance / ELLIPSE_95 - 1)).toBeLessThan(0.04);
      }
    });
  });

  it("tilts every ellipse upwards: a wrong speed moves both coefficients the same way", () => {
    for (const one of alder.points) expect(one.coefficientCovariance![0]![1]).toBeGreaterThan(0);
  });

  it("draws the law fitted to forces, told in coefficients, over the speeds towed", () => {
    for (const [at, stroke] of [ALDER, BIRCH].entries()) {
      const { law, dragAt, design } = evidence.answer.designs[at]!;
      const { area } = session.designs.find((one) => one.design === design)!;
      const curve = inAxes(wide, paths(wide, { stroke, "stroke-width": "2.25" }).flat());
      for (const { speed, drag } of dragAt) {
        const pressure = DENSITY / 2 * speed ** 2 * area;
        // A chord of a sixtieth of the range lies within 1e-4 of the law, relative to it.
        expect(Math.abs(between(curve, law!.lift / pressure) / (drag.value / pressure) - 1))
          .toBeLessThan(2e-3);
      }
      const ends = curve.map(([lift]) => lift);
      expect(Math.max(...ends)).toBeCloseTo(law!.lift / (DENSITY / 2 * law!.from ** 2 * area), 2);
      expect(Math.min(...ends)).toBeCloseTo(law!.lift / (DENSITY / 2 * law!.to ** 2 * area), 2);
    }
  });

  it("draws the drag's interval as a band, and goes on dotted past it", () => {
    const { law, dragAt } = alder;
    const { area } = session.designs[0]!;
    const band = inAxes(wide, paths(wide, { fill: ALDER, "fill-opacity": "0.16" })[0]!);
    const [one, other] = [band.slice(0, band.length / 2), band.slice(band.length / 2)];
    for (const { speed, drag } of dragAt) {
      const pressure = DENSITY / 2 * speed ** 2 * area;
      const edges = [one, other].map((edge) => between(edge, law!.lift / pressure) * pressure)
        .sort((a, b) => a - b);
      // At a given lift coefficient the mass counts a little otherwise than at a given speed: 0.6 % of it at one kilogram.
      expect(Math.abs(edges[0]! / drag.low! - 1)).toBeLessThan(0.006);
      expect(Math.abs(edges[1]! / drag.high! - 1)).toBeLessThan(0.006);
    }
    expect(paths(wide, { stroke: ALDER, "stroke-dasharray": "1.5 4" }).length).toBe(2);
  });

  it("lets about 95 of 100 readings fall between the thin lines", () => {
    let inside = 0, all = 0;
    for (let i = 0; i < 6; i++) {
      for (const { curve, readings } of towPolars(compareTows(exampleTow(`polar ${i}`).session))) {
        const edge = (name: "readingLow" | "readingHigh", at: number) =>
          between(curve.map((one) => [one.liftCoefficient, one[name]] as const), at);
        for (const { liftCoefficient: at, dragCoefficient } of readings) {
          all++;
          inside += Number(
            dragCoefficient > edge("readingLow", at) && dragCoefficient < edge("readingHigh", at),
          );
        }
      }
    }
    // 252 readings: 1.4 points a standard error; those that made the law lie a little nearer to it.
    expect(all).toBe(252);
    expect(inside / all).toBeGreaterThan(0.92);
    expect(inside / all).toBeLessThan(0.995);
  });

  it("says what the ellipses are and what is in none of them", () => {
    expect(caption).toContain("95\u00a0% region");
    expect(caption).toContain("area or density");
    expect(caption).toContain("Hollow marks count in no law.");
  });
});

describe("drag by parts", () => {
  const { wide, caption } = figureDragParts(split);
  const answer = split.answer.designs[0]!;
  const layers = dragStacks(split)[0]!.layers;

  it("stacks the parts from zero to the law's own drag, the wing on top", () => {
    expect(layers.map((one) => one.part)).toEqual([
      "rider in the air",
      "struts and spray",
      "junction",
      "wing",
    ]);
    const drawn = [
      ...["0.4", "0.16", "0.3"].map((opacity) =>
        paths(wide, { fill: INK, "fill-opacity": opacity })
      ),
      paths(wide, { fill: ALDER, "fill-opacity": "0.28" }),
    ].map((one) => inAxes(wide, one[0]!));
    const law = inAxes(wide, paths(wide, { stroke: ALDER, "stroke-width": "2.25" }).flat());
    for (const { speed, parts } of answer.parts) {
      let below = 0;
      for (const [at, area] of drawn.entries()) {
        const edges = [area.slice(0, area.length / 2), area.slice(area.length / 2)]
          .map((edge) => between(edge, speed)).sort((a, b) => a - b);
        const wanted = parts.find((one) => one.part === layers[at]!.part)!.drag.value;
        // A hundredth of a unit is 0.004 N; a chord of a sixtieth of the range lies within 0.02 N.
        expect(edges[0]!).toBeCloseTo(below, 1);
        expect(Math.abs(edges[1]! - edges[0]! - wanted)).toBeLessThan(0.04);
        below += wanted;
      }
      expect(Math.abs(between(law, speed) - below)).toBeLessThan(0.04);
    }
  });

  it("draws all readings and names every part beside its layer, in the order of the layers", () => {
    expect(marks(wide, { fill: ALDER, stroke: PAPER }).length).toBe(21);
    const place = (part: string) => {
      const text = [...parsed(wide).querySelectorAll("text")]
        .find((one) => one.textContent === part)!;
      return Number(/,([-\d.]+)\)/.exec(text.getAttribute("transform")!)![1]);
    };
    const places = layers.map((one) => place(one.part));
    expect([...places].sort((a, b) => b - a)).toEqual(places);
  });

  it("says in its caption the numbers of the answer", () => {
    const wing = answer.wingLiftToDrag[1]!.liftToDrag;
    expect(caption).toContain(`The wing of alder alone`);
    const said = Number(/lift-to-drag of ([\d.]+) \(/.exec(caption)![1]);
    expect(Math.abs(said - wing.value)).toBeLessThan(wing.standardUncertainty! / 2);
    expect(caption).toContain("(tared)");
    expect(figureDragParts(compareTows(untared(tared))).caption).not.toContain("(tared)");
  });

  it("gives the designs of one answer one scale", () => {
    const [one, two] = ["alder", "birch"].map((name) => figureDragParts(evidence, name));
    expect(scaleOf(one!.wide, "y")(100)).toBeCloseTo(scaleOf(two!.wide, "y")(100), 6);
    expect(one!.name).not.toBe(two!.name);
  });
});

const FIGURES: Record<string, readonly [(one: TowEvidence) => FigureRecord, TowEvidence]> = {
  polar: [figurePolar, evidence],
  "drag-parts": [figureDragParts, split],
};

describe("figures of coefficients and parts", () => {
  for (const [name, [figure, shown]] of Object.entries(FIGURES)) {
    it(`${name} looks as it did when it was last looked at`, () => {
      const { wide, narrow } = figure(shown);
      expectGolden(`tow-${name}-wide`, wide);
      expectGolden(`tow-${name}-narrow`, narrow);
    });

    it(`${name} is named, described, on its own paper, and carries no style`, () => {
      expectWellMade(figure(shown));
    });

    it(`${name} keeps a hostile name as text, in well-formed XML`, () => {
      expectTextOnly(figure({
        ...shown,
        answer: {
          ...shown.answer,
          designs: shown.answer.designs.map((one) => ({ ...one, design: HOSTILE })),
        },
        designs: shown.designs.map((one) => ({
          ...one,
          name: HOSTILE,
          answer: { ...one.answer, design: HOSTILE },
        })),
      }));
    });

    it(`${name} is drawn for one design, one speed and nothing at all, without NaN`, () => {
      const kept = (keep: (one: typeof session.tow[number]) => boolean) =>
        compareTows({ ...session, tow: session.tow.filter(keep) });
      const awkward = [
        kept(() => false),
        kept((one) => one.design === "birch"),
        kept((one) => one.setSpeed === session.tow[0]!.setSpeed),
        kept((one) => one.row === 2),
        compareTows(untared(tared)),
      ];
      for (const one of awkward) expectNoHoles(figure(one));
    });
  }
});
