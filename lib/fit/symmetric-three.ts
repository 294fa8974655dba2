/**
 * Symmetric 3 by 3 matrices: what the three constants of a drag law need.
 *
 * @module
 */

/** Three numbers. */
export type Three = readonly [number, number, number];

/** A symmetric matrix by rows. */
export type SymmetricThree = readonly [Three, Three, Three];

/**
 * Matrix times vector.
 *
 * @param matrix of three by three
 * @param vector of three
 * @returns a vector, in the product of the two units
 */
export function timesVector(matrix: SymmetricThree, vector: Three): Three {
  return [dot(matrix[0], vector), dot(matrix[1], vector), dot(matrix[2], vector)];
}

/**
 * Scalar product.
 *
 * @param one of three
 * @param other of three
 * @returns their sum of products
 */
export function dot(one: Three, other: Three): number {
  return one[0] * other[0] + one[1] * other[1] + one[2] * other[2];
}

/**
 * `vector' matrix vector`: the variance of a sum with these factors, when the matrix is a covariance.
 *
 * @param matrix of three by three
 * @param vector to its left
 * @param other to its right; the same one unless given, else the result is a covariance of two sums
 * @returns one number, in the matrix's unit times both vectors' units
 */
export function quadraticForm(
  matrix: SymmetricThree,
  vector: Three,
  other: Three = vector,
): number {
  return dot(timesVector(matrix, vector), other);
}

/**
 * Every element of both added, the second times a factor.
 *
 * @param one of three by three
 * @param other in the same units
 * @param factor without unit; -1 takes the second from the first
 * @returns the sum
 */
export function plus(one: SymmetricThree, other: SymmetricThree, factor = 1): SymmetricThree {
  return mapThree((i, j) => one[i]![j]! + factor * other[i]![j]!);
}

/**
 * A matrix by its elements.
 *
 * @param element gives the number in row `i`, column `j`, both from 0
 * @returns all nine
 */
export function mapThree(element: (i: number, j: number) => number): SymmetricThree {
  const row = (i: number): Three => [element(i, 0), element(i, 1), element(i, 2)];
  return [row(0), row(1), row(2)];
}

/**
 * `one other one`, symmetric when both are.
 *
 * @param one on the outside
 * @param other on the inside
 * @returns the product, for instance a covariance after a change of unknowns
 */
export function sandwich(one: SymmetricThree, other: SymmetricThree): SymmetricThree {
  const inner = mapThree((i, j) => dot(other[i]!, one[j]!));
  return mapThree((i, j) =>
    one[i]![0] * inner[0][j]! + one[i]![1] * inner[1][j]! + one[i]![2] * inner[2][j]!
  );
}

/**
 * The inverse of a positive definite matrix, by Cholesky's factors of the matrix scaled to unit diagonal.
 *
 * @param matrix symmetric
 * @returns its inverse, or `null` where the matrix is not positive definite to working precision
 *
 * @example
 * ```ts
 * import { inverseOfThree } from "lakeproof/fit/symmetric-three.ts";
 * const inverse = inverseOfThree([[4, 2, 0], [2, 3, 0], [0, 0, 2]])!;
 * if (Math.abs(inverse[0][0] - 3 / 8) + Math.abs(inverse[2][2] - 1 / 2) > 1e-15) throw new Error("wrong");
 * ```
 */
export function inverseOfThree(matrix: SymmetricThree): SymmetricThree | null {
  const scale = [0, 1, 2].map((i) => Math.sqrt(matrix[i]![i]!));
  if (!scale.every((one) => one > 0 && one < Infinity)) return null;
  const at = (i: number, j: number) => matrix[i]![j]! / (scale[i]! * scale[j]!);
  const l10 = at(1, 0), l20 = at(2, 0);
  const second = 1 - l10 * l10;
  if (!(second > 1e-14)) return null;
  const l11 = Math.sqrt(second);
  const l21 = (at(2, 1) - l20 * l10) / l11;
  const third = 1 - l20 * l20 - l21 * l21;
  if (!(third > 1e-14)) return null;
  const l22 = Math.sqrt(third);
  // Inverse of the lower factor, row by row; the inverse is its transpose times itself.
  const m00 = 1, m10 = -l10 / l11, m11 = 1 / l11;
  const m20 = (-l20 - l21 * m10) / l22, m21 = -l21 * m11 / l22, m22 = 1 / l22;
  const rows: SymmetricThree = [[m00, 0, 0], [m10, m11, 0], [m20, m21, m22]];
  return mapThree((i, j) =>
    (rows[0][i]! * rows[0][j]! + rows[1][i]! * rows[1][j]! + rows[2][i]! * rows[2][j]!) /
    (scale[i]! * scale[j]!)
  );
}
