import { describe, expect, it } from "vitest";
import { propagate, propagateSeveral } from "lakeproof/infer/propagate.ts";
import { propagateByDrawing } from "lakeproof/infer/propagate-by-drawing.ts";
import { seededRandom } from "lakeproof/numeric/random.ts";

const length = { name: "length", value: 20, standardUncertainty: 0.1 };
const time = { name: "time", value: 5, standardUncertainty: 0.05 };
const speed = ([l, t]: readonly number[]) => l! / t!;

describe("first-order propagation", () => {
  it("adds relative uncertainties of a quotient in squares", () => {
    const { quantity, contributions } = propagate(speed, [length, time], { unit: "m/s" });
    expect(quantity.standardUncertainty).toBeCloseTo(4 * Math.hypot(0.005, 0.01), 11);
    expect(contributions.map((one) => one.uncertainty)[1]).toBeCloseTo(-0.04, 11);
    expect(quantity.degreesOfFreedom).toBeNull();
    expect(quantity.unit).toBe("m/s");
  });

  it("lets fully correlated inputs cancel in a difference", () => {
    const inputs = [length, { ...length, name: "other" }];
    const correlations = [{ between: ["length", "other"] as const, coefficient: 1 }];
    const { quantity } = propagate(([a, b]) => a! - b!, inputs, { correlations });
    expect(quantity.standardUncertainty).toBeCloseTo(0, 7);
  });

  it("gives degrees of freedom by Welch and Satterthwaite: two alike with 5 each have 10", () => {
    const inputs = ["a", "b"].map((name) => ({
      name,
      value: 1,
      standardUncertainty: 1,
      degreesOfFreedom: 5,
    }));
    const add = ([a, b]: readonly number[]) => a! + b!;
    expect(propagate(add, inputs).quantity.degreesOfFreedom).toBeCloseTo(10, 8);
    // That formula does not hold for correlated inputs: the smaller of theirs is kept.
    const correlations = [{ between: ["a", "b"] as const, coefficient: 0.5 }];
    expect(propagate(add, inputs, { correlations }).quantity.degreesOfFreedom).toBe(5);
  });

  it("passes over an input that is exactly known", () => {
    const { quantity } = propagate(speed, [length, { ...time, standardUncertainty: 0 }]);
    expect(quantity.standardUncertainty).toBeCloseTo(0.02, 12);
    const none = [length, time].map((one) => ({ ...one, standardUncertainty: 0 }));
    expect(propagate(speed, none).quantity).toMatchObject({ low: 4, high: 4 });
  });

  it("gives the covariance of several results", () => {
    const { covariance } = propagateSeveral(([a, b]) => [a! + b!, a! - b!], [length, time]);
    expect(covariance[0]![1]).toBeCloseTo(0.1 ** 2 - 0.05 ** 2, 12);
  });

  it("names the inputs at a flat spot, where a zero slope hides what they do", () => {
    // Source: JCGM 101:2008, 9.4.2.2 (comparison loss, both parts zero with u = 0.005): first order says 0, drawing says
    // 5.0e-5 for value and uncertainty alike (from memory, and by hand: E = 2 u^2, var = 4 u^4).
    const parts = [
      { name: "x1", value: 0, standardUncertainty: 0.005 },
      { name: "x2", value: 0, standardUncertainty: 0.005 },
    ];
    const loss = ([x1, x2]: readonly number[]) => x1! ** 2 + x2! ** 2;
    const straight = propagate(loss, parts);
    expect(straight.quantity.standardUncertainty).toBeLessThan(1e-12);
    expect(straight.flat).toEqual(["x1", "x2"]);
    const drawn = propagateByDrawing(loss, parts, { random: seededRandom("flat"), draws: 100_000 });
    expect([drawn.value, drawn.standardUncertainty!].map((one) => one.toExponential(1)))
      .toEqual(["5.0e-5", "5.0e-5"]);
    expect(propagate(speed, [length, time]).flat).toEqual([]);
    expect(
      propagate(([x]) => Math.sqrt(x!), [{ name: "x", value: 0.1, standardUncertainty: 1 }]).flat,
    )
      .toEqual([]);
  });

  it("refuses what makes no sense, and NaN", () => {
    expect(() => propagate(speed, [length, length])).toThrow(/name of its own/);
    expect(() => propagate(() => NaN, [length])).toThrow(RangeError);
    expect(() => propagate(speed, [length, { ...time, standardUncertainty: -1 }])).toThrow(/time/);
    const correlations = [{ between: ["length", "width"] as const, coefficient: 0.5 }];
    expect(() => propagate(speed, [length, time], { correlations })).toThrow(/width/);
  });
});

describe("propagation by drawing", () => {
  it("agrees with the first-order law where the result is nearly straight, correlation included", () => {
    const correlations = [{ between: ["length", "time"] as const, coefficient: -0.8 }];
    const random = seededRandom("speed");
    // A tenth of the uncertainties, so that curvature does not show.
    const inputs = [length, time].map((one) => ({
      ...one,
      standardUncertainty: one.standardUncertainty / 10,
    }));
    const drawn = propagateByDrawing(speed, inputs, { random, correlations });
    const first = propagate(speed, inputs, { correlations }).quantity;
    // Four Monte Carlo errors of 100000 draws: 0.22 % of a standard deviation, 0.85 % of it for an end.
    expect(Math.abs(drawn.standardUncertainty! / first.standardUncertainty! - 1)).toBeLessThan(
      0.009,
    );
    expect(Math.abs(drawn.high! - first.high!)).toBeLessThan(0.034 * first.standardUncertainty!);
  });

  it("sees the curvature that the first-order law misses: a square of a zero mean", () => {
    const input = { name: "z", value: 0, standardUncertainty: 1 };
    const square = ([z]: readonly number[]) => z! * z!;
    expect(propagate(square, [input]).quantity.standardUncertainty).toBeCloseTo(0, 9);
    const drawn = propagateByDrawing(square, [input], { random: seededRandom("square") });
    // Chi-square with one degree of freedom: mean 1, standard deviation sqrt 2; four Monte Carlo errors.
    expect(Math.abs(drawn.value - 1)).toBeLessThan(4 * Math.sqrt(2 / 1e5));
    expect(drawn.low).toBeGreaterThanOrEqual(0);
    const shortest = propagateByDrawing(square, [input], {
      random: seededRandom("square"),
      coverage: "shortest",
    });
    expect(shortest.high! - shortest.low!).toBeLessThan(drawn.high! - drawn.low!);
  });

  it("draws few degrees of freedom with their long tails (JCGM 101, 6.4.9)", () => {
    const input = { name: "x", value: 0, standardUncertainty: 1, degreesOfFreedom: 4 };
    const drawn = propagateByDrawing(([x]) => x!, [input], { random: seededRandom("t") });
    // t of 4 degrees of freedom: 97.5 % point 2.776; Monte Carlo error 0.0175 an end.
    expect(Math.abs(drawn.high! - 2.776)).toBeLessThan(0.07);
  });

  it("refuses contradictory correlations", () => {
    const inputs = ["a", "b", "c"].map((name) => ({ name, value: 0, standardUncertainty: 1 }));
    const correlations = [["a", "b", 1], ["b", "c", 1], ["a", "c", -1]] as const;
    expect(() =>
      propagateByDrawing(([a]) => a!, inputs, {
        random: seededRandom("no"),
        correlations: correlations.map(([a, b, coefficient]) => ({ between: [a, b], coefficient })),
      })
    ).toThrow(/contradict/);
  });
});
