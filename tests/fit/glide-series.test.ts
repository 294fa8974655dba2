import { describe, expect, it } from "vitest";
import type { GlideRun, GlideTarget } from "lakeproof/fit/glide-run.ts";
import { fitGlideSeries, logDistance } from "lakeproof/fit/glide-series.ts";
import type { GlidingCraft } from "lakeproof/fit/gliding-craft.ts";
import { decay } from "lakeproof/model/decay.ts";
import { ALDER, ALDER_RUNS, TARGET } from "../golden/glide-example.ts";

const GRAVITY = 9.80665;
const craft: GlidingCraft = { weight: 800, inertia: 1.04, a: 1.6, d: 0, e: 560, phi: null };
const target: GlideTarget = {
  speed: 4.2,
  drop: 0,
  end: null,
  gravity: GRAVITY,
  shapeUncertainty: 0.3,
};

/** A flat glide without noise, its distance by the decay's closed form. */
function flatGlide(launchSpeed: number, endSpeed: number): GlideRun {
  return {
    launchSpeed,
    endSpeed,
    drop: 0,
    distance: distanceOf(launchSpeed, endSpeed),
    inLevel: true,
    inEnd: true,
    craft,
    uncertainty: { launchSpeed: 0.08, endSpeed: 0.08, drop: 0.02, distance: 0.15 },
  };
}

/** Distance of a flat glide by the closed form of the decay, which the code under test does not use. */
function distanceOf(launchSpeed: number, endSpeed: number): number {
  const effectiveMass = craft.inertia * craft.weight / GRAVITY;
  return decay(craft, { launchSpeed, endSpeed, effectiveMass }).distance;
}

function value<T extends { ok: boolean }>(result: T): Extract<T, { ok: true }> {
  if (!result.ok) throw new Error(JSON.stringify(result));
  return result as Extract<T, { ok: true }>;
}

describe("one design's runs at the common launch", () => {
  const runs = [[4.5, 3], [4.0, 3.05], [4.8, 2.95], [4.3, 3]].map(([v0, v1]) =>
    flatGlide(v0!, v1!)
  );

  it("give back the closed form of the decay when there is no noise", () => {
    const series = value(fitGlideSeries(runs, craft, target));
    expect(series.level).toBeCloseTo(1, 10);
    expect(Math.exp(series.logDistance)).toBeCloseTo(distanceOf(4.2, 3), 9);
  });

  it("keep an uncertainty from the stated errors when all runs agree", () => {
    const same = [0, 1, 2, 3].map(() => flatGlide(4.4, 3));
    const series = value(fitGlideSeries(same, craft, target));
    expect(series.jackknifeVariance).toBeCloseTo(0, 20);
    expect(series.variance).toBe(series.measurementVariance / 4);
  });

  it("don't mind whose doubt about shape when launched as compared", () => {
    const at = [0, 1, 2].map(() => flatGlide(4.2, 3));
    const series = value(fitGlideSeries(at, craft, target));
    expect(Math.abs(series.shapeSensitivity)).toBeLessThan(1e-9);
  });

  it("take their end speed from stalled runs alone", () => {
    const touched = { ...flatGlide(4.6, 3.6), inEnd: false };
    const series = value(fitGlideSeries([...runs, touched], craft, target));
    expect(series.endSpeed).toBeCloseTo(3, 12);
    expect(series.level).toBeCloseTo(1, 10);
  });

  it("carry other masses over by the weight: the end speed goes with its root", () => {
    const heavy = { ...craft, weight: craft.weight * 1.21, e: craft.e * 1.21 ** 2 };
    const run = { ...flatGlide(4.4, 3.3), craft: heavy };
    expect(value(fitGlideSeries([run, run], craft, target)).endSpeed).toBeCloseTo(3, 12);
  });

  it("fail with a reason, never with NaN", () => {
    const reasons = [
      fitGlideSeries([], craft, target),
      fitGlideSeries(runs, craft, { ...target, speed: 2.5 }),
      fitGlideSeries(runs.map((one) => ({ ...one, inEnd: false })), craft, target),
      fitGlideSeries(runs.map((one) => ({ ...one, endSpeed: 5, drop: 0 })), craft, {
        ...target,
        end: 3,
      }),
      logDistance([], craft, target),
    ];
    for (const one of reasons) {
      expect(one.ok).toBe(false);
      if (!one.ok) expect(one.reason.length).toBeGreaterThan(10);
    }
  });

  it("shift by the change that one reading causes, as the difference quotient says", () => {
    const whole = value(fitGlideSeries(ALDER_RUNS, ALDER, TARGET));
    const without = value(logDistance(ALDER_RUNS.slice(1), ALDER, TARGET));
    const n = ALDER_RUNS.length;
    expect(whole.pseudoValues[0]).toBeCloseTo(
      n * whole.logDistance - (n - 1) * without.logDistance,
      12,
    );
  });
});
