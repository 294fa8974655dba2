import { describe, expect, it } from "vitest";
import { compareGlides } from "lakeproof/decide/compare-glides.ts";
import { GLIDES, session } from "./invented-session.ts";
import golden from "../golden/glide-verdict.json" with { type: "json" };

describe("two designs, one launched faster", () => {
  const plain = compareGlides([session()]);
  const comparison = plain.answer.comparisons[0]!;

  it("finds the shorter glider better, against its raw distances", () => {
    expect(comparison.verdict).toBe("candidate-better");
    expect(comparison.raw!.ratio).toBeLessThan(1);
    expect(plain.naive[0]!.high).toBeLessThan(1);
  });

  it("splits the raw ratio exactly", () => {
    const { ratio, launchEffect, designEffect, dragEffect, energyEffect } = comparison.raw!;
    expect(launchEffect * designEffect).toBeCloseTo(ratio, 12);
    expect(dragEffect * energyEffect).toBeCloseTo(designEffect, 12);
    expect(designEffect).toBe(comparison.ratio!.value);
  });

  it("compares raw distances as Welch's test in scipy does", () => {
    const { ratio, low, high, pValue } = golden.seven.naive;
    // Rounding of double arithmetic only.
    expect(plain.naive[0]!.ratio).toBeCloseTo(ratio, 12);
    expect(plain.naive[0]!.low).toBeCloseTo(low, 12);
    expect(plain.naive[0]!.high).toBeCloseTo(high, 12);
    expect(plain.naive[0]!.pValue).toBeCloseTo(pValue, 12);
  });

  it("takes the launch midway between the mean launches, the mean drop and the mean mass", () => {
    expect(plain.answer.launch).toEqual({ speed: 4.2, drop: 0.19, mass: 84 });
  });

  it("lets conditions override the launch, and the asker override conditions", () => {
    const condition = {
      row: 2,
      own: {},
      unit: "m/s",
      uncertainty: null,
      statedAs: null,
      block: null,
      note: null,
    };
    const stated = session({
      conditions: [{ ...condition, quantity: "reference_launch_speed", value: 4 }],
    });
    expect(compareGlides([stated]).answer.launch!.speed).toBe(4);
    expect(compareGlides([stated], { launchSpeed: 3.8 }).answer.launch!.speed).toBe(3.8);
  });

  it("gives the same bytes whatever the order of rows", () => {
    const turned = session({ glides: [...GLIDES].reverse() });
    expect(JSON.stringify(compareGlides([turned]))).toBe(JSON.stringify(plain));
  });

  it("turns over when candidate and baseline change places", () => {
    const turned = compareGlides([session()], { baseline: "birch" }).answer.comparisons[0]!;
    expect(turned.verdict).toBe("baseline-better");
    expect(turned.ratio!.value * comparison.ratio!.value).toBeCloseTo(1, 12);
    expect(turned.ratio!.low! * comparison.ratio!.high!).toBeCloseTo(1, 12);
  });

  it("shares the variance out in full", () => {
    const shares = Object.values(comparison.varianceShares!);
    expect(shares.reduce((total, share) => total + share, 0)).toBeCloseTo(1, 12);
  });

  it("draws each curve through the answer's own distance at the common launch", () => {
    for (const one of plain.designs) {
      const at = one.curve.findIndex((point) => point.launchSpeed >= 4.2);
      const [before, after] = [one.curve[at - 1]!, one.curve[at]!];
      const share = (4.2 - before.launchSpeed) / (after.launchSpeed - before.launchSpeed);
      const between = before.distance + share * (after.distance - before.distance);
      // Chord of a curve between points 0.05 m/s apart: second derivative 4 m/(m/s)^2 at most, so 0.001 m.
      expect(Math.abs(between - Math.exp(one.logDistance))).toBeLessThan(0.002);
    }
  });
});
