/**
 * Small seeded changes of texts, bytes and folders, as someone might make them who wants another result.
 *
 * @module
 */
import type { SeededRandom } from "../../numeric/random.ts";

/** Files of a published folder by path. */
export type Files = ReadonlyMap<string, Uint8Array>;

/** What was done to a folder. */
export interface Change {
  /** New bytes by path; `null` takes the file away. */
  readonly files: ReadonlyMap<string, Uint8Array | null>;
  /** What was changed where, for a person. */
  readonly words: string;
}

/** One way of tampering. */
export type Tamper = (files: Files, random: SeededRandom) => Change | null;

const decoder = new TextDecoder();
const encoder = new TextEncoder();

/**
 * A file's text.
 *
 * @param files bytes by path
 * @param file path of one that is there
 * @returns text read as UTF-8
 */
export function textOf(files: Files, file: string): string {
  return decoder.decode(files.get(file));
}

/**
 * One of some things; `undefined` of none.
 *
 * @param things to choose from
 * @param random seeded
 * @returns each as likely as any other
 */
export function oneOf<T>(things: readonly T[], random: SeededRandom): T | undefined {
  return things[random.integer(Math.max(1, things.length))];
}

/**
 * Paths that a pattern finds.
 *
 * @param files bytes by path
 * @param pattern for the whole path
 * @returns in alphabetical order
 */
export function pathsLike(files: Files, pattern: RegExp): string[] {
  return [...files.keys()].filter((file) => pattern.test(file)).sort();
}

/**
 * Another digit in the place of one.
 *
 * @param digit 0 to 9
 * @param random seeded
 * @returns one of the nine others
 */
export function otherDigit(digit: string, random: SeededRandom): string {
  return String((Number(digit) + 1 + random.integer(9)) % 10);
}

/** A stretch of a text that may be changed. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/**
 * The stretches that a pattern finds; where it has a group of its own, that group alone.
 *
 * @param text to look in
 * @param pattern with the flag `g`
 * @param within stretches to look in; all of the text unless given
 * @returns places from and up to which each lies, in order
 */
export function stretches(text: string, pattern: RegExp, within?: readonly Stretch[]): Stretch[] {
  const all = within ?? [{ from: 0, to: text.length }];
  return all.flatMap(({ from, to }) =>
    [...text.slice(from, to).matchAll(pattern)].map((match) => {
      const inside = match[1] === undefined ? 0 : match[0].lastIndexOf(match[1]);
      const start = from + match.index + inside;
      return { from: start, to: start + (match[1] ?? match[0]).length };
    })
  );
}

/**
 * A change of one file's text at one of some stretches.
 *
 * @param files bytes by path
 * @param file path; nothing is changed for none
 * @param random seeded
 * @param places where the text may be changed
 * @param change gives the new text of one such place
 * @returns the change, or `null` where there is no place or nothing comes of it
 */
export function changeText(
  files: Files,
  file: string | undefined,
  random: SeededRandom,
  places: (text: string) => readonly Stretch[],
  change: (old: string, random: SeededRandom) => string,
): Change | null {
  if (file === undefined) return null;
  const text = textOf(files, file);
  const place = oneOf(places(text), random);
  if (place === undefined) return null;
  const old = text.slice(place.from, place.to);
  const now = change(old, random);
  if (now === old) return null;
  const whole = text.slice(0, place.from) + now + text.slice(place.to);
  return {
    files: new Map([[file, encoder.encode(whole)]]),
    words: `${file}: "${old.slice(0, 60)}" to "${now.slice(0, 60)}"`,
  };
}

/**
 * A change of one digit somewhere in some stretches of a text.
 *
 * @param files bytes by path
 * @param file path; nothing is changed for none
 * @param random seeded
 * @param within stretches whose digits may be changed
 * @returns the change, or `null` where there is no digit
 */
export function changeDigit(
  files: Files,
  file: string | undefined,
  random: SeededRandom,
  within: (text: string) => readonly Stretch[],
): Change | null {
  return changeText(
    files,
    file,
    random,
    (text) => stretches(text, /\d/g, within(text)),
    (digit) => otherDigit(digit, random),
  );
}
