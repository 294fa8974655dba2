/**
 * What others have computed with more digits than we keep, as it stands in `shared/`: data sets with certified least-squares
 * answers (`nist-*.csv`), and values of distributions.
 *
 * @module
 */

/** One coefficient of a certified set. */
export interface CertifiedParameter {
  readonly name: string;
  readonly value: number;
  readonly standardError: number;
}

/** A data set with its certified answer. */
export interface CertifiedSet {
  readonly set: string;
  readonly observed: readonly number[];
  /** One row an observation: the values of the predictors. */
  readonly predictors: readonly (readonly number[])[];
  readonly parameters: readonly CertifiedParameter[];
  /** Certified residual standard deviation, in the unit of the observations. */
  readonly residualStandardDeviation: number;
}

/** A set whose coefficients enter linearly. */
export interface LinearCertifiedSet extends CertifiedSet {
  /** `polynomial` in the one predictor, a line `through origin`, or a `plane` in several. */
  readonly form: "polynomial" | "through origin" | "plane";
}

/** A set with a curve and two published starts. */
export interface NonlinearCertifiedSet extends CertifiedSet {
  /** NIST's own level of difficulty. */
  readonly level: string;
  /** The curve in b1, b2, .. and x (or x1, x2). */
  readonly model: string;
  /** What the curve describes: the observation itself or its logarithm. */
  readonly response: "y" | "ln(y)";
  /** Far start and near start, one value a coefficient. */
  readonly starts: readonly [readonly number[], readonly number[]];
}

/** A value of a distribution function, as it stands in `shared/distributions-mpmath.csv`. */
export interface DistributionValue {
  /** Name of our function. */
  readonly function: string;
  /** Its arguments in order. */
  readonly arguments: readonly number[];
  readonly value: number;
}
