/**
 * A towed design beside all glides of it, of its own and of other sessions.
 *
 * @module
 */
import type { Session } from "../base/session.ts";
import type { TowAgreement } from "../base/tow-traces.ts";
import { faultsOf } from "./data-faults.ts";
import type { TowedDesign } from "./design-tow.ts";
import { plainGlides } from "./plain-glides.ts";
import { glideAgreement, onlyWhereAllAgree, towAgreement } from "./tow-agreement.ts";
import type { PreparedTow } from "./tow-readings.ts";
import { sharedWithTraces } from "./tow-sessions.ts";
import type { TracedDesign } from "./traced-design.ts";

/** A design in its session, with what the traces of its glides say. */
export interface TowEntry {
  readonly towed: TowedDesign;
  readonly prepared: PreparedTow;
  traced: TracedDesign | null;
}

/** Tables that glides and their traces rest on. */
export const GLIDES_REST_ON: readonly (string | null)[] = [
  "designs.csv",
  "glides.csv",
  "conditions.csv",
  "instruments.csv",
  null,
];

/**
 * Tow and glides of one design side by side: by its speed traces, and by the plain glides of each session.
 *
 * @param entry a design in its session
 * @param sessions all that were asked about
 * @returns one entry a quantity, combined only where all of them agree
 */
export function besideGlides(
  { towed, traced, prepared }: TowEntry,
  sessions: readonly Session[],
): readonly TowAgreement[] {
  const { session } = prepared;
  const found = traced?.answer == null ? [] : towAgreement(
    towed,
    traced,
    sharedWithTraces(
      session,
      sessions.find((one) => one.name === traced.answer!.session) ?? session,
    ),
  );
  for (const other of sessions) {
    if (other.glides.length === 0 || faultsOf([other], GLIDES_REST_ON).length > 0) continue;
    const glides = plainGlides(other, towed, prepared);
    if (glides === null) continue;
    const shares = sharedWithTraces(session, other, ["launch_speed", "end_speed"]);
    found.push(...glideAgreement(towed, glides, other.name, shares));
  }
  return onlyWhereAllAgree(found);
}
