import { describe, expect, it } from "vitest";
import type { Result } from "lakeproof/base/quantity.ts";
import { fitGlideSeries, type GlideSeries } from "lakeproof/fit/glide-series.ts";
import { permutationTest } from "lakeproof/infer/permutation.ts";
import { runsNeeded } from "lakeproof/fit/runs-needed.ts";
import { contrastSeries, halfWidth, probabilityFarther } from "lakeproof/fit/series-contrast.ts";
import { ALDER, ALDER_RUNS, BIRCH, BIRCH_RUNS, TARGET } from "../golden/glide-example.ts";
// Parent: tests/golden/glide-verdict.py (numpy 2.4.6, scipy 1.17.1), written apart from the library.
import golden from "../golden/glide-verdict.json" with { type: "json" };

/** Both sides round at 1e-15; the measurement variance is a difference quotient, good to about 1e-9. */
function close(actual: number, expected: number, relative = 1e-8): void {
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(relative * Math.abs(expected));
}

function value<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.reason);
  return result;
}

for (const [name, count] of [["seven", 7], ["four", 4]] as const) {
  const expected = golden[name];
  const alder = value(fitGlideSeries(ALDER_RUNS.slice(0, count), ALDER, TARGET));
  const birch = value(fitGlideSeries(BIRCH_RUNS.slice(0, count), BIRCH, TARGET));
  const contrast = contrastSeries({ baseline: alder, candidate: birch, commonVariance: 0 })!;

  describe(`an invented session of ${name} runs a side, worked out apart`, () => {
    for (
      const [design, series] of [["alder", alder], ["birch", birch]] as [
        "alder" | "birch",
        GlideSeries,
      ][]
    ) {
      it(`gives ${design} the same level, end, distance, pseudo-values and variances`, () => {
        const row = expected[design];
        close(series.level, row.level);
        close(series.endSpeed, row.endSpeed);
        close(series.energyHeight, row.energyHeight);
        close(series.meanShape, row.meanShape);
        close(series.logDistance, row.logDistance);
        close(Math.exp(series.logDistance), row.distance);
        row.pseudoValues.forEach((one, i) => close(series.pseudoValues[i]!, one));
        close(series.jackknifeVariance!, row.jackknifeVariance);
        close(series.measurementVariance, row.measurementVariance, 1e-7);
        close(series.shapeSensitivity, row.shapeSensitivity);
      });
    }

    it("gives the same ratio, interval and probability", () => {
      close(contrast.logRatio, expected.logRatio);
      close(contrast.shapeVariance, expected.shapeVariance);
      close(Math.sqrt(contrast.variance), expected.standardError);
      close(contrast.degreesOfFreedom, expected.degreesOfFreedom);
      const half = halfWidth(contrast);
      close(half / Math.sqrt(contrast.variance), expected.t);
      close(Math.exp(contrast.logRatio), expected.ratio);
      close(Math.exp(contrast.logRatio - half), expected.low);
      close(Math.exp(contrast.logRatio + half), expected.high);
      close(probabilityFarther(contrast), expected.probability);
    });

    it("counts the same arrangements of pseudo-values as extreme", () => {
      const { asExtreme, arrangements } = permutationTest({
        baseline: alder.pseudoValues,
        candidate: birch.pseudoValues,
      });
      expect([asExtreme, arrangements]).toEqual([
        expected.permutation.extreme,
        expected.permutation.total,
      ]);
    });

    it("asks for the same number of runs", () => {
      for (const [ratio, [now, matched]] of Object.entries(expected.runsNeeded)) {
        const input = {
          runVariances: [alder.variance! * count, birch.variance! * count] as const,
          smallestRatio: Number(ratio),
        };
        expect(runsNeeded({ ...input, fixedVariance: contrast.shapeVariance })).toBe(now);
        expect(runsNeeded({ ...input, fixedVariance: 0 })).toBe(matched);
      }
    });
  });
}
