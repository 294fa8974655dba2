/**
 * A value that someone else has published, as it stands in `shared/published-values.csv`.
 *
 * @module
 */

/**
 * How far the published value itself can be trusted.
 *
 * `confirmed`: seen in two independent texts (or one and an independent program) and recomputed; `one source`: seen in one
 * text and recomputed; `recomputed`: follows from the formula, the citation is from memory; `from memory`: nothing at hand
 * confirms it, so its tolerance is wide.
 */
export type Certainty = "confirmed" | "one source" | "recomputed" | "from memory";

/** One row of `shared/published-values.csv`. */
export interface PublishedValue {
  /** Names the function that computes our value, such as `gum-thermometer`. */
  readonly check: string;
  /** Groups rows in tables, such as `uncertainty`. */
  readonly topic: string;
  /** Which of the check's results, in words. */
  readonly quantity: string;
  /** `name=value; name=value`, SI; a list is separated by spaces. */
  readonly inputs: string;
  readonly published: number;
  /** SI unit, `1` for a ratio. */
  readonly unit: string;
  /** Largest difference allowed, in the same unit. */
  readonly tolerance: number;
  readonly toleranceReason: string;
  /** Author, year, table or equation. */
  readonly source: string;
  readonly certainty: Certainty;
}
