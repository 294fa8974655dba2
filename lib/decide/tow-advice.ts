/**
 * What would make each part of a tow's doubt smaller.
 *
 * @module
 */
import type { UncertaintyShare } from "../base/tow-answer.ts";
import { OWN_SOURCES } from "./tow-law.ts";

/** By how the source's name begins; the first that fits counts. */
const ADVICE: readonly (readonly [begins: string, advice: string])[] = [
  ["scatter", "take more readings"],
  ["planform", "tow a wider range of speeds"],
  ["sweeps", "tow more sweeps"],
  ["load cell offset", "hang more known weights on the cell, over the pulls that you measure"],
  ["load cell slope", "hang more known weights on the cell, over the pulls that you measure"],
  ["load cell zero drift", "read the cell's zero before and after each sweep"],
  [
    "load cell change",
    "look at the cell and its hooks, and hang known weights on it before and after",
  ],
  ["load cell", "calibrate the cell with known weights over the pulls that you measure"],
  ["known loads", "weigh the known weights on a better scale"],
  ["speed scale", "time the speed log over a measured distance"],
  ["speed zero", "drift beside a float to find the log's zero"],
  ["current", "tow each speed both ways, or drift beside a float"],
  ["line angle", "level what the angle hangs by"],
  ["carried mass", "weigh the rider with all that flies"],
  ["wet volume", "dunk the craft to find its volume"],
  ["depth", "mark depths on the mast"],
];

/**
 * What would help against one source.
 *
 * @param source as `uncertaintyShares` names it
 * @returns an order in words, without a full stop
 */
export function adviceFor(source: string): string {
  return ADVICE.find(([begins]) => source.startsWith(begins))?.[1] ?? `know the ${source} better`;
}

/**
 * Shares that more readings would not make smaller.
 *
 * @param shares shares of a variance, by source, that sum to 1
 * @returns those of sources that every reading shares (scales, tare, water), in the same order
 */
export function sharedByAll(shares: readonly UncertaintyShare[]): UncertaintyShare[] {
  return shares.filter((one) => !OWN_SOURCES.includes(one.source));
}

/** A share under this is not worth a day's work. */
const WORTH = 0.1;

/**
 * What would help most, largest share first, nothing twice.
 *
 * @param shares of a variance
 * @param most how many at most
 * @returns orders in words; the largest share's, however small, and others from a tenth on
 */
export function whatHelps(shares: readonly UncertaintyShare[], most = 2): string[] {
  const order = [...shares].sort((one, other) => other.share - one.share);
  const told = order.filter((one, i) => one.share > 0 && (i === 0 || one.share >= WORTH));
  return [...new Set(told.map((one) => adviceFor(one.source)))].slice(0, most);
}
