/**
 * Words put together as a sentence wants them.
 *
 * @module
 */

/**
 * A name at the head of a sentence.
 *
 * @param name of a design
 * @returns the name, capitalised when it is an ordinary lower-case word, else as it is
 */
export function atSentenceStart(name: string): string {
  if (!/^\p{Ll}[\p{Ll} -]*$/u.test(name)) return name;
  const [first = "", ...rest] = name;
  return first.toUpperCase() + rest.join("");
}

/**
 * Words in a row.
 *
 * @param words any number of them
 * @returns "a", "a and b" or "a, b and c"; empty for none
 * @example
 * ```ts
 * import { listInWords } from "lakeproof/base/sentence-words.ts";
 * import { equal } from "node:assert/strict";
 * equal(listInWords(["alder", "birch", "cedar"]), "alder, birch and cedar");
 * ```
 */
export function listInWords(words: readonly string[]): string {
  if (words.length <= 1) return words.join("");
  return `${words.slice(0, -1).join(", ")} and ${words[words.length - 1]}`;
}
