/**
 * What changed, in words for a terminal.
 *
 * @module
 */
import type { Causes, Changes, MovedNumber } from "./changes.ts";

/** Numbers told on a terminal; the page has more, its JSON all. */
const MOST = 20;

/** "+2.3 u", or nothing where there is nothing to count by. */
export function apartWords(one: MovedNumber): string {
  if (one.apart === null) return one.before === null ? "new" : one.now === null ? "gone" : "";
  const size = Math.abs(one.apart);
  const text = size < 0.05 ? size.toPrecision(1) : size.toFixed(1);
  return `${one.apart < 0 ? "\u2212" : "+"}${text}`;
}

/** Groups of causes by what a reader calls them. */
export function causeGroups(causes: Causes): (readonly [string, readonly string[]])[] {
  return [
    ["Data", causes.data],
    ["Code cells", causes.code],
    ["Library", causes.library],
    ["Packages and Deno", causes.runtime],
  ];
}

/**
 * The change in a few lines.
 *
 * @param changes between two states
 * @returns lines without a line feed at the end
 */
export function changesText(changes: Changes): string {
  const { numbers, verdicts, causes, unmoved, since } = changes;
  const lines = [
    `Since ${since}: ${numbers.length} published results moved, ${unmoved} did not; ${
      verdicts.length === 0 ? "no verdict turned" : `${verdicts.length} verdicts turned`
    }.`,
  ];
  for (const { path, before, now } of verdicts) {
    lines.push(`    ${path}: ${before ?? "(not there)"} -> ${now ?? "(not there)"}`);
  }
  for (const one of numbers.slice(0, MOST)) {
    lines.push(
      `    ${one.path}: ${one.before ?? "(not there)"} -> ${one.now ?? "(not there)"}` +
        (one.apart === null ? "" : ` (${apartWords(one)} of its own standard uncertainties)`),
    );
  }
  if (numbers.length > MOST) lines.push(`    and ${numbers.length - MOST} more: out/changes.json`);
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
