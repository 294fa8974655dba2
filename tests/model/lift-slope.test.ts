import { describe, expect, it } from "vitest";
import { incidencePerLift, SECTION_SLOPE } from "lakeproof/model/lift-slope.ts";

const unbounded = { depthOverChord: Infinity, phi: 1, sectionSlope: 2 * Math.PI };
const slope = (wing: Partial<Parameters<typeof incidencePerLift>[0]> & { aspectRatio: number }) =>
  1 / incidencePerLift({ ...unbounded, ...wing });

describe("slope of a wing's lift curve", () => {
  it("is that of the exact lifting surface of circular outline within the formula's few per cent", () => {
    // Jordan 1971, exact solution for the circular wing, slope 1.790 a radian at aspect ratio 4/pi; from memory. Such a stubby
    // wing is where the formula is worst: it is known to be 2 to 3 % high.
    expect(Math.abs(slope({ aspectRatio: 4 / Math.PI }) / 1.79 - 1)).toBeLessThan(0.03);
  });

  it("is within 2 % of the lifting line at aspect ratio 8", () => {
    // Anderson, Fundamentals of Aerodynamics, worked example of a thin symmetric section: 4.97 a radian with tau 0.055,
    // aspect ratio 8; from memory. The lifting line knows no chord, which costs the rest.
    expect(Math.abs(slope({ aspectRatio: 8 }) / 4.97 - 1)).toBeLessThan(0.02);
  });

  it("tends to half of pi times aspect ratio for a sliver, and to the section's own for a long wing", () => {
    // Jones, NACA Report 835 (1946): low aspect ratio; from memory.
    expect(slope({ aspectRatio: 1e-3 }) / (Math.PI * 1e-3 / 2)).toBeCloseTo(1, 3);
    expect(slope({ aspectRatio: 1e6 })).toBeCloseTo(2 * Math.PI, 4);
  });

  it("halves for a section that planes on the surface, as half of its flow is gone", () => {
    // A flat plate that planes without gravity lifts half of what it lifts deep down: Lamb, Hydrodynamics; from memory.
    expect(slope({ aspectRatio: 1e6, depthOverChord: 1e-4 })).toBeCloseTo(Math.PI, 4);
  });

  it("falls as the surface comes nearer and as its waves grow, and the rule of a tenth a degree is under theory", () => {
    const deep = slope({ aspectRatio: 6 });
    expect(slope({ aspectRatio: 6, depthOverChord: 2 })).toBeLessThan(deep);
    expect(slope({ aspectRatio: 6, phi: 1.2 })).toBeLessThan(deep);
    expect(SECTION_SLOPE).toBeLessThan(2 * Math.PI);
  });

  it("refuses what is no wing", () => {
    expect(() => slope({ aspectRatio: 0 })).toThrow(/aspectRatio must be above zero/);
    expect(() => slope({ aspectRatio: 6, phi: NaN })).toThrow(RangeError);
  });
});
