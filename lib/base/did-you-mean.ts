/**
 * The known name that a misspelt one most likely means, however it is joined or cut short.
 *
 * @module
 */
import { editDistance } from "./edit-distance.ts";

const bare = (text: string) => text.toLowerCase().replace(/[\s_-]+/g, "");

/** The nearest known word within a third of the longer word's letters; the first of equally near ones. */
function nearest(word: string, known: readonly string[]): string | null {
  let best: string | null = null;
  let bestDistance = Infinity;
  for (const candidate of known) {
    const other = bare(candidate);
    const distance = editDistance(word, other);
    const allowed = Math.max(1, Math.floor(Math.max(word.length, other.length) / 3));
    if (distance <= allowed && distance < bestDistance && distance < other.length) {
      best = candidate;
      bestDistance = distance;
    }
  }
  return best;
}

/**
 * The known word that a misspelt one most likely means.
 *
 * Upper and lower case, spaces, hyphens and underscores do not count. The nearest word is taken if no more than a third of
 * its letters are wrong; else a word that starts the only known one (`dist` for `distance`).
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
  const near = nearest(word, known);
  if (near !== null) return near;
  const starts = known.filter((one) => word.length >= 3 && bare(one).startsWith(word));
  return starts.length === 1 ? starts[0]! : null;
}
