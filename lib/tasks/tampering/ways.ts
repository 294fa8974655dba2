/**
 * What the ways of tampering share: which files they touch, and how a piece of one is changed.
 *
 * @module
 */
import type { SeededRandom } from "../../numeric/random.ts";
import {
  changeDigit,
  type Files,
  oneOf,
  pathsLike,
  type Stretch,
  stretches,
  type Tamper,
  textOf,
} from "./change.ts";

/** A way of tampering. */
export interface TamperKind {
  readonly name: string;
  readonly tamper: Tamper;
  /** How often it is tried: half with the checksums left, half with every checksum made anew. */
  readonly tries: number;
  /** Why a run can't find it once every checksum was made anew; `null` where it must be found. */
  readonly hidden: string | null;
  /** True where most tries must be found all the same, and the reason holds for the others. */
  readonly mostly?: true;
}

/** Pages of the site, by path. */
export const PAGE = /^\d\d-[^/]+\.html$/;
/** Published notebooks, by path. */
export const NOTEBOOK = /^source\/notebooks\/.*\.ipynb$/;
/** Tables that results rest on, by path. */
export const DATA = /^source\/data\/[^/]+\/(?:glides|tow|designs|calibrations)\.csv$/;
/** Text to bytes. */
export const encoder = new TextEncoder();

/**
 * Text nodes inside the elements that a pattern finds in a page's article.
 *
 * @param pattern of the elements, global
 * @returns a function from a page to the places of its words
 */
export const words = (pattern: RegExp) => (page: string): Stretch[] => {
  const from = page.indexOf("<article>");
  const to = page.indexOf("</article>");
  return stretches(page, />([^<>]+)</g, stretches(page, pattern, [{ from, to }]));
};

/** Words of a page's paragraphs. */
export const PARAGRAPHS = words(/<p>.*<\/p>/g);

/**
 * Two files, each put in the place of the other.
 *
 * @param files of the folder
 * @param pattern of their paths
 * @param random which two
 * @returns the change; `null` where there are not two
 */
export function swap(files: Files, pattern: RegExp, random: SeededRandom) {
  const paths = pathsLike(files, pattern);
  const [one, two] = random.shuffle(paths);
  if (one === undefined || two === undefined) return null;
  return {
    files: new Map([[one, files.get(two)!], [two, files.get(one)!]]),
    words: `${one} and ${two} swapped`,
  };
}

/**
 * A word in a sentence that stands alike in a notebook and on its page, changed in both.
 *
 * @param files of the folder
 * @param random which sentence
 * @returns the change; `null` where there is no such sentence
 */
export const freeNote: Tamper = (files, random) => {
  const file = oneOf(pathsLike(files, NOTEBOOK), random)!;
  const page = `${file.replace(/^.*\//, "").replace(/\.ipynb$/, "")}.html`;
  if (!files.has(page)) return null;
  const [notebook, html] = [textOf(files, file), textOf(files, page)];
  const cells: { cell_type: string; source: string[] }[] = JSON.parse(notebook).cells;
  const sentences = cells.filter((cell) => cell.cell_type === "markdown")
    .flatMap((cell) => cell.source.join("").match(/[A-Z][a-z]+(?: [a-z]+){4,}(?=\.)/g) ?? [])
    .filter((one) => notebook.split(one).length === 2 && html.split(one).length === 2);
  const sentence = oneOf(sentences, random);
  if (sentence === undefined) return null;
  const now = sentence.replace(/ [a-z]+$/, " otherwise");
  return {
    files: new Map([
      [file, encoder.encode(notebook.replace(sentence, now))],
      [page, encoder.encode(html.replace(sentence, now))],
    ]),
    words: `${file} and its page: "${sentence}" to "${now}"`,
  };
};

const drawings = (page: string) => stretches(page, /<svg class="drawing"[\s\S]*?<\/svg>/g);

/**
 * Two drawings of a page, each put in the place of the other.
 *
 * @param files of the folder
 * @param random which page and drawings
 * @returns the change; `null` where no page has two
 */
export const swappedDrawings: Tamper = (files, random) => {
  const pages = pathsLike(files, PAGE).filter((file) => drawings(textOf(files, file)).length >= 4);
  const file = oneOf(pages, random);
  if (file === undefined) return null;
  const page = textOf(files, file);
  // Wide ones, which stand first of each two.
  const wide = drawings(page).filter((_, at) => at % 2 === 0);
  const at = random.integer(wide.length - 1);
  const [one, two] = [wide[at]!, wide[at + 1]!];
  const text = page.slice(0, one.from) + page.slice(two.from, two.to) +
    page.slice(one.to, two.from) + page.slice(one.from, one.to) + page.slice(two.to);
  return { files: new Map([[file, encoder.encode(text)]]), words: `${file}: two drawings swapped` };
};

/**
 * A digit in one kind of file, within what a pattern finds there.
 *
 * @param paths of the files
 * @param within what is looked through in a file, global
 * @returns the way of tampering
 */
export const digit = (paths: RegExp, within: RegExp): Tamper => (files, random) =>
  changeDigit(
    files,
    oneOf(pathsLike(files, paths), random),
    random,
    (text) => stretches(text, within),
  );

/**
 * Cells of a notebook of one kind: a digit within the JSON text of their sources or outputs.
 *
 * @param kind of the text
 * @param within what is looked through in it, global
 * @returns the way of tampering
 */
export const inCells = (kind: "code" | "outputs", within: RegExp): Tamper => (files, random) => {
  const file = oneOf(pathsLike(files, NOTEBOOK), random)!;
  return changeDigit(files, file, random, (text) => {
    const pattern = kind === "code"
      ? /"cell_type": "code"[\s\S]*?"source": \[\n([\s\S]*?)\n {3}\]/g
      : /"outputs": \[\n([\s\S]*?)\n {3}\],/g;
    return stretches(text, within, stretches(text, pattern));
  });
};
