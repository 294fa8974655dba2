import { describe, expect, it } from "vitest";
import { towedLeastPowerSpeed } from "lakeproof/fit/tow-curve.ts";
import { compareDrag } from "lakeproof/fit/tow-band.ts";
import { fitTowSeries, type TowEstimate, type TowSeries } from "lakeproof/fit/tow-series.ts";
import {
  bestLiftToDragEstimate,
  bestSpeedEstimate,
  dragEstimate,
} from "lakeproof/fit/tow-estimates.ts";
import { type LogVariance, ratioVariance, singleVariance } from "lakeproof/fit/tow-variance.ts";
import { studentTQuantile } from "lakeproof/numeric/distributions.ts";
import { golden, goldenData, goldenErrors } from "../golden/tow-data.ts";

// Parent: tests/golden/tow-example.py (numpy, scipy; versions in the JSON).

/** Both sides settle to about 1e-9; derivatives by differences hold about as much. */
const CLOSE = 1e-6;

function expectClose(actual: number, expected: number, what: string): void {
  expect(Math.abs(actual / expected - 1), `${what}: ${actual} for ${expected}`).toBeLessThan(CLOSE);
}

function series(name: "alder" | "birch"): TowSeries {
  const fitted = fitTowSeries(goldenData(name), goldenErrors(name));
  if (!fitted.ok) throw new Error(fitted.reason);
  return fitted;
}

const alder = series("alder"), birch = series("birch");

interface Told {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly u: number;
  readonly freedom: number;
}

function expectTold(one: LogVariance, told: Told, what: string): void {
  const u = Math.sqrt(one.variance);
  const half = studentTQuantile(0.975, one.degreesOfFreedom!) * u;
  expectClose(Math.exp(one.log), told.value, `${what} value`);
  expectClose(Math.exp(one.log - half), told.low, `${what} low`);
  expectClose(Math.exp(one.log + half), told.high, `${what} high`);
  expectClose(u, told.u, `${what} u`);
  expectClose(one.degreesOfFreedom!, told.freedom, `${what} degrees of freedom`);
}

const QUANTITIES = {
  bestLiftToDrag: bestLiftToDragEstimate,
  bestSpeed: bestSpeedEstimate,
  dragAt4: (one: TowSeries) => dragEstimate(one, 4),
  dragAt5: (one: TowSeries) => dragEstimate(one, 5),
} as const satisfies Record<string, (one: TowSeries) => TowEstimate | null>;

describe.each([["alder", alder], ["birch", birch]] as const)("the tow of %s", (name, one) => {
  const expected = golden.fits[name];
  const { fit } = one;

  it("gives the law of the independent fit", () => {
    expectClose(fit.data.craft.lift, expected.lift, "lift");
    expectClose(fit.referenceSpeed, expected.referenceSpeed, "v0");
    fit.parameters.forEach((p, j) => expectClose(p, expected.parameters[j]!, `p${j + 1}`));
    expected.standardErrors.forEach((se, j) =>
      expectClose(Math.sqrt(fit.covariance[j]![j]!), se, `standard error ${j + 1}`)
    );
    [[0, 1], [0, 2], [1, 2]].forEach(([i, j], n) =>
      expectClose(
        fit.covariance[i!]![j!]! /
          Math.sqrt(fit.covariance[i!]![i!]! * fit.covariance[j!]![j!]!),
        expected.correlations[n]!,
        "correlation",
      )
    );
    expectClose(fit.effectiveParameters, expected.effectiveParameters, "effective parameters");
    expectClose(fit.within, expected.within, "within");
    expectClose(fit.between!, expected.between, "between");
    expectClose(fit.scatterScale, expected.scale, "k");
    expectClose(fit.degreesOfFreedom, expected.freedom, "nu");
  });

  it.each(Object.keys(QUANTITIES) as (keyof typeof QUANTITIES)[])("gives its %s", (what) => {
    expectTold(singleVariance(QUANTITIES[what](one)!), expected[what], what);
  });

  it("gives each part of the variance of the best lift-to-drag, signs and all", () => {
    const { dataVariance, planformVariance, shared } = bestLiftToDragEstimate(one)!;
    const { data, planform, shared: parts } = expected.partsOfBestLiftToDrag;
    expectClose(Math.sqrt(dataVariance), data, "data");
    expectClose(Math.sqrt(planformVariance), planform, "planform");
    for (const { name: error, change } of shared) {
      const should = parts[error as keyof typeof parts];
      // The speed's scale hardly acts: there the absolute difference counts, 1e-9 on ln.
      expect(Math.abs(change - should), error).toBeLessThan(
        Math.max(CLOSE * Math.abs(should), 1e-9),
      );
    }
  });

  it("gives the speed of least power", () => {
    // The parent finds it by search, to 1e-8 or so.
    expectClose(towedLeastPowerSpeed(fit)!.speed, expected.leastPowerSpeed, "least power");
  });
});

describe("the two tows compared", () => {
  it.each(Object.keys(QUANTITIES) as (keyof typeof QUANTITIES)[])(
    "gives the ratio of %s",
    (what) => {
      const parts = [alder, birch].map(QUANTITIES[what]);
      const both = ratioVariance(parts[0]!, parts[1]!, { alternated: true, dayVariance: 0 });
      expectTold(both, golden.ratios[what], what);
    },
  );

  it("gives the simultaneous band, the joint test and the speeds where they differ", () => {
    const { band } = golden;
    const found = compareDrag(alder, birch, { range: { from: 3.7, to: 6.8 }, dayShare: 0 });
    if (!found.ok) throw new Error(found.reason);
    expectClose(found.degreesOfFreedom, band.freedom, "nu");
    expectClose(found.pathLength, band.length, "kappa");
    expectClose(found.factor, band.factor, "c");
    expectClose(found.jointTest.f, band.f, "F");
    expectClose(found.jointTest.pValue, band.pValue, "p");
    band.speeds.forEach((speed, n) => {
      const point = found.points[n * 31]!;
      expectClose(point.speed, speed, "speed");
      expectClose(point.difference, band.difference[n]!, `difference at ${speed}`);
      expectClose(point.standardUncertainty, band.u[n]!, `u at ${speed}`);
    });
    const ends = (speeds: readonly number[]) => [[speeds[0]!, speeds.at(-1)!]];
    const near = (ranges: readonly (readonly number[])[]) =>
      ranges.map((one) => one.map((v) => expect.closeTo(v, 9)));
    expect(found.candidateLess).toEqual(near(ends(band.less)));
    expect(found.candidateMore).toEqual(near(ends(band.more)));
  });
});
