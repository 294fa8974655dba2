import { describe, expect, it } from "vitest";
import type { GlidingCraft } from "lakeproof/fit/gliding-craft.ts";
import { meanShape } from "lakeproof/fit/mean-shape.ts";
import { phiTable } from "lakeproof/fit/phi-table.ts";
import { ellipticLinePhi } from "lakeproof/model/free-surface.ts";

const craft: GlidingCraft = { weight: 804, inertia: 1.03, a: 1.6, d: 0, e: 560, phi: null };

/** Mean by 20,000 midpoints: good to 1e-9 for these smooth functions. */
function midpoints(one: GlidingCraft, from: number, to: number): number {
  const [u0, u1] = [from * from, to * to];
  const n = 20_000;
  let sum = 0;
  for (let i = 0; i < n; i++) {
    const u = u1 + (u0 - u1) * (i + 0.5) / n;
    const phi = one.phi === null ? 1 : one.phi(Math.sqrt(u));
    sum += u / (one.a * u * u + one.d * u + one.e * phi);
  }
  return n / sum / one.weight;
}

describe("the mean drag over weight of a glide", () => {
  it("is the same in closed form and by the eight-point rule", () => {
    for (const [from, to] of [[4.5, 3], [6, 2.8], [3.3, 3.2]] as const) {
      const closed = meanShape(craft, from, to, 1);
      const rule = meanShape({ ...craft, phi: () => 1 }, from, to, 1);
      // Error of eight Gauss points over the widest range of glides.
      expect(Math.abs(rule / closed - 1)).toBeLessThan(1e-8);
    }
  });

  it("agrees with fine midpoints under a free surface and a constant term", () => {
    const wavy = { ...craft, d: -4, phi: phiTable({ span: 1.3, depth: 0.3 }, 9.81) };
    // Error of eight Gauss points where phi bends most.
    expect(Math.abs(meanShape(wavy, 5, 2.6, 1) / midpoints(wavy, 5, 2.6) - 1)).toBeLessThan(1e-6);
  });

  it("tends to the drag itself for a short glide", () => {
    const short = meanShape(craft, 4.01, 3.99, 1);
    expect(short).toBeCloseTo((craft.a * 16 + craft.e / 16) / craft.weight, 6);
  });

  it("stays defined for a run whose speed rose", () => {
    expect(meanShape(craft, 4, 4.3, 1)).toBe(meanShape(craft, 4, 3.98, 1));
  });
});

describe("the table of the free surface", () => {
  it("follows the integral within 2e-6 for spans up to 2 m, outside the table exactly", () => {
    for (const span of [0.8, 1.2, 2]) {
      for (const depth of [0.1, 0.3, 0.8]) {
        const [table, exact] = [phiTable({ span, depth }, 9.81), ellipticLinePhi({ span, depth })];
        for (let speed = 1.2; speed <= 12; speed += 0.07) {
          expect(Math.abs(table(speed) / exact(speed, 9.81) - 1)).toBeLessThan(2e-6);
        }
        expect(table(0.8)).toBe(exact(0.8, 9.81));
        expect(table(20)).toBe(exact(20, 9.81));
      }
    }
  });

  it("is 1 in unbounded water", () => {
    expect(phiTable({ span: 1, depth: Infinity }, 9.81)(4)).toBe(1);
  });
});
