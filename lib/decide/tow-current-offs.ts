/**
 * What is open about the current, as errors that readings share.
 *
 * @module
 */
import type { KnownBy } from "../fit/tow-series.ts";
import type { Off } from "./tow-off.ts";
import type { TowCurrents } from "./tow-current.ts";
import { UNKNOWN_CURRENT } from "./tow-current-sources.ts";
import type { PreparedPoint } from "./tow-readings.ts";

/** One error of the current. */
export interface CurrentOff {
  readonly name: string;
  readonly off: (sign: 1 | -1) => Off;
  readonly knownBy?: KnownBy;
}

/**
 * Errors of the current: of each block its size and its change, and of speeds whose direction nobody wrote down.
 *
 * A current that is off by some amount moves passes up and down apart, so that readings both ways hold little of it.
 *
 * @param currents of the session
 * @param readings of it
 * @returns errors; none where all speeds are through the water
 */
export function currentOffs(
  { blocks }: TowCurrents,
  readings: readonly PreparedPoint[],
): CurrentOff[] {
  const directed = blocks.filter(({ block }) =>
    readings.some(({ point, pass }) => point.block === block && pass !== null && pass.sign !== 0)
  );
  const nameOf = (what: string, block: string | null) =>
    directed.length === 1 ? what : `${what} of ${block ?? "rows without a block"}`;
  const errors = directed.flatMap(
    ({ block, standardUncertainty, slopeUncertainty, knownBy }): CurrentOff[] => {
      const known = knownBy === null ? {} : { knownBy };
      const part = (what: string, fixed: number, slope: number): CurrentOff => ({
        name: nameOf(what, block),
        off: (sign) => ({ current: { block, fixed: sign * fixed, slope: sign * slope } }),
        ...known,
      });
      return [
        part("current", standardUncertainty, 0),
        ...(slopeUncertainty > 0 ? [part("current's change", 0, slopeUncertainty)] : []),
      ];
    },
  );
  const undirected = readings.some(({ pass }) => pass?.sign === 0);
  return [
    ...errors,
    ...(undirected
      ? [{
        name: directed.length === 0 ? "current" : "current without direction",
        off: (sign: 1 | -1) => ({ undirected: sign * UNKNOWN_CURRENT }),
      }]
      : []),
  ];
}
