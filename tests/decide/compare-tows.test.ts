import { describe, expect, it } from "vitest";
import type { Session } from "lakeproof/base/session.ts";
import { compareTows } from "lakeproof/decide/compare-tows.ts";
import { dragForce } from "lakeproof/model/drag-law.ts";
import { exampleTow } from "../support/towed-world.ts";
import { withTow } from "../support/with-tow.ts";

const { crafts, session } = exampleTow("two tows");

const codes = (one: Session) => compareTows(one).answer.findings.map((two) => two.code);

describe("two designs towed in turn", () => {
  const { answer, designs, pairs } = compareTows(session);

  it("each get a law whose numbers hang together", () => {
    for (const [i, one] of answer.designs.entries()) {
      const law = one.law!;
      expect(one.design).toBe(crafts[i]!.name);
      const phi = designs[i]!.series!.fit.data.craft.phi;
      for (const { speed, drag } of one.dragAt) {
        // The same law by two ways.
        expect(drag.value).toBeCloseTo(dragForce(law, speed, phi(speed)), 8);
        expect(drag.low! < drag.value && drag.value < drag.high!).toBe(true);
      }
      expect(one.dragAt).toHaveLength(7);
      for (const j of [0, 1, 2]) expect(law.covariance[j]![j]).toBeGreaterThan(0);
      expect(one.uncertaintyShares.reduce((sum, two) => sum + two.share, 0)).toBeCloseTo(1, 12);
      expect(one.points.filter((two) => two.used)).toHaveLength(21);
    }
  });

  it("come near what they truly are", () => {
    answer.designs.forEach((one, i) => {
      const { liftToDrag, speed } = crafts[i]!.best;
      // Intervals are 4 % wide or so; a fixed seed, so this can't fail by chance.
      expect(Math.abs(one.bestLiftToDrag!.value / liftToDrag - 1)).toBeLessThan(0.06);
      expect(Math.abs(one.speedOfBestLiftToDrag!.value / speed - 1)).toBeLessThan(0.06);
    });
  });

  it("are compared over the speeds that both were towed at", () => {
    const [{ band }] = pairs as [typeof pairs[0]];
    const { low, high, value } = answer.comparisons[0]!.bestLiftToDragRatio!;
    expect(low! < value && value < high!).toBe(true);
    expect(band!.points[0]!.speed).toBe(Math.max(...designs.map((one) => one.range!.from)));
    expect(band!.points.at(-1)!.speed).toBe(Math.min(...designs.map((one) => one.range!.to)));
    const claimed = (speed: number) =>
      [...band!.candidateLess, ...band!.candidateMore].some(([from, to]) =>
        from <= speed && speed <= to
      );
    for (const { speed, low, high } of band!.points) {
      expect(claimed(speed)).toBe(low > 0 || high < 0);
    }
  });

  it("swap places with the baseline", () => {
    const turned = compareTows(session, { baseline: "birch" }).answer.comparisons[0]!;
    expect(turned).toMatchObject({ baseline: "birch", candidate: "alder" });
    const ratio = answer.comparisons[0]!.bestLiftToDragRatio!;
    expect(turned.bestLiftToDragRatio!.value).toBeCloseTo(1 / ratio.value, 12);
    expect(turned.bestLiftToDragRatio!.low).toBeCloseTo(1 / ratio.high!, 12);
    expect(turned.candidateLessDrag).toEqual(answer.comparisons[0]!.candidateMoreDrag);
  });

  it("barely move their best lift-to-drag when the speed's scale is off", () => {
    const faster = compareTows(withTow((one) => ({ speed: one.speed! * 1.01 }), session)).answer;
    // Drag is flat there; simulated: 0.07 % in 99 of 100 sessions.
    const moved = faster.designs[0]!.bestLiftToDrag!.value /
      answer.designs[0]!.bestLiftToDrag!.value;
    expect(Math.abs(moved - 1)).toBeLessThan(1e-3);
  });

  it("give points whose two coefficients share a speed", () => {
    const point = answer.designs[0]!.points[0]!;
    const covariance = point.coefficientCovariance!;
    const correlation = covariance[0]![1]! / Math.sqrt(covariance[0]![0]! * covariance[1]![1]!);
    expect(correlation).toBeGreaterThan(0.5);
    expect(point.liftCoefficient! / point.dragCoefficient!).toBeCloseTo(
      point.lift! / point.drag!,
      12,
    );
  });
});

describe("designs that did not take turns", () => {
  it("are told that the day may be the difference, and get a wider interval", () => {
    const plan = { turns: false };
    const apart = compareTows(exampleTow("two tows", plan).session).answer;
    expect(apart.findings.map((one) => one.code)).toContain("not-alternated");
    const { value, standardUncertainty: u } = apart.comparisons[0]!.bestLiftToDragRatio!;
    // Two per cent a design.
    expect(u! / value).toBeGreaterThan(0.02 * Math.SQRT2);
  });
});

describe("a best point that was not towed", () => {
  const best = crafts[0]!.best.speed;

  it("gives a lower bound and says at which end, where all speeds are faster", () => {
    const fast = { ...session, tow: session.tow.filter((one) => one.setSpeed! > 1.25 * best) };
    const [alder] = compareTows(fast).answer.designs;
    const { kind, low, high } = alder!.bestLiftToDrag!;
    expect({ kind, high }).toEqual({ kind: "atLeast", high: null });
    expect(low).toBeLessThan(crafts[0]!.best.liftToDrag);
    expect(alder!.speedOfBestLiftToDrag).toMatchObject({ kind: "atMost", low: null });
    expect(alder!.speedOfBestLiftToDrag!.high).toBe(alder!.law!.from);
    expect(codes(fast)).toContain("best-outside");
    expect(compareTows(fast).answer.comparisons[0]!.bestLiftToDragRatio).toBeNull();
  });
});

describe("a question about designs", () => {
  it("needs designs that are there, and two different ones", () => {
    expect(() => compareTows(session, { baseline: "oak" })).toThrow(/has only: alder, birch/);
    expect(() => compareTows(session, { baseline: "alder", candidates: ["alder"] })).toThrow(
      /itself/,
    );
  });
});
