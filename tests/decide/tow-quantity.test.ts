import { describe, expect, it } from "vitest";
import { compareTows } from "lakeproof/decide/compare-tows.ts";
import {
  edgeQuantity,
  leastPowerQuantity,
  speedQuantity,
  sureSide,
} from "lakeproof/decide/tow-quantity.ts";
import { liftToDragEstimate } from "lakeproof/fit/tow-estimates.ts";
import type { TowEstimate } from "lakeproof/fit/tow-series.ts";
import { bestSentence } from "lakeproof/show/tow-sentence.ts";
import { exampleTow } from "../support/towed-world.ts";

/** ln of a speed whose variance is known. */
const speed = (value: number, u: number): TowEstimate => ({
  log: Math.log(value),
  dataVariance: 0,
  dataDegreesOfFreedom: 10,
  planformVariance: u ** 2,
  sweepVariance: 0,
  sweepDegreesOfFreedom: 2,
  shared: [],
});
const range = { from: 4, to: 6 };

describe("a speed by the rule of the edge", () => {
  it.each([
    // 1.959964 u is the half width of 95 % (normal quantile, any handbook of statistics).
    [4 * Math.exp(-1.97 * 0.03), "below"],
    [4 * Math.exp(-1.95 * 0.03), null],
    [5, null],
    [6 * Math.exp(1.95 * 0.03), null],
    [6 * Math.exp(1.97 * 0.03), "above"],
  ])("lies on a side only with its whole interval (%f m/s)", (value, side) => {
    expect(sureSide(speed(value, 0.03), range)).toBe(side);
  });

  it("is told as the edge outside, and with both ends where the interval reaches in", () => {
    expect(speedQuantity(speed(3.5, 0.03), range)).toMatchObject({
      kind: "atMost",
      low: null,
      high: 4,
    });
    expect(speedQuantity(speed(7, 0.03), range)).toMatchObject({
      kind: "atLeast",
      low: 6,
      high: null,
    });
    const near = speedQuantity(speed(3.9, 0.03), range);
    expect(near.kind).toBe("interval");
    expect(near.low!).toBeLessThan(3.9);
    expect(near.high!).toBeGreaterThan(4);
  });
});

describe("a bound from the edge", () => {
  it("is the lower end of the interval of 95 %", () => {
    const { value, low, high, kind } = edgeQuantity(speed(12, 0.05));
    expect(kind).toBe("atLeast");
    expect(high).toBeNull();
    // z(0.975) = 1.959964, handbook table.
    expect(low! / value).toBeCloseTo(Math.exp(-1.959964 * 0.05), 7);
  });
});

describe("towed speeds that hardly hold the best one", () => {
  const { crafts: [alder], session } = exampleTow("edge", {
    speeds: ({ best }) => [1.03, 1.1, 1.18, 1.27, 1.37].map((share) => share * best.speed),
  });
  const evidence = compareTows(session);
  const [first] = evidence.designs;

  it("tell the whole interval with a word, not a side, where the estimate alone lies outside", () => {
    expect(first!.best).toMatchObject({ where: null, towed: false });
    const { bestLiftToDrag, speedOfBestLiftToDrag: at } = first!.answer;
    expect([bestLiftToDrag!.kind, at!.kind]).toEqual(["interval", "interval"]);
    expect(bestLiftToDrag!.low!).toBeLessThan(alder!.best.liftToDrag);
    expect(bestLiftToDrag!.high!).toBeGreaterThan(alder!.best.liftToDrag);
    const word = first!.findings.find((one) => one.code === "best-near-edge")!;
    expect(word.severity).toBe("warning");
    expect(word.what).toContain("leans on the planform");
    expect(word.wanted).toContain("slower");
    expect(bestSentence(first!.answer)).toMatch(
      /\); that is slower than was towed, so it leans on the planform\.$/,
    );
  });

  it("show no parts of the drag at a best speed that was not towed", () => {
    const { from, to } = first!.answer.law!;
    for (const { speed } of first!.answer.parts) {
      expect(speed).toBeGreaterThanOrEqual(from);
      expect(speed).toBeLessThanOrEqual(to);
    }
  });

  it("leave the least power below, where power rises at the slowest reading", () => {
    const told = leastPowerQuantity(first!.series!, first!.range!);
    expect(told).toMatchObject({ kind: "atMost", high: first!.range!.from });
    expect(first!.answer.leastPowerSpeed).toEqual(told);
  });

  it("bound the best by the lift-to-drag at the edge, which is less", () => {
    const edge = edgeQuantity(liftToDragEstimate(first!.series!, first!.range!.from)!);
    expect(edge.low!).toBeLessThan(alder!.best.liftToDrag);
    expect(edge.value).toBeLessThan(first!.answer.bestLiftToDrag!.value);
  });
});
