/**
 * Whether one name in two sessions means one wing.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import { printable } from "../base/printable.ts";
import { atSentenceStart } from "../base/sentence-words.ts";
import type { Design, Session } from "../base/session.ts";

/** Relative difference of span or area up to which a name in two sessions means one wing. */
const SAME_WING = 0.01;

/**
 * Whether a session's design of a name is the same wing.
 *
 * @param session with or without a design of that name
 * @param spec row of designs.csv of another session
 * @returns true where span and area agree to a per cent
 */
export function isSameWing(session: Session, { design, span, area }: Design): boolean {
  const own = session.designs.find((one) => one.design === design);
  return own !== undefined && Math.abs(own.span / span - 1) <= SAME_WING &&
    Math.abs(own.area / area - 1) <= SAME_WING;
}

/**
 * Designs that bear one name in two sessions and are not one wing.
 *
 * @param session that names the designs
 * @param other whose measurements are told beside
 * @returns a warning for each; what was measured of them is not told
 */
export function otherWings(session: Session, other: Session): Finding[] {
  return session.designs.filter((one) =>
    other.designs.some((each) => each.design === one.design) && !isSameWing(other, one)
  ).map((one) =>
    finding({
      severity: "warning",
      code: "other-wing",
      file: "designs.csv",
      row: one.row,
      what: `${atSentenceStart(printable(one.design))} of ${
        printable(other.name)
      } has another span or area: it is not the same wing, so what was measured of it is not told here.`,
      wanted: "One name for one wing.",
    })
  );
}
