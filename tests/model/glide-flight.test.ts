import { describe, expect, it } from "vitest";
import { weightInWater } from "lakeproof/model/buoyancy.ts";
import { decayByQuadrature } from "lakeproof/model/decay-by-quadrature.ts";
import { dragAtDepth, flyGlide } from "lakeproof/model/glide-flight.ts";
import { dragBuildUp } from "lakeproof/model/planform-drag.ts";
import { strutVolume } from "lakeproof/model/strut-drag.ts";

const craft = {
  span: 1.1,
  area: 0.16,
  thicknessRatio: 0.12,
  struts: { count: 1, chord: 0.115, thickness: 0.0145 },
};
const around = { density: 998.6, kinematicViscosity: 1.07e-6, gravity: 9.81, airDensity: 1.2 };
const flown = {
  craft,
  mass: 86,
  effectiveMass: 87,
  wingVolume: 0.0018,
  largestLiftCoefficient: 1,
  dragFactor: 1.1,
};
const level = { launchSpeed: 4.6, launchDepth: 0.355, slope: () => 0, mostDrop: 1 };
const netAt = (depth: number) =>
  weightInWater({
    mass: 86,
    wetVolume: flown.wingVolume + strutVolume(craft.struts, depth),
    ...around,
  });

describe("a glide flown in full", () => {
  it("goes as far, level, as the integral of drag over speed says", () => {
    const own = flyGlide(flown, level, around);
    expect(own.ended).toBe("stalled");
    // Halfway between two kept depths the drag is their mean.
    const at = [0.35, 0.36].map((depth) => dragBuildUp(craft, { ...around, depth }));
    const drag = (speed: number) => {
      const flight = { speed, weightInWater: netAt(0.355) };
      return 1.1 * (at[0]!(flight).total + at[1]!(flight).total) / 2;
    };
    const other = decayByQuadrature(drag, {
      launchSpeed: 4.6,
      endSpeed: own.endSpeed,
      effectiveMass: 87,
    });
    // 1e-6: fourth-order steps of 0.05 s, and the kink of the friction line at transition.
    expect(Math.abs(own.distance / other.distance - 1)).toBeLessThan(1e-6);
    expect(Math.abs(own.duration / other.duration - 1)).toBeLessThan(1e-6);
  });
  it("stalls where the needed lift coefficient is the largest", () => {
    const { endSpeed } = flyGlide(flown, level, around);
    const { liftCoefficient, reynolds } = dragBuildUp(craft, { ...around, depth: 0.355 })({
      speed: endSpeed,
      weightInWater: netAt(0.355),
    });
    expect(liftCoefficient / (reynolds / 4e5) ** 0.1).toBeCloseTo(1, 8);
  });
  it("spends height and speed, and no more than both, on drag", () => {
    const sink = { ...level, slope: () => 0.025 };
    const own = flyGlide(flown, sink, around);
    const less = flyGlide(flown, level, around);
    expect(own.distance).toBeGreaterThan(less.distance);
    expect(own.drop).toBeCloseTo(0.025 * own.distance, 8);
    // Energy over distance is the mean drag, which lies between the drags met on the way.
    const depth = 0.355 + own.drop / 2;
    const energy = netAt(depth) * own.drop + 87 / 2 * (4.6 ** 2 - own.endSpeed ** 2);
    const met = [3.2, 3.6, 4, 4.6].map((speed) =>
      1.1 * dragAtDepth(craft, around)(depth, { speed, weightInWater: netAt(depth) }).total
    );
    expect(energy / own.distance).toBeGreaterThan(Math.min(...met));
    expect(energy / own.distance).toBeLessThan(Math.max(...met));
  });
  it("is touched when the height is used up, stopped at the speed or time set, faster when pumped", () => {
    const sink = { ...level, slope: () => 0.05 };
    const touched = flyGlide(flown, { ...sink, mostDrop: 0.1 }, around);
    expect(touched.ended).toBe("touched");
    expect(touched.drop).toBeCloseTo(0.1, 9);
    const slow = flyGlide(flown, { ...level, stopSpeed: 4 }, around);
    expect(slow.ended).toBe("stopped early");
    expect(slow.endSpeed).toBeCloseTo(4, 9);
    const short = flyGlide(flown, { ...level, stopTime: 1.23 }, around);
    expect(short.duration).toBeCloseTo(1.23, 9);
    const pumped = flyGlide(flown, { ...level, stopTime: 1.23, push: () => 90 }, around);
    expect(pumped.endSpeed).toBeGreaterThan(4.6);
  });
  it("refuses a launch below the stall and a glide without end", () => {
    expect(() => flyGlide(flown, { ...level, launchSpeed: 2 }, around)).toThrow(RangeError);
    const forever = { ...level, push: () => 90 };
    expect(() => flyGlide(flown, forever, around)).toThrow(/60 s/);
  });
});
