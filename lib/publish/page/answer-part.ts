/**
 * The answer box of a page, rebuilt from the record that a cell showed.
 *
 * A verdict has no colour of its own: solid or broken box, the mark of the design that is ahead, and the words.
 *
 * @module
 */
import type { AnswerRecord } from "../../base/records.ts";
import { answerStrip } from "../../show/answer-strip.ts";
import { headlineMark } from "./page-mark.ts";
import { proseHtml as prose } from "./prose-html.ts";
import type { PageState } from "./page-state.ts";

/** Sentences that stand above the strip: how many times as far, and how sure. */
const ABOVE_STRIP = 2;

/** Letters that fit on either side of the strip's middle. */
const LETTERS = 21;

/** A word or two, cut where they would run into the other side. */
function shortened(text: string): string {
  const letters = [...text];
  return letters.length <= LETTERS ? text : letters.slice(0, LETTERS - 1).join("") + "…";
}

/**
 * The box, and the answer as a JSON file beside the page.
 *
 * @param record what the cell showed
 * @param title HTML of the heading that stands right before the cell; `null` when there is none
 * @param state of the page: gets the file, and the record for the index when it is the first
 * @returns HTML of one section
 */
export function answerPart(record: AnswerRecord, title: string | null, state: PageState): string {
  const n = state.next("answer");
  const id = n === 1 ? "answer" : `answer-${n}`;
  state.answer ??= record;
  const path = `${state.path("answers", record.name)}.json`;
  state.addText(path, `${JSON.stringify(record.answer, null, 2)}\n`);

  const level = title !== null || n === 1 ? "h2" : "h3";
  const heading = title ?? (n === 1 ? "The short answer" : prose(record.question));
  const details = record.details.map((detail, at) =>
    `<p${at < ABOVE_STRIP ? "" : ' class="more"'}>${prose(detail)}</p>`
  );
  const sides = [shortened(record.sides[0]), shortened(record.sides[1])] as const;
  return [
    `<section class="box answer" id="${id}" data-verdict="${prose(record.verdict)}" ` +
    `aria-labelledby="${id}-title">`,
    `<${level} id="${id}-title">${heading}</${level}>`,
    `<p class="verdict">${headlineMark(record)}${prose(record.headline)}</p>`,
    ...details.slice(0, ABOVE_STRIP),
    ...(record.strip === null
      ? []
      : [`<div class="strip">${answerStrip(record.strip, sides)}</div>`]),
    ...details.slice(ABOVE_STRIP),
    ...(record.rests === "" ? [] : [`<p class="rests">${prose(record.rests)}</p>`]),
    `<p class="downloads"><a href="${path}" download>The whole answer (JSON)</a></p>`,
    "</section>",
  ].join("\n");
}
