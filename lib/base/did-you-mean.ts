/**
 * The known name that a misspelt one most likely means, however it is joined or cut short.
 *
 * @module
 */
import { nearestWord } from "./nearest-word.ts";

const bare = (text: string) => text.toLowerCase().replace(/[\s_-]+/g, "");

/**
 * The known word that a misspelt one most likely means.
 *
 * Upper and lower case, spaces, hyphens and underscores do not count, and a word that starts the only known one (`dist`
 * for `distance`) is taken too; else the nearest word.
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
  const near = nearestWord(word, known.map(bare));
  if (near !== null) return known.find((one) => bare(one) === near)!;
  const starts = known.filter((one) => word.length >= 3 && bare(one).startsWith(word));
  return starts.length === 1 ? starts[0]! : null;
}
