/**
 * Says where two texts part: the first line that differs, and the words about it.
 *
 * @module
 */

/** A stretch in which two texts are not the same. */
export interface TextDifference {
  /** Line of the published text, from 1. */
  readonly line: number;
  /** Where in the published text it begins. */
  readonly at: number;
  readonly published: string;
  readonly fresh: string;
}

/** Letters shown on either side of a difference. */
const AROUND = 40;

/** The parts of two lines about the place at which they differ, the same beginnings and ends shortened. */
function about(published: string, fresh: string) {
  let from = 0;
  while (from < Math.min(published.length, fresh.length) && published[from] === fresh[from]) from++;
  let same = 0;
  const most = Math.min(published.length, fresh.length) - from;
  while (same < most && published.at(-1 - same) === fresh.at(-1 - same)) same++;
  const cut = (text: string) => {
    const start = Math.max(0, from - AROUND);
    const end = Math.min(text.length, text.length - same + AROUND, from + 4 * AROUND);
    return (start > 0 ? "…" : "") + text.slice(start, end) + (end < text.length ? "…" : "");
  };
  return { from, published: cut(published), fresh: cut(fresh) };
}

/**
 * Lines of two texts that differ, beginnings and ends of the texts that are the same left out.
 *
 * @param published as it lies in the folder
 * @param fresh as a fresh run made it
 * @param most how many to give
 * @returns differences in order; empty for equal texts
 *
 * @example
 * ```ts
 * import { textDifferences } from "lakeproof/publish/verify/compare-texts.ts";
 * const [first] = textDifferences("a\nb 1\nc", "a\nb 2\nc", 5);
 * console.assert(first?.line === 2 && first.published === "b 1");
 * ```
 */
export function textDifferences(published: string, fresh: string, most: number): TextDifference[] {
  if (published === fresh) return [];
  const [left, right] = [published.split("\n"), fresh.split("\n")];
  let from = 0;
  while (from < Math.min(left.length, right.length) && left[from] === right[from]) from++;
  let same = 0;
  const shorter = Math.min(left.length, right.length) - from;
  while (same < shorter && left.at(-1 - same) === right.at(-1 - same)) same++;
  const [olds, news] = [
    left.slice(from, left.length - same),
    right.slice(from, right.length - same),
  ];
  const found: TextDifference[] = [];
  let at = left.slice(0, from).reduce((sum, line) => sum + line.length + 1, 0);
  for (let row = 0; row < Math.max(olds.length, news.length) && found.length < most; row++) {
    const [old, now] = [olds[row], news[row]];
    if (old !== now) {
      const { from: inLine, ...words } = about(old ?? "", now ?? "");
      found.push({ line: from + row + 1, at: at + inLine, ...words });
    }
    at += (old?.length ?? 0) + 1;
  }
  return found;
}
