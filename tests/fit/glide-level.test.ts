import { describe, expect, it } from "vitest";
import {
  glideDragEstimate,
  type GlideLevelData,
  glideMeanSpeed,
  glideShapeChange,
  logGlideDrag,
} from "lakeproof/fit/glide-level.ts";
import { singleVariance } from "lakeproof/fit/tow-variance.ts";
import { normalisedError } from "lakeproof/infer/agreement.ts";
import golden from "../golden/glide-level.json" with { type: "json" };

const bend = (speed: number) => 1 + 0.4 * Math.exp(-((speed - 2.6) ** 2) / 2);

/** The golden runs with errors of both speeds (a share) and of all that flies (kg) taken off. */
function dataWith({ scale = 0, mass = 0 } = {}): GlideLevelData {
  const { gravity, density, volume, span, area, uncertainty } = golden;
  const lift = (kg: number) => kg * gravity - density * gravity * volume;
  const law = (load: number) => ({
    a: density / 2 * (0.0135 * area + 7e-4) + 0.5 * 1.225 * 0.55,
    d: 0,
    e: 2 * (area / (Math.PI * span ** 2 * 0.93) + 0.0095) * load ** 2 / (density * area),
    phi: bend,
  });
  const weight = lift(golden.mass - mass);
  const inertia = (golden.mass - mass + golden.moving) * gravity / weight;
  return {
    runs: golden.runs.map(([launch, end, drop, distance]) => ({
      launchSpeed: launch! * (1 - scale),
      endSpeed: end! * (1 - scale),
      drop: drop!,
      distance: distance!,
      inLevel: true,
      inEnd: true,
      craft: { ...law(weight), weight, inertia },
      uncertainty: {
        launchSpeed: uncertainty.launch,
        endSpeed: uncertainty.end,
        drop: uncertainty.drop,
        distance: uncertainty.distance,
      },
    })),
    told: law(lift(golden.towedMass - mass)),
    gravity,
  };
}

const data = dataWith();
const errors = [
  {
    name: "speed scale",
    key: "speed scale",
    shifted: [dataWith({ scale: 0.008 }), dataWith({ scale: -0.008 })],
  },
  {
    name: "carried mass",
    key: "carried mass",
    shifted: [dataWith({ mass: 0.6 }), dataWith({ mass: -0.6 })],
  },
] as const;

describe("drag from plain glides", () => {
  const { speed } = golden;
  const at = { speed, shapeUncertainty: golden.shape };
  const estimate = glideDragEstimate(data, errors, at)!;

  it("is what an independent script makes of the same runs", () => {
    // Steps of the differences: a hundredth here, a ten-thousandth there, which moves a slope by some 1e-6 of itself.
    expect(Math.abs(glideMeanSpeed(data)! / speed - 1)).toBeLessThan(1e-5);
    expect(Math.abs(estimate.log - golden.log)).toBeLessThan(1e-10);
    expect(Math.abs(estimate.dataVariance / golden.own - 1)).toBeLessThan(1e-8);
    expect(Math.abs(estimate.shared[0]!.change - golden.scale)).toBeLessThan(1e-7);
    expect(Math.abs(estimate.shared[1]!.change - golden.carried)).toBeLessThan(1e-7);
    const { variance, degreesOfFreedom } = singleVariance(estimate);
    expect(Math.abs(variance / golden.variance - 1)).toBeLessThan(1e-6);
    expect(Math.abs(degreesOfFreedom! / golden.degreesOfFreedom - 1)).toBeLessThan(1e-6);
  });

  it.each(golden.agreement)("lies beside a tow as the script says, with $name", (one) => {
    const { log: value, ...rest } = singleVariance(estimate);
    const en = normalisedError(golden.tow, { value, ...rest }, one.covariance);
    expect(Math.abs(en - one.en)).toBeLessThan(1e-5);
  });

  it("leans on the shape of the law at other speeds, one way when slow and the other when fast", () => {
    expect(Math.abs(glideShapeChange(data, at))).toBeLessThan(1e-5);
    for (const { speed, slope } of golden.slopes) {
      const change = glideShapeChange(data, { speed, shapeUncertainty: 0.3 });
      expect(Math.abs(change - 0.3 * slope)).toBeLessThan(1e-6);
      const there = glideDragEstimate(data, [], { speed, shapeUncertainty: 0.3 })!;
      expect(there.planformVariance).toBeCloseTo(change ** 2, 12);
    }
  });

  it("keeps a floor where the runs agree by luck", () => {
    const alike = { ...data, runs: data.runs.map(() => data.runs[0]!) };
    const { dataVariance } = glideDragEstimate(alike, [], at)!;
    const reading = golden.reading;
    // All runs alike spend about what those of the script do.
    expect(dataVariance / (reading / 4)).toBeGreaterThan(0.8);
    expect(dataVariance / (reading / 4)).toBeLessThan(1.25);
  });

  it("is none from one run, or where the runs gained what they should have spent", () => {
    expect(glideDragEstimate({ ...data, runs: data.runs.slice(1, 2) }, [], at)).toBeNull();
    const risen = { ...data, runs: data.runs.map((one) => ({ ...one, drop: -2 })) };
    expect(Number.isNaN(logGlideDrag(risen, speed))).toBe(true);
    expect(glideDragEstimate(risen, [], at)).toBeNull();
  });
});
