/**
 * The known word nearest to a misspelt one.
 *
 * @module
 */

/** How many single slips (letter added, lost, changed, or two neighbours swapped) lead from one word to the other. */
function slips(from: string, to: string): number {
  const rows: number[][] = Array.from({ length: from.length + 1 }, (_, i) => [i]);
  for (let j = 0; j <= to.length; j++) rows[0]![j] = j;
  for (let i = 1; i <= from.length; i++) {
    for (let j = 1; j <= to.length; j++) {
      const same = from[i - 1] === to[j - 1] ? 0 : 1;
      let best = Math.min(rows[i - 1]![j]! + 1, rows[i]![j - 1]! + 1, rows[i - 1]![j - 1]! + same);
      if (i > 1 && j > 1 && from[i - 1] === to[j - 2] && from[i - 2] === to[j - 1]) {
        best = Math.min(best, rows[i - 2]![j - 2]! + 1);
      }
      rows[i]![j] = best;
    }
  }
  return rows[from.length]![to.length]!;
}

const bare = (text: string) => text.toLowerCase().replace(/[\s_-]+/g, "");

/**
 * The known word that a misspelt one most likely means.
 *
 * Upper and lower case, spaces, hyphens and underscores do not count. About one slip in three letters is forgiven, and a
 * word that starts the only known one (`dist` for `distance`) is taken too.
 *
 * Source: F. J. Damerau 1964, Communications of the ACM 7(3), 171: the four kinds of slip.
 *
 * @param found what stands there; only its first 60 characters are looked at
 * @param known what may stand there
 * @returns the nearest known word, or `null` when none is near
 * @example
 * ```ts
 * import { didYouMean } from "lakeproof/base/did-you-mean.ts";
 * import { equal } from "node:assert/strict";
 * equal(didYouMean("lauch speed", ["launch_speed", "end_speed"]), "launch_speed");
 * ```
 */
export function didYouMean(found: string, known: readonly string[]): string | null {
  const word = bare(found.slice(0, 60));
  if (word === "") return null;
  const scored = known
    .map((one) => ({ one, slips: slips(word, bare(one)) }))
    .sort((a, b) => a.slips - b.slips);
  const first = scored[0];
  if (first !== undefined && first.slips <= Math.max(1, Math.floor(bare(first.one).length / 3))) {
    return first.one;
  }
  const starts = known.filter((one) => word.length >= 3 && bare(one).startsWith(word));
  return starts.length === 1 ? starts[0]! : null;
}
