import { describe, expect, it } from "vitest";
import { correlationSteps } from "lakeproof/infer/correlation-time.ts";
import { steadyPart } from "lakeproof/infer/steady-part.ts";
import { windowMean } from "lakeproof/infer/window-mean.ts";
import { seededRandom } from "lakeproof/numeric/random.ts";
import golden from "../golden/tow-instruments.json" with { type: "json" };

// Parent: tests/golden/tow-instruments.py (numpy 2.4.6, scipy 1.17.1).

/** First-order autoregression: each sample keeps `share` of the one before. */
function signal(name: string, count: number, share: number): number[] {
  const random = seededRandom(name);
  let last = random.normal();
  return Array.from({ length: count }, () => {
    last = share * last + Math.sqrt(1 - share ** 2) * random.normal();
    return last;
  });
}

const evenly = (values: readonly number[], step: number) =>
  values.map((value, i) => ({ time: i * step, value }));

describe("mean and slope of a window", () => {
  it("are those of numpy and scipy", () => {
    for (const { step, values, ...wanted } of golden.windows) {
      const found = windowMean(evenly(values, step));
      for (const [name, value] of Object.entries(wanted)) {
        // Sums of a few hundred products, in another order.
        expect(found[name as keyof typeof wanted] / value, name).toBeCloseTo(1, 10);
      }
    }
  });

  it("know how long a signal of known memory remembers", () => {
    // Integrated time of the autoregression in steps, exactly: 1/2 + share/(1 - share).
    for (const share of [0, 0.5, 0.75]) {
      const truth = 0.5 + share / (1 - share);
      const found = Array.from(
        { length: 300 },
        (_, i) => correlationSteps(signal(`${share} ${i}`, 200, share)),
      );
      const middle = found.sort((a, b) => a - b)[150]!;
      // The larger of two estimates, hence somewhat high: 1.07 to 1.13 by 1000 windows; 300 tell it to 3 %.
      expect(middle / truth).toBeGreaterThan(0.98);
      expect(middle / truth).toBeLessThan(1.2);
    }
  });

  it("hold the truth as often as they say, where samples alone would not", () => {
    const windows = 1000;
    let [held, alone, slopes] = [0, 0, 0];
    for (let i = 0; i < windows; i++) {
      const values = signal(`window ${i}`, 100, 0.75);
      const found = windowMean(evenly(values, 0.1));
      if (Math.abs(found.mean) < 2 * found.standardUncertainty) held++;
      if (Math.abs(found.mean) < 2 * found.standardDeviation / 10) alone++;
      if (Math.abs(found.slope) < 2 * found.slopeUncertainty) slopes++;
    }
    // 10 s with a memory of 0.35 s; two standard uncertainties, 95 % wanted, 93 % measured; Monte Carlo error 0.8 %.
    expect(held / windows).toBeGreaterThan(0.91);
    expect(slopes / windows).toBeGreaterThan(0.91);
    expect(held / windows).toBeLessThan(0.97);
    // Samples taken as independent.
    expect(alone / windows).toBeLessThan(0.65);
  });

  it("do not depend on where clock and signal have their zero", () => {
    const values = signal("shifted", 80, 0.6);
    const here = windowMean(evenly(values, 0.1));
    const there = windowMean(
      values.map((value, i) => ({ time: 1e6 + i * 0.1, value: value + 50 })),
    );
    expect(there.mean - 50).toBeCloseTo(here.mean, 9);
    expect(there.standardUncertainty).toBeCloseTo(here.standardUncertainty, 8);
    expect(there.slope).toBeCloseTo(here.slope, 7);
  });

  it("need three samples, finite, and a clock that runs", () => {
    expect(() => windowMean(evenly([1, 2], 1))).toThrow(/at least 3/);
    expect(() => windowMean(evenly([1, NaN, 2], 1))).toThrow(/finite/);
    expect(() => windowMean(evenly([1, 2, 3], 0))).toThrow(/must rise/);
    expect(windowMean(evenly([4, 4, 4, 4], 1)).standardUncertainty).toBe(0);
  });
});

describe("the steady part of a window", () => {
  const steady = { slope: 0.01, duration: 5 };
  const speeds = (of: (time: number) => number, seconds: number) =>
    Array.from({ length: seconds * 10 }, (_, i) => ({
      time: i / 10,
      value: of(i / 10) + 0.01 * signal("waves", seconds * 10, 0.6)[i]!,
    }));

  it("is the whole of a steady one", () => {
    expect(steadyPart(speeds(() => 5, 12), steady)).toEqual({ from: 0, to: 120 });
  });

  it("leaves out where the boat still sped up, or slowed down already", () => {
    const early = steadyPart(speeds((t) => 5 - 0.2 * Math.max(0, 4 - t), 16), steady);
    expect(early.to).toBe(160);
    expect(early.from).toBeGreaterThanOrEqual(30);
    const late = steadyPart(speeds((t) => 5 - 0.2 * Math.max(0, t - 12), 16), steady);
    expect(late.from).toBe(0);
    expect(late.to).toBeLessThanOrEqual(130);
  });

  it("is the whole again where nothing is steady", () => {
    expect(steadyPart(speeds((t) => 4 + 0.1 * t, 12), steady)).toEqual({ from: 0, to: 120 });
  });
});
