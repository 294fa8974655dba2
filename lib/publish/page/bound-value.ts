/**
 * What stands behind a number in prose: its interval, its uncertainty, its unit, and where it comes from.
 *
 * The reader opens it by a click or by the keyboard; it needs no script, prints nothing, and closes by itself. A browser
 * that knows no such notes shows the number alone.
 *
 * Source: HTML Standard (WHATWG), the popover attribute and `popovertarget`.
 *
 * @module
 */
import { escapeHtml } from "../../base/escape-html.ts";
import type { Quantity } from "../../base/quantity.ts";
import {
  decimalsOfUncertainty,
  formatInterval,
  formatNumber,
  formatProbability,
  formatQuantity,
} from "../../base/rounding.ts";
import { locate } from "../answer-path.ts";
import { isQuantity } from "../prose-text.ts";
import { plainName } from "./part-names.ts";
import { proseHtml } from "./prose-html.ts";

/** What a page knows about the answers that its prose is bound to. */
export interface BoundAnswers {
  /** JSON of each shown answer by name. */
  readonly answers: ReadonlyMap<string, unknown>;
  /** Name of the page, which begins the names of its files. */
  readonly slug: string;
}

function quantityLines(quantity: Quantity): string[] {
  const { standardUncertainty: u, degreesOfFreedom, level, unit } = quantity;
  const freedom = typeof degreesOfFreedom === "number" && Number.isFinite(degreesOfFreedom)
    ? `; degrees of freedom ${formatNumber(degreesOfFreedom, degreesOfFreedom < 10 ? 1 : 0)}`
    : "";
  const spread = u !== null && u > 0
    ? [`Standard uncertainty ${formatNumber(u, decimalsOfUncertainty(u))}${freedom}`]
    : [];
  return [
    formatQuantity(quantity),
    `${formatProbability(level)} interval: ${formatInterval(quantity)}`,
    ...spread,
    unit === "1" ? "A ratio: no unit" : `Unit: ${unit}`,
  ];
}

function linesOf(value: unknown): string[] {
  if (isQuantity(value)) return quantityLines(value);
  if (typeof value === "number") {
    return [
      `${Number(value.toPrecision(12))}`,
      "As the answer holds it, in SI; no uncertainty of its own is stated",
    ];
  }
  if (Array.isArray(value)) return [`${value.length} in the list`];
  return [String(value)];
}

/**
 * The note behind a bound number.
 *
 * @param bound the answers of the page
 * @param path that the number is bound to, such as `glide/comparisons[birch]/ratio/@interval`
 * @param id of the note's element
 * @returns HTML of phrasing content; `null` when the path leads nowhere
 */
export function valueNote(bound: BoundAnswers, path: string, id: string): string | null {
  const found = locate(bound.answers, path);
  if (!found.ok) return null;
  const name = /^[^/[]*/.exec(path)![0];
  const place = path.slice(name.length + 1).replace(/\/?@\w+$/, "");
  const file = `answers/${bound.slug}-${plainName(name, "part")}.json`;
  const lines = linesOf(found.value).map((line, at) =>
    at === 0 ? `<b>${proseHtml(line)}</b>` : proseHtml(line)
  );
  const from = `From the answer <a href="${file}">${escapeHtml(name)}</a>` +
    (place === "" ? "" : `, <code>${escapeHtml(place)}</code>`) +
    ", computed anew by this page's code with every report";
  return `<span class="value-note" id="${id}" popover>${[...lines, from].join("<br>")}</span>`;
}
