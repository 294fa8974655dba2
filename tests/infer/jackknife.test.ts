import { describe, expect, it } from "vitest";
import { jackknife } from "lakeproof/infer/jackknife.ts";
import { meanOf, varianceOf } from "lakeproof/infer/sample.ts";

const readings = [3.1, 4.7, 2.2, 5.9, 4.4];

describe("the jackknife", () => {
  it("gives the usual standard error for a mean, and the readings as pseudo-values", () => {
    const { standardError, pseudoValues, bias } = jackknife(readings, meanOf);
    expect(standardError).toBeCloseTo(Math.sqrt(varianceOf(readings) / readings.length), 13);
    pseudoValues.forEach((value, i) => expect(value).toBeCloseTo(readings[i]!, 12));
    expect(bias).toBeCloseTo(0, 13);
  });

  it("removes the bias of the variance with n in the denominator exactly (Quenouille 1956)", () => {
    const plugIn = (x: readonly number[]) => varianceOf(x) * (x.length - 1) / x.length;
    const { estimate, bias } = jackknife(readings, plugIn);
    expect(estimate - bias).toBeCloseTo(varianceOf(readings), 13);
  });

  it("keeps its digits when all readings share a large offset", () => {
    const far = jackknife(readings.map((value) => value + 2 ** 30), meanOf);
    expect(far.standardError).toBeCloseTo(jackknife(readings, meanOf).standardError, 6);
  });

  it("refuses a single item and a result that is not a number", () => {
    expect(() => jackknife([1], meanOf)).toThrow(/two/);
    expect(() => jackknife([1, 2, 3], () => NaN)).toThrow(/NaN/);
  });
});
