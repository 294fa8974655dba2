/**
 * Counts how often intervals hold a known truth, how wide they are, and what they claim.
 *
 * @module
 */

/** How often an interval held the truth. */
export interface Tally {
  /** Intervals that were given. */
  readonly cases: number;
  readonly held: number;
  /** Intervals made without what all readings share that hold the truth; 0 where that was not looked at. */
  readonly heldWithoutShared: number;
  /** Intervals of a ratio that claim a difference, and those that claim a wrong one. */
  readonly claims: number;
  readonly wrongClaims: number;
  /** Median half width of the interval on the logarithm; 0 for a bound. */
  readonly halfWidth: number;
}

/** Counts as it goes. */
export class Counter implements Tally {
  cases = 0;
  held = 0;
  heldWithoutShared = 0;
  claims = 0;
  wrongClaims = 0;
  readonly #widths: number[] = [];

  /** An interval on the logarithm. */
  count(low: number, high: number, truth: number): void {
    this.cases++;
    this.#widths.push((high - low) / 2);
    if (low <= truth && truth <= high) this.held++;
    if (low > 0 || high < 0) this.claims++;
    if ((low > 0 && truth <= 0) || (high < 0 && truth >= 0)) this.wrongClaims++;
  }

  tally(): Tally {
    const { cases, held, heldWithoutShared, claims, wrongClaims, halfWidth } = this;
    return { cases, held, heldWithoutShared, claims, wrongClaims, halfWidth };
  }

  get halfWidth(): number {
    const finite = this.#widths.filter(Number.isFinite).sort((a, b) => a - b);
    return finite[finite.length >> 1] ?? 0;
  }
}
