import { describe, expect, it } from "vitest";
import { compareTows } from "lakeproof/decide/compare-tows.ts";
import { drawingTolerance } from "lakeproof/decide/tow-by-drawing.ts";
import { sampleQuantile } from "lakeproof/infer/sample.ts";
import { seededRandom } from "lakeproof/numeric/random.ts";
import { exampleTow, speedsFrom } from "../support/towed-world.ts";

describe("uncertainty by first order and by drawing", () => {
  const { session } = exampleTow("two tows");
  const { answer, designs } = compareTows(session, { draws: 499 });

  it("agree with 21 readings, and nothing is said", () => {
    for (const { answer: { byDrawing } } of designs) {
      for (const both of [byDrawing!.bestLiftToDrag, byDrawing!.speedOfBestLiftToDrag]) {
        // Over simulated tows of 21 readings the ratio is 1.07 with a standard deviation of 0.07: draws and curvature.
        expect(Math.abs(both.widthRatio - 1)).toBeLessThan(0.15);
        expect(both.agree).toBe(true);
        expect(both.drawn.low! < both.firstOrder.value).toBe(true);
        expect(both.drawn.high! > both.firstOrder.value).toBe(true);
      }
    }
    expect(answer.findings.map((one) => one.code)).not.toContain("first-order-apart");
  });

  it("are the same again for the same data, and leave the answer itself alone", () => {
    expect(compareTows(session, { draws: 499 }).answer).toEqual(answer);
    const plain = compareTows(session).answer;
    expect(plain.designs[0]!.byDrawing).toBeNull();
    const without = answer.designs.map((one) => ({ ...one, byDrawing: null }));
    expect(plain).toEqual({ ...answer, designs: without });
  });

  it("part with few readings that scatter, and both are told", () => {
    const few = ["few 1", "few 2", "few 3", "few 4"].map((name) =>
      compareTows(
        exampleTow(name, { speeds: speedsFrom(3.6, 6.4, 4), sweeps: 2, process: 0.05 }).session,
        { draws: 499 },
      ).answer.findings.filter((one) => one.code === "first-order-apart")
    ).flat();
    expect(few.length).toBeGreaterThan(0);
    expect(few[0]!.what).toMatch(/ to .* by first order, .* to .* by drawing/);
  });

  it("may differ by a fifth with 8 readings, 6 % from 27 on, and by the noise of the draws", () => {
    expect(drawingTolerance(8, 1e9)).toBeCloseTo(0.27, 4);
    expect(drawingTolerance(4, 1e9)).toBeCloseTo(0.27, 4);
    expect(drawingTolerance(27, 1e9)).toBeCloseTo(0.06, 4);
    expect(drawingTolerance(60, 1e9)).toBeCloseTo(0.06, 4);
    expect(drawingTolerance(17.5, 1e9)).toBeCloseTo(0.165, 4);
    // Width of an interval between drawn 2.5 % and 97.5 % points of a normal distribution, counted over 400 times 500 draws.
    const random = seededRandom("noise of a width");
    const widths = Array.from({ length: 400 }, () => {
      const sorted = Array.from({ length: 500 }, () => random.normal()).sort((a, b) => a - b);
      return sampleQuantile(sorted, 0.975) - sampleQuantile(sorted, 0.025);
    });
    const mean = widths.reduce((sum, one) => sum + one, 0) / 400;
    const deviation = Math.sqrt(widths.reduce((sum, one) => sum + (one - mean) ** 2, 0) / 399) /
      mean;
    const noise = Math.sqrt(drawingTolerance(27, 500) ** 2 - 0.06 ** 2) / 2;
    // Standard deviation of 400: 4 % of it, three times over.
    expect(Math.abs(deviation / noise - 1)).toBeLessThan(0.12);
  });

  it("needs draws enough", () => {
    expect(() => compareTows(session, { draws: 10 })).toThrow(/100 or more/);
    expect(() => compareTows(session, { draws: 100.5 })).toThrow(/whole number/);
  });
});
