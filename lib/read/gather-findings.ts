/**
 * Notes that say the same of many rows, as one with a count.
 *
 * @module
 */
import { type Finding } from "../base/finding.ts";

/**
 * Gathers notes that differ in nothing but their row; errors and warnings keep a finding for each row.
 *
 * The first row stands for all; `count` says how many there are. Order is kept.
 *
 * @param findings in the order found
 * @returns equal notes as one with their counts added, in order of the first; warnings and errors as they were
 */
export function gatherFindings(findings: readonly Finding[]): Finding[] {
  const gathered = new Map<string, Finding>();
  findings.forEach((one, index) => {
    const key = one.severity !== "note" ? `${index}` : JSON.stringify([
      one.severity,
      one.code,
      one.file,
      one.column,
      one.what,
      one.wanted,
    ]);
    const before = gathered.get(key);
    gathered.set(key, before === undefined ? one : { ...before, count: before.count + one.count });
  });
  return [...gathered.values()];
}
