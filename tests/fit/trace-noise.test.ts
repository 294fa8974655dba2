import { describe, expect, it } from "vitest";
import {
  RESIDUAL,
  TRACE_COLUMNS,
  type TraceColumns,
  whitenedSquares,
  whitenedSums,
} from "lakeproof/fit/trace-noise.ts";
import { seededRandom } from "lakeproof/numeric/random.ts";

const random = seededRandom("columns to whiten");
const COUNT = 14;
/** Samples at a rate that changes half way. */
const times = Array.from({ length: COUNT }, (_, i) => i < 7 ? 0.1 * i : 0.25 * i - 1.05);
const columns = Array.from(
  { length: TRACE_COLUMNS },
  () => Float64Array.from({ length: COUNT }, () => random.normal()),
) as unknown as TraceColumns;

/** Solves `matrix x = right` by elimination; correlation matrices need no pivots. */
function solve(matrix: number[][], right: Float64Array): number[] {
  const rows = matrix.map((row, i) => [...row, right[i]!]);
  for (let i = 0; i < COUNT; i++) {
    for (let k = i + 1; k < COUNT; k++) {
      const share = rows[k]![i]! / rows[i]![i]!;
      for (let j = i; j <= COUNT; j++) rows[k]![j]! -= share * rows[i]![j]!;
    }
  }
  const x = new Array<number>(COUNT).fill(0);
  for (let i = COUNT - 1; i >= 0; i--) {
    let sum = rows[i]![COUNT]!;
    for (let j = i + 1; j < COUNT; j++) sum -= rows[i]![j]! * x[j]!;
    x[i] = sum / rows[i]![i]!;
  }
  return x;
}

describe("whitened sums of a trace", () => {
  it("are the products with the inverse of the whole correlation matrix, at uneven spacing", () => {
    for (const memory of [0, 0.05, 0.4]) {
      const matrix = times.map((one, i) =>
        times.map((other, j) =>
          i === j ? 1 : memory === 0 ? 0 : Math.exp(-Math.abs(one - other) / memory)
        )
      );
      const sums = whitenedSums(columns, times, memory);
      columns.forEach((right, k) => {
        const solved = solve(matrix, right);
        columns.forEach((left, j) => {
          const expected = left.reduce((sum, one, i) => sum + one * solved[i]!, 0);
          // Fourteen numbers near 1, correlations to 0.8: rounding.
          expect(sums[TRACE_COLUMNS * j + k]).toBeCloseTo(expected, 11);
        });
      });
    }
  });

  it("end in the squares of the residuals, which come alone to the same digit", () => {
    for (const memory of [0, 0.3]) {
      expect(whitenedSquares(columns[RESIDUAL], times, memory))
        .toBe(whitenedSums(columns, times, memory).at(-1));
    }
  });
});
