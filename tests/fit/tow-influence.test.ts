import { describe, expect, it } from "vitest";
import type { TowData } from "lakeproof/fit/tow-data.ts";
import { fitTow, type TowFit } from "lakeproof/fit/tow-fit.ts";
import { slowestSpeed, towInfluence, towMisfit } from "lakeproof/fit/tow-influence.ts";
import { fisherFUpperTail, studentTUpperTail } from "lakeproof/numeric/distributions.ts";
import { seededRandom } from "lakeproof/numeric/random.ts";
import { goldenData } from "../golden/tow-data.ts";

/** Exact speeds, fixed uncertainties, planform off: the textbook's linear model, in which all this is exact. */
function linear(change: (i: number) => number = () => 0): TowData {
  const random = seededRandom("influence");
  return {
    readings: Array.from({ length: 18 }, (_, i) => {
      const speed = 3.6 + 0.4 * Math.floor(i / 2);
      const drag = 40 * (speed / 5) ** 2 - 4 + 24 * (5 / speed) ** 2;
      return {
        speed,
        tension: drag + 1.2 * random.normal() + change(i),
        angle: 0,
        weight: 800,
        inertia: 0,
        group: String(speed),
        block: "all",
        uncertainty: {
          speed: { fixed: 0, share: 0 },
          tension: { fixed: 1, share: 0 },
          angle: 0,
        },
      };
    }),
    craft: { lift: 800, phi: () => 1, expected: null },
  };
}

function fitted(data: TowData): TowFit {
  const fit = fitTow(data, { scatterScale: 1 });
  if (!fit.ok) throw new Error(fit.reason);
  return fit;
}

const at = ({ parameters: p, referenceSpeed: v0 }: TowFit, v: number) =>
  p[0] * (v / v0) ** 2 + p[1] + p[2] * (v0 / v) ** 2;

describe("the hold of single readings on a law", () => {
  const data = linear();
  const fit = fitted(data);
  const influence = towInfluence(fit);

  it("adds up to the number of terms", () => {
    expect(influence.reduce((sum, one) => sum + one.leverage, 0)).toBeCloseTo(3, 9);
    const golden = fitTow(goldenData("birch"));
    if (!golden.ok) throw new Error(golden.reason);
    const sum = towInfluence(golden).reduce((total, one) => total + one.leverage, 0);
    expect(sum).toBeCloseTo(golden.effectiveParameters, 9);
  });

  it("is what happens when the reading is left out", () => {
    for (const i of [0, 5, 17]) {
      const without = fitted({ ...data, readings: data.readings.filter((_, j) => j !== i) });
      const { speed, tension } = data.readings[i]!;
      const gap = tension - at(without, speed);
      const squares = without.scaledResiduals.reduce((sum, z) => sum + z * z, 0);
      const { leverage, cook, pValue } = influence[i]!;
      // Residual of the reading left out is the residual over one less its leverage.
      expect(gap).toBeCloseTo(fit.residuals[i]! / (1 - leverage), 8);
      const t = Math.abs(gap) * Math.sqrt((1 - leverage) / (squares / 14));
      expect(pValue).toBeCloseTo(2 * studentTUpperTail(t, 14), 8);
      const moved = data.readings.reduce(
        (sum, one) => sum + (at(fit, one.speed) - at(without, one.speed)) ** 2,
        0,
      );
      expect(cook).toBeCloseTo(moved / (3 * fit.within), 8);
    }
  });

  it("finds the one reading that is off", () => {
    const off = towInfluence(fitted(linear((i) => i === 7 ? 9 : 0)));
    expect(off.findIndex((one) => one.pValue === Math.min(...off.map((two) => two.pValue)))).toBe(
      7,
    );
    expect(off[7]!.pValue * 18).toBeLessThan(0.05);
  });
});

describe("repeats against the law", () => {
  it("are compared by the F of their means' misfit over their own scatter", () => {
    const fit = fitted(linear());
    let pure = 0;
    for (let i = 0; i < 18; i += 2) pure += (fit.residuals[i]! - fit.residuals[i + 1]!) ** 2 / 2;
    const whole = fit.residuals.reduce((sum, r) => sum + r * r, 0);
    const f = (whole - pure) / 6 / (pure / 9);
    expect(towMisfit(fit)).toBeCloseTo(fisherFUpperTail(f, { numerator: 6, denominator: 9 }), 9);
  });

  it("show what changes with speed, and nothing where no speed was repeated", () => {
    const waves = fitted(linear((i) => Math.floor(i / 2) % 2 ? 4 : -4));
    expect(towMisfit(waves)).toBeLessThan(0.01);
    const single = linear();
    const readings = single.readings.map((one, i) => ({ ...one, group: String(i) }));
    expect(towMisfit(fitted({ ...single, readings }))).toBeNull();
  });
});

describe("the slowest readings", () => {
  it("are judged by the law of the others", () => {
    const fit = fitted(linear((i) => i < 2 ? 12 : 0));
    const slow = slowestSpeed(fit)!;
    expect(slow.places).toEqual([0, 1]);
    const gap = [0, 1].reduce((sum, i) => {
      const { tension, speed } = fit.data.readings[i]!;
      return sum + (tension - at(slow.without, speed)) / 2;
    }, 0);
    expect(slow.excess).toBeCloseTo(gap, 9);
    expect(slow.pValue).toBeLessThan(0.01);
    expect(slowestSpeed(fitted(linear()))!.pValue).toBeGreaterThan(0.01);
  });

  it("can't be judged by two or three speeds", () => {
    const data = linear();
    expect(slowestSpeed(fitted({ ...data, readings: data.readings.slice(0, 6) }))).toBeNull();
  });
});
