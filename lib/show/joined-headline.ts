/**
 * One bottom line for many candidates, grouped by verdict.
 *
 * @module
 */
import type { GlideComparison } from "../base/answers.ts";
import { printable } from "../base/printable.ts";
import { atSentenceStart, listInWords } from "../base/sentence-words.ts";
import { headlineOf } from "./verdict-sentence.ts";

/** Up to so many candidates each have a sentence of their own. */
const EACH_ITS_OWN = 3;

/** What a headline says of a comparison. */
export type Compared =
  & Pick<GlideComparison, "baseline" | "candidate" | "verdict">
  & Partial<Pick<GlideComparison, "restsOn">>;

const REFUSED = "these runs can't answer it";

/**
 * The bottom line of several comparisons: a sentence each for up to three, beyond that one that groups the candidates.
 *
 * A claim that hangs on single runs is never lost in a group: it keeps its own sentence, with that said.
 *
 * @param comparisons in the order in which their candidates are to be named
 * @returns sentences; empty for no comparison
 * @example
 * ```ts
 * import { joinedHeadline } from "lakeproof/show/joined-headline.ts";
 * import { equal } from "node:assert/strict";
 * const of = (candidate: string, verdict: "candidate-better" | "cannot-tell-yet") => (
 *   { baseline: "alder", candidate, verdict }
 * );
 * const line = joinedHeadline([
 *   of("birch", "candidate-better"),
 *   of("cedar", "candidate-better"),
 *   of("oak", "cannot-tell-yet"),
 *   of("pine", "cannot-tell-yet"),
 * ]);
 * equal(
 *   line,
 *   "Birch and cedar glide further than alder from the same launch; for oak and pine it can't be told yet.",
 * );
 * ```
 */
export function joinedHeadline(comparisons: readonly Compared[]): string {
  const baselines = new Set(comparisons.map((one) => one.baseline));
  if (comparisons.length <= EACH_ITS_OWN || baselines.size > 1) {
    return comparisons.map(headlineOf).join(" ");
  }
  const hangs = (one: Compared) => (one.restsOn ?? []).length > 0;
  const whole = comparisons.filter((one) => !hangs(one));
  return [groupedSentence(whole), ...comparisons.filter(hangs).map(headlineOf)]
    .filter((sentence) => sentence !== "").join(" ");
}

function groupedSentence(comparisons: readonly Compared[]): string {
  const [first] = comparisons;
  if (first === undefined) return "";
  if (comparisons.length === 1) return headlineOf(first);
  const base = printable(first.baseline);
  const of = (verdict: Compared["verdict"]) => {
    const names = comparisons.filter((one) => one.verdict === verdict)
      .map((one) => printable(one.candidate));
    return { names: listInWords(names), count: names.length };
  };
  const [better, worse] = [of("candidate-better"), of("baseline-better")];
  const [open, refused] = [of("cannot-tell-yet"), of("refused")];
  const claims = [
    ...(better.count === 0 ? [] : [
      `${better.names} ${better.count === 1 ? "glides" : "glide"} further than ${base} from the ` +
      "same launch",
    ]),
    ...(worse.count === 0 ? [] : [
      `${worse.names} ${worse.count === 1 ? "falls" : "fall"} short` +
      (better.count === 0 ? ` of ${base} from the same launch` : ""),
    ]),
  ];
  if (claims.length === 0 && open.count === 0) {
    return `These runs can't answer how ${refused.names} compare with ${base}.`;
  }
  const parts = [
    ...claims,
    ...(open.count === 0 ? [] : claims.length > 0 ? [`for ${open.names} it can't be told yet`] : [
      `it can't be told yet whether ${open.names} ${open.count === 1 ? "differs" : "differ"} ` +
      `from ${base}`,
    ]),
    ...(refused.count === 0 ? [] : [`for ${refused.names} ${REFUSED}`]),
  ];
  return `${capitalised(parts[0]!, comparisons)}${
    parts.slice(1).map((part) => `; ${part}`).join("")
  }.`;
}

/** A sentence's first word with a capital; a name that is written in its own way stays so. */
function capitalised(text: string, comparisons: readonly Compared[]): string {
  const name = comparisons.map((one) => printable(one.candidate))
    .filter((one) => text.startsWith(one))
    .sort((a, b) => b.length - a.length)[0];
  return name === undefined
    ? text[0]!.toUpperCase() + text.slice(1)
    : atSentenceStart(name) + text.slice(name.length);
}
