/**
 * What the current did to a tow, in one sentence that the terminal and the page share.
 *
 * @module
 */
import { printable } from "../base/printable.ts";
import { listInWords } from "../base/sentence-words.ts";
import { formatPlusMinus } from "../base/rounding.ts";
import type { TowAnswer, TowCurrent } from "../base/tow-answer.ts";

/** Where a current was, where there are several. */
function place({ session, block }: TowCurrent, answer: TowAnswer): string {
  const sessions = answer.sessions.length > 1 ? [session] : [];
  const names = [...(block === null || answer.current.length < 2 ? [] : [block]), ...sessions];
  return names.length === 0 ? "" : ` in ${names.map(printable).join(", ")}`;
}

/**
 * The current of the water that was towed in, as far as the speeds are over ground.
 *
 * @param answer whole
 * @returns one sentence; empty where every speed is through the water
 *
 * @example Without speeds over ground there is nothing to say
 * ```ts
 * import { compareTows } from "lakeproof/decide/compare-tows.ts";
 * import { readSession } from "lakeproof/read/read-session.ts";
 * import { currentSentence } from "lakeproof/show/tow-current-sentence.ts";
 * const { answer } = compareTows(readSession("lake", new Map()));
 * if (currentSentence(answer) !== "") throw new Error("no current");
 * ```
 */
export function currentSentence(answer: TowAnswer): string {
  const known = answer.current.flatMap((one) =>
    one.speed === null || one.origin === null ? [] : [
      `${formatPlusMinus(one.speed)}${
        one.towards === null ? "" : ` towards "${printable(one.towards)}"`
      }${place(one, answer)}`,
    ]
  );
  const unknown = answer.current.filter((one) => one.speed === null || one.origin === null);
  return [
    known.length === 0
      ? ""
      : `The current is taken off the speeds over ground: ${listInWords(known)}.`,
    unknown.length === 0
      ? ""
      : `Speeds are over ground and their current${
        known.length === 0 ? "" : listInWords(unknown.map((one) => place(one, answer)))
      } is not known: it is allowed for as a doubt.`,
  ].filter((one) => one !== "").join(" ");
}
