import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { decayByQuadrature } from "lakeproof/model/decay-by-quadrature.ts";
import { decay } from "lakeproof/model/decay.ts";
import { dragForce } from "lakeproof/model/drag-law.ts";
import { biplaneFactor, ellipticLinePhi } from "lakeproof/model/free-surface.ts";

describe("decay by quadrature", () => {
  it("equals the closed form to 1e-10 for laws, sinks and speeds of real glides", () => {
    const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        fc.tuple(real(0.8, 6), real(-20, 30), real(50, 4000)),
        fc.tuple(real(1.5, 5), real(0.1, 4), real(0, 0.9)),
        ([a, d, e], [endSpeed, more, share]) => {
          const law = { a, d, e };
          const least = d + 2 * Math.sqrt(a * e);
          fc.pre(least > 1);
          const glide = {
            launchSpeed: endSpeed + more,
            endSpeed,
            effectiveMass: 86,
            sinkThrust: share * least,
          };
          const closed = decay(law, glide);
          const own = decayByQuadrature((v) => dragForce(law, v), glide);
          expect(Math.abs(own.distance / closed.distance - 1)).toBeLessThan(1e-10);
          expect(Math.abs(own.duration / closed.duration - 1)).toBeLessThan(1e-10);
        },
      ),
      { seed: 11, numRuns: 300 },
    );
  });
  it("tends to the closed form with 1 + sigma when the wing flies fast", () => {
    // phi lies within 1 % of 1 + sigma above 12 m/s for this wing; drag due to lift is 14 to 55 % of the whole.
    const phi = ellipticLinePhi({ span: 0.5, depth: 0.3 });
    const law = { a: 1.2, d: 0, e: 30_000 };
    expect(phi(12, 9.81) / (1 + biplaneFactor(1.2))).toBeLessThan(1.01);
    const glide = { launchSpeed: 20, endSpeed: 12, effectiveMass: 90 };
    const fast = decay({ ...law, e: law.e * (1 + biplaneFactor(1.2)) }, glide);
    const own = decayByQuadrature((v) => dragForce(law, v, phi(v, 9.81)), glide);
    expect(Math.abs(own.distance / fast.distance - 1)).toBeLessThan(4e-3);
  });
  it("goes less far under the surface than in unbounded water where waves are made", () => {
    const phi = ellipticLinePhi({ span: 1.5, depth: 0.3 });
    const law = { a: 1.6, d: 0, e: 380 };
    const glide = { launchSpeed: 4, endSpeed: 2.5, effectiveMass: 86 };
    const own = decayByQuadrature((v) => dragForce(law, v, phi(v, 9.81)), glide);
    expect(own.distance).toBeLessThan(decay(law, glide).distance);
  });
  it("is nothing from a speed to itself", () => {
    const still = { launchSpeed: 4, endSpeed: 4, effectiveMass: 86 };
    expect(decayByQuadrature(() => 60, still)).toEqual({ distance: 0, duration: 0 });
  });
  it("refuses a sink that holds the speed, no mass, NaN", () => {
    const glide = { launchSpeed: 4, endSpeed: 3, effectiveMass: 86 };
    expect(() => decayByQuadrature(() => 50, { ...glide, sinkThrust: 50 })).toThrow(RangeError);
    expect(() => decayByQuadrature(() => NaN, glide)).toThrow(RangeError);
    expect(() => decayByQuadrature(() => 50, { ...glide, effectiveMass: 0 })).toThrow(RangeError);
    expect(() => decayByQuadrature(() => 50, { ...glide, endSpeed: 5 })).toThrow(RangeError);
    // Net drag that touches zero inside: the integral has no end.
    expect(() => decayByQuadrature((v) => Math.abs(v - 3.4142135), glide)).toThrow(RangeError);
  });
});
