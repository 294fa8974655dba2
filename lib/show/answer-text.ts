/**
 * The short answer as plain text.
 *
 * @module
 */
import type { AnswerRecord } from "../base/records.ts";
import { wrapped } from "./text-table.ts";

/**
 * Headline, one paragraph a sentence, what it rests on.
 *
 * @param record the short answer
 * @returns text ended by a line feed
 */
export function answerTextOf(record: AnswerRecord): string {
  return [
    wrapped(record.headline),
    "",
    ...record.details.map((detail) => wrapped(detail, "  ", "- ")),
    "",
    wrapped(record.rests),
  ].join("\n") + "\n";
}
