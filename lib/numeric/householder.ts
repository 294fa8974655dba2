/**
 * QR factorisation by Householder reflections with column pivoting: the backbone of both least-squares fits.
 *
 * Columns are scaled to unit length first, so that a parameter's unit does not decide what counts as "too alike".
 *
 * Source: Golub and Van Loan, Matrix Computations, 4th edition, algorithms 5.1.1 and 5.4.1 (numbers from memory).
 *
 * @module
 */

/** A factorised matrix that answers least-squares questions. */
export interface Factorised {
  /** Number of columns that are independent to working precision; below the number of columns, `solve` leaves some at 0. */
  readonly rank: number;
  /** Smallest over largest pivot: about the reciprocal of the scaled condition number, 0 when singular. */
  readonly reciprocalCondition: number;
  /** The coefficients with the least sum of squared residuals. */
  solve(right: ArrayLike<number>): Float64Array;
  /** The inverse of (matrix transposed times matrix); throws when the rank is not full. */
  inverseNormal(): number[][];
}

/** Pivot, relative to the largest, below which a column counts as a combination of others. */
const NOTHING = 4 * Number.EPSILON;

function lengthOf(column: Float64Array, from: number): number {
  let largest = 0;
  for (let i = from; i < column.length; i++) largest = Math.max(largest, Math.abs(column[i]!));
  if (largest === 0 || !Number.isFinite(largest)) return largest;
  let sum = 0;
  for (let i = from; i < column.length; i++) sum += (column[i]! / largest) ** 2;
  return largest * Math.sqrt(sum);
}

/** Takes the reflection stored in `column` from row k on off a vector. */
function reflect(column: Float64Array, k: number, factor: number, vector: Float64Array): void {
  let dot = 0;
  for (let i = k; i < column.length; i++) dot += column[i]! * vector[i]!;
  dot *= factor;
  for (let i = k; i < column.length; i++) vector[i]! -= dot * column[i]!;
}

/**
 * Factorises a matrix that is given by its columns.
 *
 * @param matrix columns of equal length, at least as long as there are columns
 * @returns the factorisation
 * @throws RangeError when there are more columns than rows, or a number is not finite
 * @example A straight line through (0, 1), (1, 3), (2, 5)
 * ```ts
 * import { factorise } from "lakeproof/numeric/householder.ts";
 * import { assertAlmostEqual } from "lakeproof/base/assert.ts";
 * const [intercept, slope] = factorise([[1, 1, 1], [0, 1, 2]]).solve([1, 3, 5]);
 * assertAlmostEqual(intercept!, 1, 1e-14);
 * assertAlmostEqual(slope!, 2, 1e-14);
 * ```
 */
export function factorise(matrix: readonly ArrayLike<number>[]): Factorised {
  const n = matrix.length;
  const m = n === 0 ? 0 : matrix[0]!.length;
  if (n === 0 || m < n) {
    throw new RangeError(`Cannot factorise as there must be as many rows as columns: ${m}, ${n}`);
  }
  const columns = matrix.map((column) => Float64Array.from(column));
  const scales = columns.map((column) => {
    const length = lengthOf(column, 0);
    if (!Number.isFinite(length) || column.length !== m) {
      throw new RangeError("Cannot factorise as every entry must be a finite number");
    }
    for (let i = 0; i < m; i++) column[i]! /= length || 1;
    return length || 1;
  });
  const order = columns.map((_column, j) => j);
  const diagonal = new Float64Array(n);
  const factors = new Float64Array(n);
  let rank = n;
  for (let k = 0; k < n; k++) {
    let pivot = k;
    let longest = -1;
    for (let j = k; j < n; j++) {
      const length = lengthOf(columns[order[j]!]!, k);
      if (length > longest) [pivot, longest] = [j, length];
    }
    [order[k], order[pivot]] = [order[pivot]!, order[k]!];
    const column = columns[order[k]!]!;
    if (longest <= NOTHING * Math.abs(k === 0 ? 1 : diagonal[0]!)) {
      rank = k;
      break;
    }
    const head = column[k]! > 0 ? -longest : longest;
    diagonal[k] = head;
    column[k]! -= head;
    // The reflection is 1 - factor v v'; v'v = 2 length (length + |head of the old column|).
    factors[k] = -1 / (head * column[k]!);
    for (let j = k + 1; j < n; j++) reflect(column, k, factors[k]!, columns[order[j]!]!);
  }
  /** Solves R z = y in place for the first `rank` unknowns. */
  const backSubstitute = (y: Float64Array): void => {
    for (let k = rank - 1; k >= 0; k--) {
      let value = y[k]!;
      for (let j = k + 1; j < rank; j++) value -= columns[order[j]!]![k]! * y[j]!;
      y[k] = value / diagonal[k]!;
    }
  };
  return {
    rank,
    reciprocalCondition: rank < n ? 0 : Math.abs(diagonal[n - 1]! / diagonal[0]!),
    solve(right) {
      const work = Float64Array.from(right);
      if (work.length !== m) {
        throw new RangeError(`Cannot solve as the right side must be ${m} long: ${work.length}`);
      }
      for (let k = 0; k < rank; k++) reflect(columns[order[k]!]!, k, factors[k]!, work);
      backSubstitute(work);
      const solution = new Float64Array(n);
      for (let k = 0; k < rank; k++) solution[order[k]!] = work[k]! / scales[order[k]!]!;
      return solution;
    },
    inverseNormal() {
      if (rank < n) throw new RangeError(`Cannot invert as the rank is ${rank} of ${n}`);
      // Columns of the inverse of R, one unit vector at a time; then their products.
      const inverse = Array.from({ length: n }, (_unused, k) => {
        const unit = new Float64Array(n);
        unit[k] = 1;
        backSubstitute(unit);
        return unit;
      });
      const result = Array.from({ length: n }, () => new Array<number>(n).fill(0));
      for (let i = 0; i < n; i++) {
        for (let j = 0; j < n; j++) {
          let sum = 0;
          for (let k = Math.max(i, j); k < n; k++) sum += inverse[k]![i]! * inverse[k]![j]!;
          result[order[i]!]![order[j]!] = sum / (scales[order[i]!]! * scales[order[j]!]!);
        }
      }
      return result;
    },
  };
}
