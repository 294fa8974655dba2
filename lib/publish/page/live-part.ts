/**
 * A figure that the reader may move: the still figure, and beside it the numbers that the page's script starts from.
 *
 * Without a script nothing of it shows: the controls are put in by the script itself.
 *
 * @module
 */
import type { LiveRecord } from "../../base/records.ts";
import { figurePart } from "./figure-part.ts";
import type { PageState } from "./page-state.ts";

/** JSON that can't end the element it stands in. */
const safeJson = (value: unknown) => JSON.stringify(value).replaceAll("<", "\\u003c");

/**
 * A live figure.
 *
 * @param record what the cell showed
 * @param state of the page: learns that a script is needed
 * @returns HTML of one section
 * @throws Error when a drawing is not one SVG element
 */
export function livePart(record: LiveRecord, state: PageState): string {
  state.live = true;
  const { figure, legend, controls, task } = record;
  const still = figurePart(figure, state);
  return [
    `<section class="live" id="live-${state.next("live")}">`,
    still,
    `<script type="application/json">${safeJson({ legend, controls, task })}</script>`,
    "</section>",
  ].join("\n");
}
