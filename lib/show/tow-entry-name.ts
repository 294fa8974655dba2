/**
 * What a design's entry is called where it was towed in several sessions.
 *
 * @module
 */
import type { DesignTow, TowComparison } from "../base/tow-answer.ts";
import type { TowEvidence } from "../decide/compare-tows.ts";

/**
 * The name of an entry: the design's, with its session where another entry has the same design.
 *
 * @param evidence whole
 * @param one an entry of its answer
 * @returns for instance "alder", or "alder (second morning)"
 */
export function towEntryName(
  { designs }: TowEvidence,
  one: Pick<DesignTow, "design" | "session">,
): string {
  const own = designs.find(({ answer }) =>
    answer.design === one.design && answer.session === one.session
  );
  return own?.name ?? one.design;
}

/**
 * An entry of the answer under its name, for sentences about it.
 *
 * @param evidence whole
 * @param one an entry of its answer
 * @returns the same numbers
 */
export function namedTow(evidence: TowEvidence, one: DesignTow): DesignTow {
  return { ...one, design: towEntryName(evidence, one) };
}

/**
 * A comparison with both sides under their names, for sentences about it.
 *
 * @param evidence whole
 * @param one a comparison of its answer
 * @returns the same numbers
 */
export function namedComparison(evidence: TowEvidence, one: TowComparison): TowComparison {
  const { baseline, candidate, baselineSession, candidateSession } = one;
  return {
    ...one,
    baseline: towEntryName(evidence, { design: baseline, session: baselineSession }),
    candidate: towEntryName(evidence, { design: candidate, session: candidateSession }),
  };
}
