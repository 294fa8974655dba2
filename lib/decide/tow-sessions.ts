/**
 * Several sessions in one answer on tows: what they have in common, and what stays each session's own.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import type { Session } from "../base/session.ts";
import { meanOf } from "../infer/sample.ts";
import { designsOf } from "./glide-options.ts";
import type { TowedDesign } from "./design-tow.ts";
import { type PreparedTow, prepareTow } from "./tow-readings.ts";

/**
 * Shared errors that stay with an instrument from day to day, by the column it reads. All others (zeros, currents,
 * calibrations) are a session's own, whatever the instrument.
 */
const LASTING: Readonly<Record<string, string>> = {
  "load cell scale": "line_tension",
  "speed scale": "speed",
  "line angle": "line_angle",
  "carried mass": "carried_mass",
};

/**
 * Sessions made ready, with one mass at which all drag is told.
 *
 * @param sessions as read
 * @returns the sessions; the mass is the first one that any states, else the mean of all readings
 * @throws DataError where a stated condition can't be
 */
export function prepareTows(sessions: readonly Session[]): PreparedTow[] {
  const prepared = sessions.map(prepareTow);
  const stated = prepared.find(({ session }) =>
    session.conditions.some((one) => one.quantity === "reference_mass")
  );
  const masses = prepared.flatMap(({ points }) =>
    points.filter((one) => one.reason === null).map((one) => one.mass)
  );
  const referenceMass = stated?.referenceMass ?? (masses.length === 0 ? null : meanOf(masses));
  return prepared.map((one) => ({ ...one, referenceMass }));
}

/**
 * Names of the instruments of a column whose shared error is stated.
 *
 * @param session whose instruments.csv
 * @param quantity column
 * @returns names, as often as they stand there
 */
export function instrumentsOf(session: Session, quantity: string): string[] {
  return session.instruments.flatMap((one) =>
    one.quantity === quantity && one.kind === "common" && one.instrument !== null
      ? [one.instrument]
      : []
  );
}

/**
 * Whether two lists of instruments have one in common.
 *
 * @param one names
 * @param other names
 * @returns true where a name stands in both
 */
export const namedAlike = (one: readonly string[], other: readonly string[]) =>
  one.some((name) => other.includes(name));

/**
 * Whether a shared error is one and the same in two sessions.
 *
 * @param one session
 * @param other session
 * @returns true for every error of one session; across sessions only for a scale, level or weighing by an instrument that
 *   both name alike in instruments.csv
 */
export function sharedBetween(one: Session, other: Session): (key: string) => boolean {
  if (one === other) return () => true;
  return (key) => {
    const quantity = LASTING[key];
    return quantity !== undefined &&
      namedAlike(instrumentsOf(one, quantity), instrumentsOf(other, quantity));
  };
}

/**
 * Whether an error that a tow and traces know by one key is one error.
 *
 * @param tow session of the tow
 * @param traces session of the traces or glides, perhaps the same
 * @param columns that their speeds stand in
 * @returns true for a weighing of one session or by one scale, and for a speed log that has one name in both; its zero only
 *   on one day
 */
export function sharedWithTraces(
  tow: Session,
  traces: Session,
  columns: readonly string[] = ["trace_speed"],
): (key: string) => boolean {
  return (key) => {
    if (key !== "speed scale" && key !== "speed zero") return sharedBetween(tow, traces)(key);
    if (key === "speed zero" && tow !== traces) return false;
    return columns.every((column) =>
      namedAlike(instrumentsOf(tow, "speed"), instrumentsOf(traces, column))
    );
  };
}

/**
 * A design as another session's baseline sees it: errors that the two do not share become its own.
 *
 * @param towed in its session
 * @param shares whether an error is one in both
 * @returns the same numbers with other keys
 */
export function seenFromElsewhere(
  towed: TowedDesign,
  shares: (key: string) => boolean,
): TowedDesign {
  const own = <T extends { readonly key: string | null }>(one: T): T => ({
    ...one,
    key: one.key !== null && shares(one.key) ? one.key : null,
  });
  const { series, best } = towed;
  return {
    ...towed,
    series: series === null ? null : { ...series, shifts: series.shifts.map(own) },
    best: best === null ? null : {
      ...best,
      estimate: { ...best.estimate, shared: best.estimate.shared.map(own) },
    },
  };
}

/**
 * Designs of one name that are not one wing.
 *
 * @param sessions as read
 * @returns one warning a name
 */
export function differingDesigns(sessions: readonly Session[]): Finding[] {
  return [...designsOf(sessions).values()].flatMap((first) => {
    const other = sessions.flatMap((session) =>
      session.designs.filter((one) =>
        one.design === first.design && (one.span !== first.span || one.area !== first.area)
      ).map(() => session.name)
    );
    if (other.length === 0) return [];
    return [finding({
      severity: "warning",
      code: "design-differs",
      file: "designs.csv",
      what: `${first.design} has another span or area in ${other.join(", ")}: is it one wing?`,
      wanted: "The same numbers in each designs.csv, or another name.",
    })];
  });
}
