import { describe, expect, it } from "vitest";
import { fitTow } from "lakeproof/fit/tow-fit.ts";
import {
  type FittedLaw,
  towDrag,
  towedBestSpeed,
  towedLeastPowerSpeed,
} from "lakeproof/fit/tow-curve.ts";
import { powerRiseEstimate } from "lakeproof/fit/tow-power-rise.ts";
import type { TowSeries } from "lakeproof/fit/tow-series.ts";
import { goldenData } from "../golden/tow-data.ts";

function golden(name: "alder" | "birch"): TowSeries {
  const fit = fitTow(goldenData(name));
  if (!fit.ok) throw new Error(fit.reason);
  return { fit, shifts: [], sweepVariance: 0, sweepDegreesOfFreedom: 0 };
}

describe("the rise of power with speed", () => {
  const series = golden("alder");

  it("is none where power is least, and has the sign of the side", () => {
    const { speed } = towedLeastPowerSpeed(series.fit)!;
    // The speed is found to 1e-13.
    expect(powerRiseEstimate(series, speed)!.log).toBeCloseTo(0, 10);
    expect(powerRiseEstimate(series, 0.9 * speed)!.log).toBeLessThan(0);
    expect(powerRiseEstimate(series, 1.1 * speed)!.log).toBeGreaterThan(0);
  });

  it("is one where drag is least, as power is drag times speed", () => {
    const { speed } = towedBestSpeed(series.fit)!;
    expect(powerRiseEstimate(series, speed)!.log).toBeCloseTo(1, 10);
  });

  it("is the slope of ln(power) against ln(speed), with the variance that draws of the law have", () => {
    const at = 4.1, h = 1e-4;
    const lnPower = (v: number) => Math.log(v * towDrag(series.fit, v));
    const told = powerRiseEstimate(series, at)!;
    const slope = (lnPower(at * Math.exp(h)) - lnPower(at * Math.exp(-h))) / (2 * h);
    // Central difference: error of order h squared.
    expect(told.log).toBeCloseTo(slope, 6);
    const rise = (parameters: readonly number[]) =>
      powerRiseEstimate({ ...series, fit: { ...series.fit, parameters: parameters as never } }, at)!
        .log;
    const gradient = series.fit.parameters.map((_, j) => {
      const moved = (step: number) => series.fit.parameters.map((p, i) => i === j ? p + step : p);
      return (rise(moved(1e-3)) - rise(moved(-1e-3))) / 2e-3;
    });
    const variance = gradient.reduce(
      (sum, g, i) =>
        sum + gradient.reduce((part, f, j) => part + g * f * series.fit.covariance[i]![j]!, 0),
      0,
    );
    const { dataVariance, planformVariance } = told;
    expect((dataVariance + planformVariance) / variance).toBeCloseTo(1, 6);
  });
});

describe("the speed of least power", () => {
  // Slow and shallow, the surface lowers the drag due to lift, and power dips a second time where nobody flies.
  const law: FittedLaw = {
    parameters: [30, -5, 25],
    referenceSpeed: 4.5,
    data: {
      craft: { lift: 800, phi: (v) => v < 2.4 ? 1 - 0.62 * (2.4 - v) ** 0.5 : 1 },
      readings: [{ speed: 2.6 }, { speed: 6 }],
    },
  };

  it("is the dip next below the best speed, not a deeper one far below", () => {
    const power = (v: number) => v * towDrag(law, v);
    const least = towedLeastPowerSpeed(law)!.speed;
    expect(power(1.4)).toBeLessThan(power(least));
    expect(least).toBeGreaterThan(0.7 * towedBestSpeed(law)!.speed);
    expect(power(0.98 * least)).toBeGreaterThan(power(least));
    expect(power(1.02 * least)).toBeGreaterThan(power(least));
  });
});
