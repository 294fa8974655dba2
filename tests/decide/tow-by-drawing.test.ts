import { describe, expect, it } from "vitest";
import { compareTows } from "lakeproof/decide/compare-tows.ts";
import { exampleTow, speedsFrom } from "../support/towed-world.ts";

describe("uncertainty by first order and by drawing", () => {
  const { session } = exampleTow("two tows");
  const { answer, designs } = compareTows(session, { draws: 499 });

  it("agree with 21 readings, and nothing is said", () => {
    for (const { byDrawing } of designs) {
      for (const both of [byDrawing!.bestLiftToDrag, byDrawing!.speedOfBestLiftToDrag]) {
        // 499 draws hold a width to about 4 %; the rest is curvature.
        expect(Math.abs(both.widthRatio - 1)).toBeLessThan(0.13);
        expect(both.drawn.low! < both.firstOrder.value).toBe(true);
        expect(both.drawn.high! > both.firstOrder.value).toBe(true);
      }
    }
    expect(answer.findings.map((one) => one.code)).not.toContain("first-order-apart");
  });

  it("are the same again for the same data, and leave the answer itself alone", () => {
    expect(compareTows(session, { draws: 499 }).designs[0]!.byDrawing).toEqual(
      designs[0]!.byDrawing,
    );
    expect(compareTows(session).answer).toEqual(answer);
    expect(compareTows(session).designs[0]!.byDrawing).toBeNull();
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

  it("needs draws enough", () => {
    expect(() => compareTows(session, { draws: 10 })).toThrow(/100 or more/);
    expect(() => compareTows(session, { draws: 100.5 })).toThrow(/whole number/);
  });
});
