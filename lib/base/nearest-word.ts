/**
 * The word that a mistyped one was probably meant to be.
 *
 * @module
 */

/** Edits that turn one word into the other: letters put in, left out, changed, or two neighbours swapped. */
function editDistance(from: string, to: string): number {
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

/**
 * The nearest of the known words, or `null` when none is near enough to be worth a guess.
 *
 * Near enough is at most a third of the longer word's letters, and case is not counted. The distance is the number of
 * letters put in, left out, changed or swapped with a neighbour, each pair of neighbours swapped at most once.
 *
 * @param word what was found
 * @param known what would have been right; the first of equally near ones wins
 * @returns one of `known`, or `null`
 *
 * @example
 * ```ts
 * import { nearestWord } from "lakeproof/base/nearest-word.ts";
 * console.assert(nearestWord("lanuch_speed", ["launch_speed", "end_speed"]) === "launch_speed");
 * console.assert(nearestWord("keel", ["launch_speed", "end_speed"]) === null);
 * ```
 */
export function nearestWord(word: string, known: readonly string[]): string | null {
  let best: string | null = null;
  let bestDistance = Infinity;
  for (const candidate of known) {
    const distance = editDistance(word.toLowerCase(), candidate.toLowerCase());
    const allowed = Math.max(1, Math.floor(Math.max(word.length, candidate.length) / 3));
    if (distance <= allowed && distance < bestDistance && distance < candidate.length) {
      best = candidate;
      bestDistance = distance;
    }
  }
  return best;
}
