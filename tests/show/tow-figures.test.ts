import { describe, expect, it } from "vitest";
import { compareTows, type TowEvidence } from "lakeproof/decide/compare-tows.ts";
import { figureDrag } from "lakeproof/show/figure-drag.ts";
import { figureDragDifference } from "lakeproof/show/figure-drag-difference.ts";
import { figureLiftToDrag } from "lakeproof/show/figure-lift-to-drag.ts";
import { lines, marks, parsed, paths, scaleOf } from "../support/drawn.ts";
import { exampleTow } from "../support/towed-world.ts";

const PAPER = "var(--paper, #ffffff)";
const ALDER = "var(--design-1, #162684)";
const BIRCH = "var(--design-2, #a8170f)";

const { crafts, session } = exampleTow("two tows");

/** One reading left out, one that stands out: every kind of mark is drawn. */
const evidence = compareTows({
  ...session,
  tow: session.tow.map((one, at) =>
    at === 4
      ? { ...one, leaveOut: "hit a wake" }
      : at === 30
      ? { ...one, lineTension: one.lineTension! * 1.12 }
      : one
  ),
});

/** All speeds faster than the best of alder. */
const fast = compareTows({
  ...session,
  tow: session.tow.filter((one) => one.setSpeed! > 1.25 * crafts[0]!.best.speed),
});

/** Points of a design's curve in the axes' own units, by width and colour of the line. */
function curve(svg: string, stroke: string, width: string): [number, number][] {
  const [x, y] = [scaleOf(svg, "x"), scaleOf(svg, "y")];
  return paths(svg, { stroke, "stroke-width": width })
    .filter((path) => path.length > 0).flat().map(([a, b]) => [x(a), y(b)]);
}

/** Straight between the two points on either side of a speed. */
function between(points: readonly (readonly [number, number])[], speed: number): number {
  const at = Math.max(1, points.findIndex((one) => one[0] >= speed));
  const [[x0, y0], [x1, y1]] = [points[at - 1]!, points[at]!];
  return y0 + (y1 - y0) * (speed - x0) / (x1 - x0);
}

/**
 * N: a law bends by less than 25 N per m2/s2, so a chord of 0.07 m/s lies within 0.016 N of it; coordinates are kept to a
 * hundredth of a unit, 0.005 N, and 0.0002 m/s at up to 30 N per m/s.
 */
const CHORD = 0.03;

describe("drag against speed", () => {
  const { wide, narrow } = figureDrag(evidence);

  it("draws every used reading at its speed, a little above its drag as towed, and the one left out hollow", () => {
    for (const svg of [wide, narrow]) {
      const [x, y] = [scaleOf(svg, "x"), scaleOf(svg, "y")];
      const points = evidence.answer.designs[0]!.points;
      const used = marks(svg, { fill: ALDER, stroke: PAPER }).map(([a, b]) => [x(a), y(b)]);
      const want = points.filter((one) => one.used);
      expect(used.length).toBe(20);
      for (const [at, [speed, drag]] of used.entries()) {
        const one = want[at]!;
        // Coordinates are kept to a hundredth of a unit: below 0.0002 m/s and 0.005 N here.
        expect(Math.abs(speed! - one.speed!)).toBeLessThan(1e-3);
        // The line took 7 to 15 N of 810 N, so drag lacks up to two such shares (lift to the second power).
        const share = 1 - one.lift! / evidence.answer.designs[0]!.law!.lift;
        expect(drag! - one.drag!).toBeGreaterThan(-0.01);
        expect(drag! - one.drag!).toBeLessThan(2 * share * one.drag! + 0.01);
      }
      const [out, ...more] = marks(svg, { fill: PAPER, stroke: ALDER });
      expect(more).toEqual([]);
      expect(x(out![0])).toBeCloseTo(points[4]!.speed!, 2);
    }
  });

  it("draws the law's own drag, dashed for the second design, over the speeds towed and no others", () => {
    for (const [at, stroke] of [ALDER, BIRCH].entries()) {
      const { law, dragAt } = evidence.answer.designs[at]!;
      const points = curve(wide, stroke, "2.25");
      // A hundredth of a unit is 0.0002 m/s.
      expect(points[0]![0]).toBeCloseTo(law!.from, 2);
      expect(points.at(-1)![0]).toBeCloseTo(law!.to, 2);
      for (const { speed, drag } of dragAt) {
        expect(Math.abs(between(points, speed) - drag.value)).toBeLessThan(CHORD);
      }
    }
    expect(wide).toContain('stroke-dasharray="8 4"');
  });

  it("draws the band from end to end of the answer's intervals", () => {
    const { dragAt } = evidence.answer.designs[1]!;
    const [x, y] = [scaleOf(wide, "x"), scaleOf(wide, "y")];
    const band = paths(wide, { fill: BIRCH, "fill-opacity": "0.16" })[0]!
      .map(([a, b]): [number, number] => [x(a), y(b)]);
    // One edge forth, the other back.
    const [one, other] = [band.slice(0, band.length / 2), band.slice(band.length / 2).toReversed()];
    for (const { speed, drag } of dragAt) {
      const edges = [between(one, speed), between(other, speed)].sort((a, b) => a - b);
      expect(Math.abs(edges[0]! - drag.low!)).toBeLessThan(CHORD);
      expect(Math.abs(edges[1]! - drag.high!)).toBeLessThan(CHORD);
    }
  });

  it("goes on dotted past the speeds towed, without a band there", () => {
    const beyond = paths(wide, { stroke: BIRCH, "stroke-dasharray": "1.5 4" });
    expect(beyond.length).toBe(2);
    const { law } = evidence.answer.designs[1]!;
    const x = scaleOf(wide, "x");
    expect(x(beyond[0]![0]![0])).toBeCloseTo(0.9 * law!.from, 2);
    expect(x(beyond[1]!.at(-1)![0])).toBeCloseTo(1.1 * law!.to, 2);
    const band = paths(wide, { fill: BIRCH, "fill-opacity": "0.16" })[0]!.map(([a]) => x(a));
    expect(Math.min(...band)).toBeCloseTo(law!.from, 2);
    expect(Math.max(...band)).toBeCloseTo(law!.to, 2);
  });

  it("keeps a wild reading that was left out from squeezing the rest, and says so", () => {
    const wild = compareTows({
      ...session,
      tow: session.tow.map((one, at) =>
        at === 4 ? { ...one, lineTension: 700, leaveOut: "caught the buoy" } : one
      ),
    });
    const { narrow, caption } = figureDrag(wild);
    expect(marks(narrow, { fill: PAPER, stroke: ALDER })).toEqual([]);
    expect(caption).toContain("1 of them lies above the top of the drawing.");
    expect(scaleOf(narrow, "y")(34)).toBeLessThan(130);
  });
});

describe("difference of drag", () => {
  const { wide, caption } = figureDragDifference(evidence);
  const band = evidence.pairs[0]!.band!;
  const [x, y] = [scaleOf(wide, "x"), scaleOf(wide, "y")];

  it("draws candidate less baseline with its band, and a line at zero", () => {
    const points = curve(wide, BIRCH, "2.25");
    expect(points.length).toBe(band.points.length);
    const both = paths(wide, { fill: BIRCH, "fill-opacity": "0.16" })[0]!.map(([, b]) => y(b));
    for (const [at, one] of band.points.entries()) {
      // A hundredth of a unit is 0.001 N and 0.0001 m/s.
      expect(points[at]![0]).toBeCloseTo(one.speed, 2);
      expect(Math.abs(points[at]![1] - one.difference)).toBeLessThan(0.01);
      for (const end of [one.low, one.high]) {
        expect(Math.min(...both.map((drawn) => Math.abs(drawn - end)))).toBeLessThan(0.01);
      }
    }
    const [zero] = lines(wide, { "stroke-width": "1.5" });
    expect(y(zero![1])).toBeCloseTo(0, 2);
  });

  it("thickens exactly the stretches that are claims", () => {
    const thick = paths(wide, { stroke: BIRCH, "stroke-width": "6" })
      .map((path) => [x(path[0]![0]), x(path.at(-1)![0])]);
    const claims = [...band.candidateLess, ...band.candidateMore];
    expect(thick.length).toBe(claims.length);
    for (const [at, [from, to]] of claims.entries()) {
      expect(thick[at]![0]).toBeCloseTo(from, 2);
      expect(thick[at]![1]).toBeCloseTo(to, 2);
    }
  });

  it("says on which side birch drags less, and the same in words", () => {
    const place = (words: string) => {
      const text = [...parsed(wide).querySelectorAll("text")]
        .find((one) => one.textContent.includes(words))!;
      return Number(/,([-\d.]+)\)/.exec(text.getAttribute("transform")!)![1]);
    };
    expect(place("birch drags more")).toBeLessThan(place("birch drags less"));
    expect(caption).toContain("Birch drags less than alder from");
  });

  it("shows no thick stretch where nothing is claimed, and never that they are the same", () => {
    const none: TowEvidence = {
      ...evidence,
      answer: {
        ...evidence.answer,
        comparisons: evidence.answer.comparisons.map((one) => ({
          ...one,
          candidateLessDrag: [],
          candidateMoreDrag: [],
        })),
      },
      pairs: evidence.pairs.map((one) => ({
        ...one,
        band: { ...one.band!, candidateLess: [], candidateMore: [] },
      })),
    };
    const { wide, caption } = figureDragDifference(none);
    expect(paths(wide, { stroke: BIRCH, "stroke-width": "6" })).toEqual([]);
    expect(caption).toContain("Cannot tell yet");
    expect(caption).not.toMatch(/thick|no difference/);
  });
});

describe("lift-to-drag", () => {
  it("draws each best point with both intervals", () => {
    const { wide } = figureLiftToDrag(evidence);
    const [x, y] = [scaleOf(wide, "x"), scaleOf(wide, "y")];
    for (const [at, colour] of [ALDER, BIRCH].entries()) {
      const { bestLiftToDrag: best, speedOfBestLiftToDrag: speed } = evidence.answer.designs[at]!;
      const [a, b] = marks(wide, { fill: colour, stroke: PAPER }).at(-1)!;
      expect(x(a)).toBeCloseTo(speed!.value, 2);
      expect(y(b)).toBeCloseTo(best!.value, 2);
      const bars = lines(wide, { stroke: colour, "stroke-width": "2.5" });
      const upright = bars.filter((one) => one[0] === one[2]).map((one) => [y(one[1]), y(one[3])]);
      const level = bars.filter((one) => one[1] === one[3]).map((one) => [x(one[0]), x(one[2])]);
      const ends = (from: number, to: number) => (one: number[]) =>
        Math.abs(Math.min(...one) - from) < 0.005 && Math.abs(Math.max(...one) - to) < 0.005;
      expect(upright.filter(ends(best!.low!, best!.high!)).length).toBe(1);
      expect(level.filter(ends(speed!.low!, speed!.high!)).length).toBe(1);
    }
  });

  it("draws lift over the drag of the other figure", () => {
    const ratio = curve(figureLiftToDrag(evidence).wide, ALDER, "2.25");
    const drag = curve(figureDrag(evidence).wide, ALDER, "2.25");
    const { lift } = evidence.answer.designs[0]!.law!;
    // Drag is read to 0.005 N of 48 N at least, so the product to 0.1 N of 816 N.
    ratio.forEach(([, one], at) => expect(Math.abs(one * drag[at]![1] - lift)).toBeLessThan(0.5));
  });

  it("puts a hollow mark at the edge where the best was not towed, with its bound", () => {
    const { wide, caption } = figureLiftToDrag(fast);
    const [x, y] = [scaleOf(wide, "x"), scaleOf(wide, "y")];
    const { bestLiftToDrag: best, law } = fast.answer.designs[0]!;
    const [mark] = marks(wide, { fill: PAPER, stroke: ALDER, "stroke-width": "2" });
    expect(x(mark![0])).toBeCloseTo(law!.from, 2);
    const ends = lines(wide, { stroke: ALDER, "stroke-width": "2.5" })
      .filter((one) => one[0] === one[2]).flatMap((one) => [y(one[1]), y(one[3])]);
    expect(Math.min(...ends)).toBeCloseTo(best!.low!, 2);
    expect(caption).toContain("alder: best lift-to-drag at least");
  });
});
