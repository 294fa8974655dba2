/**
 * How many slips of the hand lie between two words.
 *
 * @module
 */

/**
 * Edits that turn one word into the other: letters put in, left out, changed, or two neighbours swapped.
 *
 * Each pair of neighbours is swapped at most once, and nothing is put between them after that (the restricted distance).
 *
 * Source: Damerau 1964, the restricted form, from memory.
 *
 * @param from one word
 * @param to the other
 * @returns a count, 0 for equal words
 * @example
 * ```ts
 * import { editDistance } from "lakeproof/base/edit-distance.ts";
 * import { equal } from "node:assert/strict";
 * equal(editDistance("lanuch", "launch"), 1);
 * ```
 */
export function editDistance(from: string, to: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: to.length + 1 }, (_, column) => column);
  for (let row = 1; row <= from.length; row++) {
    const current = [row];
    for (let column = 1; column <= to.length; column++) {
      const change = from[row - 1] === to[column - 1] ? 0 : 1;
      let best = Math.min(
        last[column]! + 1,
        current[column - 1]! + 1,
        last[column - 1]! + change,
      );
      if (
        row > 1 && column > 1 && from[row - 1] === to[column - 2] &&
        from[row - 2] === to[column - 1]
      ) best = Math.min(best, beforeLast[column - 2]! + 1);
      current.push(best);
    }
    beforeLast = last;
    last = current;
  }
  return last[to.length]!;
}
