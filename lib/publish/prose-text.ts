/**
 * Writes a value of an answer as the words that stand in prose, and compares words with values.
 *
 * Reads `rounding.ts` for the digits, so that prose, tables and figures print one number alike.
 *
 * @module
 */
import type { Quantity } from "../base/quantity.ts";
import {
  formatInterval,
  formatNumber,
  formatPlusMinus,
  formatProbability,
  formatQuantity,
} from "../base/rounding.ts";
import type { Form } from "./answer-path.ts";

/** The words, or why there are none. */
export type Written =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly reason: string };

/** Most significant digits of a bare number, which carries no uncertainty to round it by; zeros at the end are left off. */
const BARE_DIGITS = 3;

/**
 * Whether something has the form of a quantity.
 *
 * @param value anything
 * @returns true when it has a value, a standard uncertainty and a unit
 */
export function isQuantity(value: unknown): value is Quantity {
  return typeof value === "object" && value !== null && "standardUncertainty" in value &&
    "unit" in value && typeof (value as Quantity).value === "number";
}

function bareNumber(value: number): string {
  if (Number.isInteger(value)) return formatNumber(value, 0);
  const power = Math.floor(Math.log10(Math.abs(value)));
  const most = Math.max(0, BARE_DIGITS - 1 - power);
  const rounded = Number(value.toFixed(most));
  const fewest = Array.from({ length: most }, (_, places) => places)
    .find((places) => Number(value.toFixed(places)) === rounded);
  return formatNumber(value, fewest ?? most);
}

/** A ratio's interval must not seem to touch 1, where neither side is better, when it does not. */
function options(quantity: Quantity) {
  return quantity.unit === "1" ? { apartFrom: 1 } : {};
}

/** Small numbers as words. */
const WORDS: readonly string[] = "no one two three four five six seven eight nine ten eleven twelve"
  .split(" ");

function inForm(value: unknown, form: Form): Written {
  switch (form) {
    case "@count":
      return Array.isArray(value)
        ? { ok: true, text: String(value.length) }
        : { ok: false, reason: "@count wants a list" };
    case "@word": {
      const number = Array.isArray(value) ? value.length : value;
      const word = typeof number === "number" ? WORDS[number] : undefined;
      return word !== undefined
        ? { ok: true, text: word }
        : { ok: false, reason: "@word wants a list or a whole number from 0 to 12" };
    }
    case "@percent":
      return typeof value === "number" && value >= 0 && value <= 1
        ? { ok: true, text: formatProbability(value) }
        : { ok: false, reason: "@percent wants a probability or share from 0 to 1" };
    case "@interval":
      return isQuantity(value)
        ? { ok: true, text: formatInterval(value, options(value)) }
        : { ok: false, reason: "@interval wants a quantity with an uncertainty" };
    case "@plusMinus":
      return isQuantity(value)
        ? { ok: true, text: formatPlusMinus(value, options(value)) }
        : { ok: false, reason: "@plusMinus wants a quantity with an uncertainty" };
  }
}

/**
 * The words for a value: a quantity rounded by its uncertainty and with its unit, a bare number to three significant
 * digits (a whole one in full), a text as it is.
 *
 * @param value from an answer's JSON
 * @param form how to write it, or `null` for the usual way
 * @returns plain text, not yet Markdown
 *
 * @example
 * ```ts
 * import { writeValue } from "lakeproof/publish/prose-text.ts";
 * const written = writeValue(0.8, "@percent");
 * console.assert(written.ok && written.text === "80\u00a0%");
 * ```
 */
export function writeValue(value: unknown, form: Form | null): Written {
  if (value === null || value === undefined) {
    return { ok: false, reason: "it could not be told (null); the findings say why" };
  }
  if (form !== null) return inForm(value, form);
  if (isQuantity(value)) return { ok: true, text: formatQuantity(value, options(value)) };
  if (typeof value === "number") return { ok: true, text: bareNumber(value) };
  if (typeof value === "boolean") return { ok: true, text: value ? "yes" : "no" };
  if (typeof value === "string") return { ok: true, text: value.replace(/\s+/g, " ").trim() };
  if (Array.isArray(value)) {
    return { ok: false, reason: "it is a list; add a place, a [name] or /@count" };
  }
  return {
    ok: false,
    reason: `it is a group, not one value; go on with one of ${Object.keys(value).join(", ")}`,
  };
}

/** Characters that could become markup inside a link's text. */
const MARKUP = /[\\`*_[\]<>&$~^|!#]/g;

/**
 * Plain text as Markdown that shows exactly that text.
 *
 * @param text plain
 * @returns the text with a backslash before each mark
 */
export function toMarkdown(text: string): string {
  return text.replace(MARKUP, "\\$&");
}

/**
 * The plain text of a filled link, spaces of any kind made alike.
 *
 * @param text between the brackets
 * @returns plain text, trimmed
 */
export function fromMarkdown(text: string): string {
  return text.replace(/\\([!-/:-@[-`{-~])/g, "$1").replace(/\s+/g, " ").trim();
}

/**
 * Whether the words between the brackets say "not filled yet".
 *
 * @param text between the brackets
 * @returns true for nothing, dots or a question mark
 */
export function isBlank(text: string): boolean {
  return ["", "…", "...", "?"].includes(text.trim());
}
