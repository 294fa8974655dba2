import { describe, expect, it } from "vitest";
import { timedSpeedUncertainty } from "lakeproof/model/timed-speed.ts";

describe("speed from two marks and a camera", () => {
  const marks = { spacing: 3, spacingUncertainty: 0, frameRate: 30, speed: 4 };

  it("carries the triangular law of the difference of two readings", () => {
    // JCGM 100:2008, 4.3.9: the difference of two equal rectangular laws of half width a is triangular on +-2a, with
    // variance (2a)^2/6; a is half a picture, and u(v)/v = u(t)/t.
    const half = 1 / 30 / 2;
    const expected = 4 * Math.sqrt((2 * half) ** 2 / 6) / (3 / 4);
    expect(timedSpeedUncertainty(marks)).toBeCloseTo(expected, 14);
  });

  it("agrees with readings rounded to the nearest picture", () => {
    // Every phase of the film against the passing, on a fine grid: an average, so no chance in it.
    let sum = 0;
    let square = 0;
    const steps = 400;
    for (let i = 0; i < steps; i++) {
      for (let j = 0; j < steps; j++) {
        const start = (i + 0.5) / steps / 30;
        const end = start + 3 / 4 + (j + 0.5) / steps / 30;
        const read = (Math.round(end * 30) - Math.round(start * 30)) / 30;
        const error = read - (end - start);
        sum += error;
        square += error * error;
      }
    }
    const count = steps * steps;
    const deviation = Math.sqrt(square / count - (sum / count) ** 2);
    // First order in u(t)/t; the grid has 400 steps a picture: 1 % covers both.
    expect(timedSpeedUncertainty(marks) * (3 / 4) / 4 / deviation).toBeCloseTo(1, 2);
  });

  it("falls as the marks stand further apart, down to the spacing's own share", () => {
    const wide = timedSpeedUncertainty({ ...marks, spacing: 300, spacingUncertainty: 3 });
    expect(wide).toBeCloseTo(0.04, 4);
    expect(timedSpeedUncertainty({ ...marks, spacing: 6 })).toBeLessThan(
      timedSpeedUncertainty(marks),
    );
  });

  it("refuses what cannot be timed", () => {
    expect(() => timedSpeedUncertainty({ ...marks, spacing: 0 })).toThrow("Cannot time a speed");
    expect(() => timedSpeedUncertainty({ ...marks, speed: Number.NaN })).toThrow(
      "Cannot time a speed",
    );
  });
});
