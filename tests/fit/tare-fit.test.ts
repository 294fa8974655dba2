import { describe, expect, it } from "vitest";
import { fitTare, tareDrag, tareLogVariance, type TareReading } from "lakeproof/fit/tare-fit.ts";
import { seededRandom } from "lakeproof/numeric/random.ts";
import { studentTQuantile } from "lakeproof/numeric/distributions.ts";

const square = (speed: number) => speed ** 2;
const stated = {
  speed: { fixed: 0, share: 0.01 },
  tension: { fixed: 0.3, share: 0.01 },
  angle: 0.01,
};

function reading(speed: number, drag: number, angle = 0): TareReading {
  return {
    speed,
    tension: drag / Math.cos(angle),
    angle,
    inertia: 0,
    depth: 0.4,
    depthUncertainty: 0,
    uncertainty: stated,
  };
}

function fitted(readings: readonly TareReading[]) {
  const fit = fitTare(readings, square);
  if (!fit.ok) throw new Error(fit.reason);
  return fit;
}

describe("drag of the struts from tare readings", () => {
  it("returns the constant behind readings without errors, whatever the line's angle", () => {
    const fit = fitted([3, 4, 5, 6].map((v) => reading(v, 0.24 * v ** 2, 0.02 * v)));
    // Arithmetic of some dozens of sums.
    expect(fit.factor).toBeCloseTo(0.24, 10);
    expect(fit.exponent).toBeCloseTo(0, 10);
    expect(Math.max(...fit.residuals.map(Math.abs))).toBeLessThan(1e-9);
  });

  it("does not depend on the order of the readings", () => {
    const readings = [[3, 2.3], [4, 3.7], [5, 6.2], [6, 8.4]].map(([v, d]) => reading(v!, d!));
    expect(fitted([...readings].reverse()).factor).toBeCloseTo(fitted(readings).factor, 12);
  });

  it("covers the truth in about 95 of 100 sessions of five readings", () => {
    const random = seededRandom("five tares");
    const sessions = 1500;
    let held = 0;
    for (let i = 0; i < sessions; i++) {
      const fit = fitted([3.5, 4.2, 5, 5.8, 6.6].map((speed) => {
        const drag = 0.24 * speed ** 2;
        return reading(
          speed * (1 + 0.01 * random.normal()),
          drag * (1 + 0.01 * random.normal()) + 0.3 * random.normal(),
        );
      }));
      // At the fastest, where the exponent counts most.
      const { data, exponent } = tareLogVariance(fit, 6.6);
      const variance = data + exponent;
      const freedom = variance ** 2 / (data ** 2 / fit.degreesOfFreedom!);
      const half = studentTQuantile(0.975, freedom) * Math.sqrt(variance);
      if (Math.abs(Math.log(tareDrag(fit, 6.6, 0.4) / (0.24 * 6.6 ** 2))) < half) held++;
    }
    // The scatter never narrows what was stated, so the cover lies above 95 %; three standard errors of 1500 are 1.7 points.
    expect(held / sessions).toBeGreaterThan(0.94);
    expect(held / sessions).toBeLessThan(0.998);
  });

  it("widens its uncertainty where the readings scatter more than stated, and never narrows it", () => {
    const calm = fitted([3, 4, 5, 6].map((v) => reading(v, 0.24 * v ** 2)));
    const wild = fitted([3, 4, 5, 6].map((v, i) => reading(v, 0.24 * v ** 2 + (i % 2 ? 2 : -2))));
    expect(calm.scatterScale).toBe(1);
    expect(wild.scatterScale).toBeGreaterThan(10);
    expect(wild.covariance.factor).toBeGreaterThan(5 * calm.covariance.factor);
  });

  it("takes a depth's doubt as doubt about the drag", () => {
    const shape = (speed: number, depth: number | null) => speed ** 2 * depth!;
    const at = (depthUncertainty: number) => {
      const fit = fitTare([{ ...reading(5, 6), depthUncertainty }], shape);
      return fit.ok ? Math.sqrt(fit.covariance.factor) : NaN;
    };
    // 0.04 m of 0.4 m are a tenth of the drag.
    expect(Math.hypot(at(0), 0.1)).toBeCloseTo(at(0.04), 3);
  });

  it("finds another exponent where many readings show one, and grows unsure beyond them", () => {
    const many = Array.from({ length: 60 }, (_, i) => 3 + i * 0.06);
    const laminar = fitted(many.map((v) => reading(v, 0.5 * v ** 1.5)));
    // The pseudo-observation holds it back by a few hundredths.
    expect(laminar.exponent).toBeGreaterThan(-0.5);
    expect(laminar.exponent).toBeLessThan(-0.45);
    const u = (speed: number) => {
      const { data, exponent } = tareLogVariance(laminar, speed);
      return Math.sqrt(data + exponent);
    };
    // At the mean speed the exponent does not count at all.
    expect(u(10)).toBeGreaterThan(2 * u(4.5));
  });

  it("counts a single reading by its stated uncertainty, and refuses none or a push", () => {
    expect(fitted([reading(5, 6)]).degreesOfFreedom).toBeNull();
    expect(fitTare([], square).ok).toBe(false);
    expect(fitTare([reading(5, -6)], square).ok).toBe(false);
    expect(() => fitTare([reading(0, 6)], square)).toThrow(RangeError);
  });
});
