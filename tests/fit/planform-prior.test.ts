import { describe, expect, it } from "vitest";
import { type Planform, planformPrior } from "lakeproof/fit/planform-prior.ts";
import { dragForce } from "lakeproof/model/drag-law.ts";
import { dragBuildUp } from "lakeproof/model/planform-drag.ts";

const planform: Planform = {
  span: 1.1,
  area: 0.16,
  strutCount: 1,
  strutChord: 0.12,
  strutThickness: 0.0144,
  extraDragArea: null,
};
const task = { lift: 820, density: 999.1, depth: 0.4 };

describe("the planform's prior drag law", () => {
  it("scales its lift drag with the square of the lift and leaves the rest", () => {
    const [one, two] = [1, 2].map((k) => planformPrior(planform, { ...task, lift: k * 820 }));
    expect(two!.law.e / one!.law.e).toBeCloseTo(4, 12);
    expect(two!.law.a).toBe(one!.law.a);
  });

  it("lies within a fifth of the build-up by parts over the speeds of a glide", () => {
    const parts = dragBuildUp(
      {
        span: 1.1,
        area: 0.16,
        thicknessRatio: 0.12,
        struts: { count: 1, chord: 0.12, thickness: 0.0144 },
      },
      { density: 999.1, kinematicViscosity: 1.1386e-6, gravity: 9.80665, depth: 0.4 },
    );
    const { law } = planformPrior(planform, task);
    for (const speed of [3, 3.5, 4, 4.5, 5]) {
      const built = parts({ speed, weightInWater: 820 });
      const flight = dragForce(law, speed, parts({ speed, weightInWater: 820 }).phi);
      // The prior takes a hand-made wing (0.0135 on the area), the parts a clean one: up to 40 % of the wing's friction.
      expect(Math.abs(flight / built.total - 1)).toBeLessThan(0.2);
    }
  });

  it("doubts its shape more where nobody measured the depth, and takes a usual one", () => {
    const unknown = planformPrior(planform, { ...task, depth: null });
    expect(unknown.depth).toBe(0.4);
    expect(unknown.inducedUncertainty).toBeGreaterThan(
      planformPrior(planform, task).inducedUncertainty,
    );
  });

  it("takes a usual strut where none is described", () => {
    const none = { ...planform, strutCount: null, strutChord: null, strutThickness: null };
    expect(planformPrior(none, task).law.a).toBeCloseTo(planformPrior(planform, task).law.a, 12);
  });

  it("refuses what can't fly", () => {
    for (const bad of [0, -1, NaN]) {
      expect(() => planformPrior(planform, { ...task, lift: bad })).toThrow(RangeError);
      expect(() => planformPrior({ ...planform, span: bad }, task)).toThrow(RangeError);
    }
  });
});
