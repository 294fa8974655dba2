/**
 * A day as people and spreadsheets write it, as `2031-06-14`.
 *
 * @module
 */

/** A day, or why it can't be told. */
export type DateText =
  | { readonly ok: true; readonly date: string }
  | { readonly ok: false; readonly why: "not-a-date" | "ambiguous-date" };

const NO_DATE: DateText = { ok: false, why: "not-a-date" };

function day(year: number, month: number, dayOfMonth: number): DateText {
  if (month < 1 || month > 12 || dayOfMonth < 1 || year < 1900 || year > 2200) return NO_DATE;
  const leap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  const days = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1]!;
  if (dayOfMonth > days) return NO_DATE;
  const two = (n: number) => String(n).padStart(2, "0");
  return { ok: true, date: `${year}-${two(month)}-${two(dayOfMonth)}` };
}

/**
 * Reads `2031-06-14` (also with a time behind it), `14.06.2031`, `14.6.31` and `14/06/2031`.
 *
 * With dots the day stands first. With slashes some write the month first: where both numbers could be a month the day
 * can't be told and the caller asks.
 *
 * Source: ISO 8601-1:2019 for the first form; the others are common practice, no source.
 *
 * @param cell trimmed text
 * @returns the day, or why it can't be told
 * @example
 * ```ts
 * import { readDate } from "lakeproof/read/read-date.ts";
 * import { deepEqual } from "node:assert/strict";
 * deepEqual(readDate("14.06.2031"), { ok: true, date: "2031-06-14" });
 * deepEqual(readDate("05/06/2031"), { ok: false, why: "ambiguous-date" });
 * ```
 */
export function readDate(cell: string): DateText {
  const iso = /^(\d{4})-(\d{1,2})-(\d{1,2})(?:[T ]\d{1,2}:\d{2}.*)?$/.exec(cell);
  if (iso !== null) return day(Number(iso[1]), Number(iso[2]), Number(iso[3]));
  const years = /^(\d{4})[./](\d{1,2})[./](\d{1,2})$/.exec(cell);
  if (years !== null) return day(Number(years[1]), Number(years[2]), Number(years[3]));
  const other = /^(\d{1,2})([./-])(\d{1,2})\2(\d{4}|\d{2})\.?(?: \d{1,2}:\d{2}.*)?$/.exec(cell);
  if (other === null) return NO_DATE;
  const first = Number(other[1]);
  const second = Number(other[3]);
  const year = other[4]!.length === 2 ? 2000 + Number(other[4]) : Number(other[4]);
  if (other[2] === "." || first === second || first > 12) return day(year, second, first);
  if (second > 12) return day(year, first, second);
  return { ok: false, why: "ambiguous-date" };
}
