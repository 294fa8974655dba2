import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { decay } from "lakeproof/model/decay.ts";
import { gaussLegendre } from "lakeproof/numeric/gauss-legendre.ts";

/** Both integrals by 60 panels of 16-point Gauss-Legendre in ln v: exact to rounding for laws of glides. */
function byPanels(law: { a: number; d: number; e: number }, v0: number, v1: number, mass: number) {
  const { nodes, weights } = gaussLegendre(16);
  const panels = 60;
  const width = Math.log(v0 / v1) / panels;
  let distance = 0, duration = 0;
  for (let p = 0; p < panels; p++) {
    nodes.forEach((x, i) => {
      const v = v1 * Math.exp((p + x) * width);
      const part = weights[i]! * width * v * mass / (law.a * v * v + law.d + law.e / (v * v));
      duration += part;
      distance += part * v;
    });
  }
  return { distance, duration };
}

describe("decay under the three-term law", () => {
  it("equals worked cases", () => {
    // Parent: closed form in Python checked against adaptive quadrature to 1e-9; nine printed decimals.
    const cases = [
      [100, 0.8, 0, 0, 8, 4, 86.64339757, 15.625],
      [100, 0.8, 5, 0, 8, 4, 71.857393725, 12.785722348],
      [100, 0.8, 0, 1200, 8, 4, 36.2191738, 5.982136367],
      [100, 0.6, 10, 2000, 9, 5, 33.574103062, 4.752128539],
      [90, 0.5, 30, 300, 10, 6, 42.418636259, 5.390594526],
    ] as const;
    for (const [m, a, d, e, v0, v1, x, t] of cases) {
      const own = decay({ a, d, e }, { launchSpeed: v0, endSpeed: v1, effectiveMass: m });
      expect(Math.abs(own.distance - x)).toBeLessThan(2e-9);
      expect(Math.abs(own.duration - t)).toBeLessThan(2e-9);
    }
  });
  it("is the logarithm and the reciprocal where drag is a v^2 alone", () => {
    const own = decay({ a: 1.6, d: 0, e: 0 }, { launchSpeed: 6, endSpeed: 3, effectiveMass: 80 });
    expect(own.distance).toBeCloseTo(80 / 1.6 * Math.log(2), 12);
    expect(own.duration).toBeCloseTo(80 / 1.6 * (1 / 3 - 1 / 6), 12);
  });
  it("equals quadrature to 1e-10 in all three branches and where they meet", () => {
    const speeds = fc.tuple(
      fc.double({ min: 1.5, max: 6, noNaN: true }),
      fc.double({ min: 0.05, max: 4, noNaN: true }),
    );
    const root = fc.double({ min: 1, max: 200, noNaN: true });
    // B over sqrt(a e): below -2 the net drag has zeros, -2 and 2 are double roots, above 2 two negative ones.
    const share = fc.oneof(
      fc.double({ min: -1.98, max: 1.98, noNaN: true }),
      fc.double({ min: 2.02, max: 40, noNaN: true }),
      fc.constantFrom(2, 2 + 1e-15, 2 - 1e-15, 2 + 1e-9, 2 - 1e-9, 0),
    );
    fc.assert(
      fc.property(speeds, root, share, ([v1, more], e, k) => {
        const a = 1.5;
        const law = { a, d: k * Math.sqrt(a * e), e };
        const own = decay(law, { launchSpeed: v1 + more, endSpeed: v1, effectiveMass: 86 });
        const other = byPanels(law, v1 + more, v1, 86);
        expect(Math.abs(own.distance / other.distance - 1)).toBeLessThan(1e-10);
        expect(Math.abs(own.duration / other.duration - 1)).toBeLessThan(1e-10);
      }),
      { seed: 7, numRuns: 400 },
    );
  });
  it("holds where a sink leaves two zeros of the net drag below or above the speeds flown", () => {
    // Net drag 1.5 (u^2 - 10 u + 9)/u: zeros at v = 1 and 3.
    const law = { a: 1.5, d: 5, e: 13.5 };
    for (const [v0, v1] of [[6, 3.2], [0.95, 0.3]] as const) {
      const own = decay(law, {
        launchSpeed: v0,
        endSpeed: v1,
        effectiveMass: 86,
        sinkThrust: 20,
      });
      const other = byPanels({ ...law, d: -15 }, v0, v1, 86);
      expect(Math.abs(own.distance / other.distance - 1)).toBeLessThan(1e-10);
      expect(Math.abs(own.duration / other.duration - 1)).toBeLessThan(1e-10);
    }
  });
  it("takes the thrust of a steady sink as a shift of d, which makes the glide longer", () => {
    const law = { a: 1.55, d: 4, e: 512 };
    const glide = { launchSpeed: 4.5, endSpeed: 3, effectiveMass: 86.5 };
    const level = decay(law, glide).distance;
    const sinking = decay(law, { ...glide, sinkThrust: 16 }).distance;
    const shifted = decay({ ...law, d: -12 }, glide).distance;
    expect(sinking).toBeGreaterThan(level);
    expect(sinking).toBe(shifted);
  });
  it("adds up over a stop on the way, and is nothing from a speed to itself", () => {
    const law = { a: 1.55, d: 4, e: 512 };
    const leg = (v0: number, v1: number) =>
      decay(law, { launchSpeed: v0, endSpeed: v1, effectiveMass: 86.5 });
    expect(leg(5, 4).distance + leg(4, 3).distance).toBeCloseTo(leg(5, 3).distance, 11);
    expect(leg(5, 4).duration + leg(4, 3).duration).toBeCloseTo(leg(5, 3).duration, 11);
    expect(leg(4, 4)).toEqual({ distance: 0, duration: 0 });
  });
  it("refuses a glide that never ends, rising speed, no mass, NaN", () => {
    const law = { a: 1.5, d: 5, e: 13.5 };
    const glide = { launchSpeed: 4, endSpeed: 2, effectiveMass: 86 };
    expect(() => decay(law, { ...glide, sinkThrust: 20 })).toThrow(/never|reaches the drag/);
    expect(() => decay(law, { ...glide, launchSpeed: 1 })).toThrow(RangeError);
    expect(() => decay(law, { ...glide, effectiveMass: 0 })).toThrow(RangeError);
    expect(() => decay(law, { ...glide, endSpeed: NaN })).toThrow(RangeError);
    expect(() => decay({ ...law, a: 0 }, glide)).toThrow(RangeError);
    expect(() => decay({ ...law, d: NaN }, glide)).toThrow(RangeError);
  });
});
