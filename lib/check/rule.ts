/**
 * What a rule of plausibility is, and the helpers that rules share.
 *
 * @module
 */
import type { Finding } from "../base/finding.ts";
import type { Glide, Session } from "../base/session.ts";

/** Looks at a whole session and tells what is odd; it never changes or drops anything. */
export type Rule = (session: Session) => readonly Finding[];

/**
 * Glides that the user has not left out.
 *
 * @param session with all its glides
 * @returns those that count
 */
export function keptGlides(session: Session): readonly Glide[] {
  return session.glides.filter((one) => one.leaveOut === null);
}

/**
 * Two decimals at most, without trailing zeros: how a number is shown in a sentence of a finding.
 *
 * @param value any finite number
 * @returns the text, without unit
 */
export function short(value: number): string {
  return String(Number(value.toFixed(Math.abs(value) < 0.1 ? 4 : 2)));
}

/**
 * The middle value; `null` of none.
 *
 * @param values any number of them, in any order
 * @returns the middle one, of an even number the mean of the middle two, in their unit
 */
export function median(values: readonly number[]): number | null {
  if (values.length === 0) return null;
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}
