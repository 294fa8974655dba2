/**
 * One code cell of a page: everything that it showed, in order, then its code.
 *
 * @module
 */
import type { CodeCell } from "../notebook.ts";
import { answerPart } from "./answer-part.ts";
import { codePart } from "./code-part.ts";
import { figurePart } from "./figure-part.ts";
import { findingsPart } from "./findings-part.ts";
import { livePart } from "./live-part.ts";
import { foreignBundle, plainOutput } from "./foreign-output.ts";
import type { PageState } from "./page-state.ts";
import { shownRecord } from "./shown-records.ts";
import { tablePart } from "./table-part.ts";

/**
 * A cell's outputs and code.
 *
 * @param cell after its run
 * @param title HTML of the heading that the first answer box takes over; `null` for none
 * @param state of the page
 * @returns HTML of block elements
 * @throws Error when a record of ours can't be shown
 */
export function codeCell(cell: CodeCell, title: string | null, state: PageState): string {
  const n = state.next("code");
  const parts = cell.outputs.map((output) => {
    if (output.output_type !== "display_data" && output.output_type !== "execute_result") {
      return plainOutput(output);
    }
    const shown = shownRecord(output.data);
    switch (shown?.kind) {
      case "answer": {
        const html = answerPart(shown.record, title, state);
        title = null;
        return html;
      }
      case "figure":
        return figurePart(shown.record, state);
      case "live":
        return livePart(shown.record, state);
      case "table":
        return tablePart(shown.record, state);
      case "findings":
        return findingsPart(shown.record);
      default:
        return foreignBundle(output.data, n);
    }
  });
  return [...parts, codePart(cell.source, n)].filter((part) => part !== "").join("\n") + "\n";
}

/**
 * Whether a cell shows an answer box.
 *
 * @param cell with its outputs
 * @returns true when one of them is the box with the short answer
 */
export const showsAnswer = (cell: CodeCell): boolean =>
  cell.outputs.some((output) =>
    (output.output_type === "display_data" || output.output_type === "execute_result") &&
    shownRecord(output.data)?.kind === "answer"
  );
