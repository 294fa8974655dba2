/**
 * What changed, in words for a terminal.
 *
 * @module
 */
import type { Causes, Changes, MovedNumber } from "./changes.ts";

/** Numbers told on a terminal; the page has more, its JSON all. */
const MOST = 20;

/**
 * "+2.3 u", or nothing where there is nothing to count by.
 *
 * @param one a number before and now
 * @returns words for a table's cell; `u` is the combined standard uncertainty of both
 */
export function apartWords(one: MovedNumber): string {
  if (one.apart === null) return one.before === null ? "new" : one.now === null ? "gone" : "";
  const size = Math.abs(one.apart);
  const text = size < 0.05 ? size.toPrecision(1) : size.toFixed(1);
  return `${one.apart < 0 ? "\u2212" : "+"}${text}`;
}

/**
 * Groups of causes by what a reader calls them.
 *
 * @param causes names of what changed
 * @returns heading and names of each group, empty groups too
 */
export function causeGroups(causes: Causes): (readonly [string, readonly string[]])[] {
  return [
    ["Data", causes.data],
    ["Code cells", causes.code],
    ["Library", causes.library],
    ["Packages and Deno", causes.runtime],
  ];
}

/** Members by whether both states have them. */
export interface Sorted<T> {
  readonly both: readonly T[];
  readonly fresh: readonly T[];
  readonly gone: readonly T[];
}

/**
 * What moved apart from what came and what went.
 *
 * @param all numbers or verdicts, `before` and `now` as text, `null` where a state has none
 * @returns three lists, each in the order given
 */
export function sorted<T extends { readonly before: string | null; readonly now: string | null }>(
  all: readonly T[],
): Sorted<T> {
  return {
    both: all.filter((one) => one.before !== null && one.now !== null),
    fresh: all.filter((one) => one.before === null),
    gone: all.filter((one) => one.now === null),
  };
}

/** "; 12 are new, 3 are gone", or nothing. */
function cameAndWent({ fresh, gone }: Sorted<unknown>): string {
  const parts = [
    ...(fresh.length > 0 ? [`${fresh.length} new`] : []),
    ...(gone.length > 0 ? [`${gone.length} gone`] : []),
  ];
  return parts.length === 0 ? "" : ` (beside ${parts.join(" and ")})`;
}

/**
 * The change in a few lines.
 *
 * @param changes between two states
 * @returns lines without a line feed at the end
 */
export function changesText(changes: Changes): string {
  const { verdicts, causes, unmoved, since } = changes;
  const [numbers, turned] = [sorted(changes.numbers), sorted(verdicts)];
  const lines = [
    `Since ${since}: ${numbers.both.length} published results moved, ${unmoved} did not${
      cameAndWent(numbers)
    }; ${
      turned.both.length === 0
        ? "no verdict turned"
        : `${turned.both.length} ${turned.both.length === 1 ? "verdict" : "verdicts"} turned`
    }${cameAndWent(turned)}.`,
  ];
  for (const { path, before, now } of verdicts) {
    lines.push(`    ${path}: ${before ?? "(not there)"} -> ${now ?? "(not there)"}`);
  }
  for (const one of numbers.both.slice(0, MOST)) {
    lines.push(
      `    ${one.path}: ${one.before ?? "(not there)"} -> ${one.now ?? "(not there)"}` +
        (one.apart === null ? "" : ` (${apartWords(one)} of its own standard uncertainties)`),
    );
  }
  if (numbers.both.length > MOST) {
    lines.push(`    and ${numbers.both.length - MOST} more: out/changes.json`);
  }
  for (const [title, of] of causeGroups(causes)) {
    if (of.length === 0) continue;
    const more = of.length > 6 ? ` and ${of.length - 6} more` : "";
    lines.push(`${title}: ${of.slice(0, 6).join(", ")}${more}`);
  }
  if (causeGroups(causes).every(([, of]) => of.length === 0)) {
    lines.push("Data, code, library and packages are what they were.");
  }
  return lines.join("\n");
}
