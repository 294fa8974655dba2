import { describe, expect, it } from "vitest";
import { bootstrapInterval } from "lakeproof/infer/bootstrap.ts";
import { jackknife } from "lakeproof/infer/jackknife.ts";
import { meanInterval, studentInterval } from "lakeproof/infer/mean-interval.ts";
import { permutationTest } from "lakeproof/infer/permutation.ts";
import { meanOf } from "lakeproof/infer/sample.ts";
import { welchComparison } from "lakeproof/infer/welch.ts";
import { nonlinearLeastSquares } from "lakeproof/numeric/nonlinear-least-squares.ts";
import { seededRandom } from "lakeproof/numeric/random.ts";

/** Four Monte Carlo standard errors of a share. */
const mcError = (share: number, times: number) => 4 * Math.sqrt(share * (1 - share) / times);

/** Share of `times` repetitions in which an interval holds the truth. */
function coverage(
  times: number,
  truth: number,
  interval: (turn: number) => { readonly low: number | null; readonly high: number | null },
): number {
  let held = 0;
  for (let turn = 0; turn < times; turn++) {
    const { low, high } = interval(turn);
    if (low! <= truth && truth <= high!) held++;
  }
  return held / times;
}

describe("intervals at 95 % hold the truth as often as they say", () => {
  const random = seededRandom("coverage of intervals");
  const normals = (n: number, sd = 1) => Array.from({ length: n }, () => sd * random.normal());

  it("the t interval of three, five and twelve readings", () => {
    for (const n of [3, 5, 12]) {
      const share = coverage(8000, 0, () => meanInterval(normals(n)));
      expect(Math.abs(share - 0.95), `${n} readings`).toBeLessThan(mcError(0.95, 8000));
    }
  });

  it("Welch's, with scatters three to one and four readings against nine", () => {
    const share = coverage(
      8000,
      0,
      () => welchComparison({ baseline: normals(9), candidate: normals(4, 3) }).difference,
    );
    // The degrees of freedom are an approximation: it may be half a percent off besides.
    expect(Math.abs(share - 0.95)).toBeLessThan(mcError(0.95, 8000) + 0.005);
  });

  it("the jackknife of a log ratio of means of eight, with t", () => {
    const truth = Math.log(1.5);
    const share = coverage(4000, truth, () => {
      const pairs = Array.from({ length: 8 }, () => [
        15 + 1.5 * random.normal(),
        10 + random.normal(),
      ]);
      const column = (rows: readonly number[][], j: number) => meanOf(rows.map((row) => row[j]!));
      const { estimate, standardError } = jackknife(
        pairs,
        (rows) => Math.log(column(rows as number[][], 0) / column(rows as number[][], 1)),
      );
      return studentInterval({
        value: estimate,
        standardUncertainty: standardError,
        degreesOfFreedom: 7,
      });
    });
    expect(Math.abs(share - 0.95)).toBeLessThan(mcError(0.95, 4000) + 0.005);
  });

  it("the fit of a decay to twelve points, errors from the scatter", () => {
    const times = Array.from({ length: 12 }, (_unused, i) => i / 2);
    const curve = ([size, rate]: readonly number[]) =>
      times.map((t) => size! * Math.exp(-rate! * t));
    const share = coverage(1500, 0.5, () => {
      const fit = nonlinearLeastSquares({
        model: curve,
        observed: curve([10, 0.5]).map((value) => value + 0.3 * random.normal()),
        start: [8, 0.8],
      });
      if (!fit.ok) throw new Error(fit.reason);
      return studentInterval({
        value: fit.parameters[1]!,
        standardUncertainty: fit.standardErrors[1]!,
        degreesOfFreedom: fit.degreesOfFreedom,
      });
    });
    // The curve is slightly bent over the errors: one percent besides the Monte Carlo error.
    expect(Math.abs(share - 0.95)).toBeLessThan(mcError(0.95, 1500) + 0.01);
  });

  it("the BCa bootstrap of a skewed mean: nearly with twenty, too short with five, as its page warns", () => {
    const share = (n: number, times: number) => {
      let refused = 0;
      const held = coverage(times, 1, () => {
        const skewed = Array.from({ length: n }, () => -Math.log(1 - random.uniform()));
        const result = bootstrapInterval(skewed, meanOf, { random, draws: 999 });
        if (result.ok) return result.quantity;
        refused++;
        return { low: NaN, high: NaN };
      });
      expect(refused / times).toBeLessThan(0.1);
      return held * times / (times - refused);
    };
    expect(share(20, 1000)).toBeGreaterThan(0.9);
    expect(share(5, 1000)).toBeLessThan(0.9);
  });
});

describe("the permutation test", () => {
  it("raises a false alarm at 5 % in no more than 5 % of draws without a difference", () => {
    const random = seededRandom("false alarms");
    const times = 4000;
    let alarms = 0;
    for (let turn = 0; turn < times; turn++) {
      const draw = (n: number) => Array.from({ length: n }, () => random.normal() ** 3);
      if (permutationTest({ baseline: draw(5), candidate: draw(4) }).pValue <= 0.05) alarms++;
    }
    expect(alarms / times).toBeLessThan(0.05 + mcError(0.05, times));
    // 126 arrangements: the largest share at or below 0.05 is 6/126 or so, not far below.
    expect(alarms / times).toBeGreaterThan(0.03);
  });
});
