import { describe, expect, it } from "vitest";
import type { GlideSeries } from "lakeproof/fit/glide-series.ts";
import { runsNeeded } from "lakeproof/fit/runs-needed.ts";
import { contrastSeries, halfWidth, probabilityFarther } from "lakeproof/fit/series-contrast.ts";
// Parent: tests/golden/contrast.py (numpy least squares, scipy t and noncentral t).
import golden from "../golden/contrast.json" with { type: "json" };

function series(values: readonly number[], parts: Partial<GlideSeries> = {}): GlideSeries {
  const n = values.length;
  const mean = values.reduce((total, value) => total + value, 0) / n;
  const variance = n < 2
    ? null
    : values.reduce((total, value) => total + (value - mean) ** 2, 0) / (n - 1) / n;
  return {
    count: n,
    level: 1,
    levelError: null,
    endSpeed: 3,
    energyHeight: 0.6,
    meanShape: 0.07,
    logDistance: mean,
    pseudoValues: values,
    glideRatioPseudoValues: values,
    jackknifeVariance: variance,
    measurementVariance: 0,
    glideRatioMeasurementVariance: 0,
    variance,
    shapeSensitivity: 0,
    glideRatioShapeSensitivity: 0,
    ...parts,
  };
}

const baseline = series(golden.baseline);
const candidate = series(golden.candidate);
const blocksOf = ([first, second]: readonly string[]) => ({
  baseline: [...first!],
  candidate: [...second!],
});

describe("two series set against each other", () => {
  for (
    const [words, two] of [
      ["ordinary least squares on design and block", golden.two],
      ["each design's own scatter where that is wider", golden.unlike],
    ] as const
  ) {
    it(`within two blocks gives ${words}`, () => {
      const contrast = contrastSeries({
        baseline,
        candidate,
        commonVariance: 0,
        blocks: blocksOf(two.blocks),
      })!;
      expect(contrast.method).toBe("within blocks");
      // Rounding of double arithmetic only.
      expect(contrast.logRatio).toBeCloseTo(two.logRatio, 12);
      expect(contrast.variance).toBeCloseTo(two.variance, 12);
      expect(contrast.degreesOfFreedom).toBeCloseTo(two.degreesOfFreedom, 9);
    });
  }

  it("with four shared blocks gives the paired t of the blocks' differences", () => {
    const { four } = golden;
    const contrast = contrastSeries({
      baseline,
      candidate,
      commonVariance: 0,
      blocks: blocksOf(four.blocks),
    })!;
    expect(contrast.method).toBe("paired blocks");
    expect(contrast.logRatio).toBeCloseTo(four.logRatio, 12);
    expect(contrast.variance).toBeCloseTo(four.variance, 12);
    expect(contrast.degreesOfFreedom).toBeCloseTo(four.degreesOfFreedom, 9);
  });

  it("in one block is the same as without blocks", () => {
    const plain = contrastSeries({ baseline, candidate, commonVariance: 0 });
    const one = contrastSeries({
      baseline,
      candidate,
      commonVariance: 0,
      blocks: blocksOf(["aaaaaaa", "aaaaaaa"]),
    });
    expect(one).toEqual(plain);
  });

  it("gives nothing where no block holds both", () => {
    const apart = blocksOf(["aaaaaaa", "bbbbbbb"]);
    expect(contrastSeries({ baseline, candidate, commonVariance: 0, blocks: apart })).toBeNull();
  });

  it("gives nothing for one run a side, nor for equal rows that count as exact", () => {
    const one = series([2]);
    expect(contrastSeries({ baseline: one, candidate, commonVariance: 0 })).toBeNull();
    const exact = series([2, 2, 2]);
    expect(contrastSeries({ baseline: exact, candidate: exact, commonVariance: 0 })).toBeNull();
  });

  it("adds the doubt about the shape as the worse of own errors and one shared error", () => {
    const shape = (first: number, second: number) =>
      contrastSeries({
        baseline: series(golden.baseline, { shapeSensitivity: first }),
        candidate: series(golden.candidate, { shapeSensitivity: second }),
        commonVariance: 0,
      })!.shapeVariance;
    expect(shape(0.02, 0.02)).toBeCloseTo(0.0008, 12);
    expect(shape(-0.02, 0.02)).toBeCloseTo(0.0016, 12);
  });

  it("gains degrees of freedom from what is known without limit, and width all the same", () => {
    const plain = contrastSeries({ baseline, candidate, commonVariance: 0 })!;
    const common = contrastSeries({ baseline, candidate, commonVariance: 0.01 })!;
    expect(common.degreesOfFreedom).toBeGreaterThan(plain.degreesOfFreedom);
    expect(halfWidth(common)).toBeGreaterThan(halfWidth(plain));
    expect(probabilityFarther(common)).toBeLessThan(probabilityFarther(plain));
  });
});

describe("how many runs a side tell a difference", () => {
  for (const { spread, fixed, ratio, runs } of golden.runsNeeded) {
    it(`${runs} for a ratio of ${ratio} at ${spread} a run and ${fixed} that stays`, () => {
      const runVariances = [spread ** 2, spread ** 2] as const;
      expect(runsNeeded({ runVariances, fixedVariance: fixed, smallestRatio: ratio })).toBe(runs);
    });
  }

  it("none where what stays is too much", () => {
    const runVariances = [0.01, 0.01] as const;
    expect(runsNeeded({ runVariances, fixedVariance: 0.04 ** 2, smallestRatio: 1.1 })).toBeNull();
  });
});
