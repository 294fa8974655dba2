/**
 * What a design's entry is called where it was towed in several sessions.
 *
 * @module
 */
import type { DesignTow } from "../base/tow-answer.ts";
import type { TowEvidence } from "../decide/compare-tows.ts";

/**
 * The name of an entry: the design's, with its session where another entry has the same design.
 *
 * @param evidence whole
 * @param one an entry of its answer
 * @returns for instance "alder", or "alder (second morning)"
 */
export function towEntryName({ answer }: TowEvidence, one: DesignTow): string {
  const alike = answer.designs.filter((other) => other.design === one.design);
  return alike.length > 1 ? `${one.design} (${one.session})` : one.design;
}
