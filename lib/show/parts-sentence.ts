/**
 * What the drag of a towed design is made of, in sentences that the terminal and the page share.
 *
 * @module
 */
import { printable } from "../base/printable.ts";
import { formatNumber, formatPercent, formatPlusMinus, NO_BREAK_SPACE } from "../base/rounding.ts";
import { listInWords } from "../base/sentence-words.ts";
import type { DesignTow, DragPart, SpeedParts } from "../base/tow-answer.ts";
import { valueWithInterval } from "./tow-sentence.ts";

/** Where the parts are told: at the best speed, else at the slowest. */
function told({ parts }: DesignTow): SpeedParts | undefined {
  return parts.find((one) => one.at === "best") ?? parts[0];
}

const HOW = { tare: "tared", formula: "by formula", stated: "as stated", rest: "" } as const;

/** What would narrow the doubt, by part and how it is known now. */
const WOULD_HELP: Readonly<Record<string, string>> = {
  "struts formula": " Readings of the struts alone would narrow it.",
  "rider in the air formula": " A measured air_drag_area in conditions.csv would narrow it.",
};

/** Doubt of a part that is taken off, hence of the rest, N2. */
const doubtOf = ({ drag }: DragPart) => (drag.standardUncertainty ?? 0) ** 2;

/**
 * The parts at the best speed, or at the slowest where that was not towed.
 *
 * @param one a design's answer
 * @returns one or two sentences; empty where there are none
 */
export function partsSentence(one: DesignTow): string {
  const at = told(one);
  if (at === undefined) return "";
  const taken = at.parts.filter((part) => part.how !== "rest");
  const rest = at.parts.at(-1)!;
  const largest = [...taken].sort((a, b) => doubtOf(b) - doubtOf(a))[0];
  const shares = taken.reduce((sum, part) => sum + doubtOf(part), 0) / doubtOf(rest);
  const where = at.at === "best" ? "at its best speed" : "at its slowest";
  const space = NO_BREAK_SPACE;
  const named = rest.part === "wing" ? "the wing" : `the ${rest.part}`;
  const doubt = largest === undefined || !(shares > 0.5)
    ? ""
    : ` Of the doubt about it ${
      formatPercent(Math.min(1, shares))
    } comes from what is taken off, most of that from: ${largest.part}.${
      WOULD_HELP[`${largest.part} ${largest.how}`] ?? ""
    }`;
  return `Parts of the drag of ${printable(one.design)} ${where}, ${
    formatNumber(at.speed, 2)
  }${space}m/s (± standard uncertainty): ${formatNumber(at.total.value, 1)}${space}N in all, less ${
    listInWords(
      taken.map((part) => `${part.part} ${formatPlusMinus(part.drag)} (${HOW[part.how]})`),
    )
  }, leave ${named} with ${valueWithInterval(rest.drag)}.${doubt}`;
}

/**
 * Lift-to-drag of the wing alone, by name, at the same speed.
 *
 * @param one a design's answer
 * @returns one sentence; empty where the wing can't be told apart
 */
export function wingSentence(one: DesignTow): string {
  const at = told(one);
  const wing = one.wingLiftToDrag.find(({ speed }) => speed === at?.speed);
  if (at === undefined || wing === undefined) return "";
  return `The wing of ${
    printable(one.design)
  } alone, without struts, spray, junction and rider, has a lift-to-drag of ${
    valueWithInterval(wing.liftToDrag)
  } there; no whole craft reaches it.`;
}

/**
 * What was measured of the wing beyond what formulas expect, at the same speed.
 *
 * @param one a design's answer
 * @returns two sentences on the dashed line of the figure; empty where the wing can't be told apart
 */
export function excessSentence(one: DesignTow): string {
  const excess = told(one)?.expectedOfWing?.excess;
  if (excess === undefined) return "";
  const says = excess.low! > 0
    ? "more than formulas explain"
    : excess.high! < 0
    ? "less than formulas explain"
    : "no more than its doubt";
  return "Dashed: the parts, and what formulas expect of the wing. Measured beyond that: " +
    `${valueWithInterval(excess)}, ${says}.`;
}
